//! What a column of the input means.

/// The meaning of a column.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// Names the row in results and messages.
    Id,
    /// Degrees east.
    Longitude,
    /// Degrees north.
    Latitude,
    /// East coordinate in the table's own system.
    X,
    /// North coordinate in the table's own system.
    Y,
    /// Height of the threshold, a bare number.
    Threshold,
    /// Its unit.
    ThresholdUnit,
    /// Its vertical datum.
    VerticalDatum,
    /// Height of the threshold above the ground, a bare number in the threshold's unit: an
    /// estimate where nobody surveyed it.
    ThresholdAboveGround,
    /// The building that an opening belongs to.
    Building,
    /// The opening, where there is one row an opening.
    Opening,
    /// Clear width of the opening, with its unit.
    Width,
    /// Clear height of the opening, with its unit.
    OpeningHeight,
    /// Height of the sill above the threshold, with its unit.
    SillAboveThreshold,
    /// Depth of the reveal, with its unit.
    Reveal,
    /// Flat wall at each side, with its unit.
    Face,
    /// The wall around the opening.
    Wall,
    /// The use of the building.
    Occupancy,
}

impl Role {
    /// All of them, in the order to offer them.
    pub const ALL: [Self; 18] = [
        Self::Id,
        Self::Longitude,
        Self::Latitude,
        Self::X,
        Self::Y,
        Self::Threshold,
        Self::ThresholdUnit,
        Self::VerticalDatum,
        Self::ThresholdAboveGround,
        Self::Building,
        Self::Opening,
        Self::Width,
        Self::OpeningHeight,
        Self::SillAboveThreshold,
        Self::Reveal,
        Self::Face,
        Self::Wall,
        Self::Occupancy,
    ];

    /// The name of such a column, where `--map` names no other.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Id => "id",
            Self::Longitude => "longitude",
            Self::Latitude => "latitude",
            Self::X => "x",
            Self::Y => "y",
            Self::Threshold => "threshold",
            Self::ThresholdUnit => "threshold_unit",
            Self::VerticalDatum => "vertical_datum",
            Self::ThresholdAboveGround => "threshold_above_ground",
            Self::Building => "building",
            Self::Opening => "opening",
            Self::Width => "width",
            Self::OpeningHeight => "opening_height",
            Self::SillAboveThreshold => "sill_above_threshold",
            Self::Reveal => "reveal",
            Self::Face => "face",
            Self::Wall => "wall",
            Self::Occupancy => "occupancy",
        }
    }

    /// The role of that name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|role| role.name() == name)
    }

    pub(super) const fn index(self) -> usize {
        self as usize
    }
}
