//! What a raster is given for, so that messages name the right options.

/// What the values of a raster are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RasterRole {
    /// Elevations of the ground (`--dem`).
    Terrain,
    /// Elevations of a water surface (`--surface`).
    Surface,
    /// Depths of water over the ground (`--depth`).
    Depth,
}

impl RasterRole {
    /// What its one band holds.
    pub(super) const fn content(self) -> &'static str {
        match self {
            Self::Terrain => "the elevation",
            Self::Surface => "the elevation of the water surface",
            Self::Depth => "the depth of water",
        }
    }

    /// The option that states the unit.
    pub(super) const fn unit_option(self) -> &'static str {
        match self {
            Self::Terrain => "--dem-unit",
            Self::Surface => "--surface-unit",
            Self::Depth => "--depth-unit",
        }
    }

    /// The option that states the datum; a depth has none.
    pub(super) const fn datum_option(self) -> &'static str {
        match self {
            Self::Terrain | Self::Depth => "--dem-datum",
            Self::Surface => "--surface-datum",
        }
    }

    /// The option that states the coordinate reference system.
    pub(super) const fn crs_option(self) -> &'static str {
        match self {
            Self::Terrain => "--dem-crs",
            Self::Surface => "--surface-crs",
            Self::Depth => "--depth-crs",
        }
    }
}
