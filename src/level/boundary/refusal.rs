//! Why the edge of a zone gives no level.

use crate::crs::CrsError;
use crate::quantity::{Elevation, Length, unit::foot, unit::meter};
use crate::terrain::TerrainError;

/// An edge that gives no level, and why.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BoundaryRefusal {
    /// The terrain has no ground at the place.
    #[error("the terrain has no ground at the place, so the zone's edge is not read there")]
    NoGround,
    /// Not enough of the edge is a shore with ground under it.
    #[error(
        "only {found} points of the zone's edge within {} m are a shore on the terrain (parts at \
         the rim of the terrain or the study, at voids and at other flooded zones are left \
         out); accepted: {needed} or more",
        .within.get::<meter>().round()
    )]
    TooFewSamples {
        /// Points of the edge that are left.
        found: usize,
        /// Points that would be enough.
        needed: usize,
        /// The radius that was searched.
        within: Length,
    },
    /// The stretches of the edge stand at different levels.
    #[error(
        "the banks disagree: stretches of the zone's edge stand between {} and {}, {:.2} m \
         ({:.2} ft) about their middle (root mean square); accepted: at most {:.2} m ({:.2} ft)",
        feet(*.lowest), feet(*.highest),
        scatter.get::<meter>(), scatter.get::<foot>(),
        accepted.get::<meter>(), accepted.get::<foot>()
    )]
    BanksDisagree {
        /// Level of the lowest stretch.
        lowest: Elevation,
        /// Level of the highest stretch.
        highest: Elevation,
        /// Root mean square of the stretches about the level.
        scatter: Length,
        /// What would be accepted.
        accepted: Length,
    },
    /// The points of the edge stand at levels too different for one water.
    #[error(
        "the ground along the zone's edge spreads by {:.2} m ({:.2} ft) about any one level \
         (scaled median deviation): the edge was not drawn on this terrain; accepted: at most \
         {:.2} m ({:.2} ft)",
        spread.get::<meter>(), spread.get::<foot>(),
        accepted.get::<meter>(), accepted.get::<foot>()
    )]
    SamplesDisagree {
        /// Scaled median deviation of the samples.
        spread: Length,
        /// What would be accepted.
        accepted: Length,
    },
}

fn feet(level: Elevation) -> String {
    format!(
        "{:.2} m ({:.2} ft)",
        level.height().get::<meter>(),
        level.height().get::<foot>()
    )
}

/// An edge that could not be read.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BoundaryError {
    /// The terrain cannot be read.
    #[error(transparent)]
    Terrain(#[from] TerrainError),
    /// The place has no coordinates in the layer.
    #[error(transparent)]
    Crs(#[from] CrsError),
}
