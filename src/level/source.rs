//! Where a flood level can come from.

use serde::Serialize;

use crate::hazard::LineKind;

/// The sources of a flood level, the highest authority first.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum LevelSource {
    /// Stated by the user from a flood study.
    Stated,
    /// A raster of water-surface elevations.
    SurfaceRaster,
    /// A raster of depths on the terrain.
    DepthRaster,
    /// The level that the zone's own record states.
    ZoneStatic,
    /// Cross-sections with water-surface elevations.
    CrossSections,
    /// Flood-level lines, rounded to whole feet.
    LevelLines,
    /// A depth over the highest adjacent grade.
    DepthOverGrade,
    /// The zone's edge read on the terrain.
    BoundaryOnTerrain,
}

impl LevelSource {
    /// All of them, the highest authority first.
    pub const ALL: [Self; 8] = [
        Self::Stated,
        Self::SurfaceRaster,
        Self::DepthRaster,
        Self::ZoneStatic,
        Self::CrossSections,
        Self::LevelLines,
        Self::DepthOverGrade,
        Self::BoundaryOnTerrain,
    ];

    /// The source that lines of a kind are.
    #[must_use]
    pub const fn of_lines(kind: LineKind) -> Self {
        match kind {
            LineKind::CrossSections => Self::CrossSections,
            LineKind::LevelLines => Self::LevelLines,
        }
    }

    /// The source in results for programs.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Stated => "stated",
            Self::SurfaceRaster => "surface-raster",
            Self::DepthRaster => "depth-raster",
            Self::ZoneStatic => "zone-static",
            Self::CrossSections => "cross-sections",
            Self::LevelLines => "level-lines",
            Self::DepthOverGrade => "depth-over-grade",
            Self::BoundaryOnTerrain => "boundary-on-terrain",
        }
    }

    /// The source in words.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Stated => "stated by the user",
            Self::SurfaceRaster => "water-surface raster",
            Self::DepthRaster => "depth raster on the terrain",
            Self::ZoneStatic => "level of the zone",
            Self::CrossSections => "cross-sections",
            Self::LevelLines => "flood-level lines",
            Self::DepthOverGrade => "depth over the highest adjacent grade",
            Self::BoundaryOnTerrain => "edge of the zone on the terrain",
        }
    }
}
