//! What the attributes of a layer are for.

use crate::statement::Choice;

/// What an attribute is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// The zone's code.
    Zone,
    /// What tells zones of one code apart.
    Subtype,
    /// The feature's own identifier.
    Identity,
    /// How the publisher came by the area.
    Origin,
    /// The day from which the area holds.
    Date,
    /// Water-surface elevation.
    Level,
    /// Its vertical datum.
    LevelDatum,
    /// Depth above the ground.
    Depth,
    /// Unit of level and depth.
    LengthUnit,
    /// Speed of the water.
    Velocity,
    /// Its unit.
    VelocityUnit,
    /// Whether the feature is inside the mapped event, by the layer's own word.
    InsideFlag,
}

impl Role {
    /// Every role.
    pub const ALL: [Self; 12] = [
        Self::Zone,
        Self::Subtype,
        Self::Identity,
        Self::Origin,
        Self::Date,
        Self::Level,
        Self::LevelDatum,
        Self::Depth,
        Self::LengthUnit,
        Self::Velocity,
        Self::VelocityUnit,
        Self::InsideFlag,
    ];
}

impl Choice for Role {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("zone", Self::Zone),
        ("subtype", Self::Subtype),
        ("identity", Self::Identity),
        ("origin", Self::Origin),
        ("date", Self::Date),
        ("level", Self::Level),
        ("level_datum", Self::LevelDatum),
        ("depth", Self::Depth),
        ("length_unit", Self::LengthUnit),
        ("velocity", Self::Velocity),
        ("velocity_unit", Self::VelocityUnit),
        ("inside_flag", Self::InsideFlag),
    ];
}
