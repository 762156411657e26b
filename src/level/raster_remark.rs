//! What a raster of water says besides a level, as data.

use crate::quantity::{AnnualChance, Length, unit::foot, unit::meter};
use crate::terrain::Gap;

/// Something about a raster of water at a place that a reader of the result has to know.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RasterRemark {
    /// The cell that holds the place is wet, one beside it is not: no interpolation.
    #[error(
        "{raster}: the place is at the wet/dry edge of the {chance} water; its own cell answers, \
         without interpolation"
    )]
    AtWetDryEdge {
        /// The raster.
        raster: String,
        /// The event.
        chance: AnnualChance,
    },
    /// The cell that holds the place has no water.
    #[error(
        "{raster}: the raster has no water there at {chance}{}; that is outside its flood or \
         not modelled, not a statement of dry ground",
        if *.beside_water { ", but the cell beside it has (the place is at the wet/dry edge)" } else { "" }
    )]
    NoWater {
        /// The raster.
        raster: String,
        /// The event.
        chance: AnnualChance,
        /// Whether one of the nearest four cells is wet.
        beside_water: bool,
    },
    /// The raster does not reach the place.
    #[error("{raster}: the raster of the {chance} water does not reach the place")]
    DoesNotReach {
        /// The raster.
        raster: String,
        /// The event.
        chance: AnnualChance,
    },
    /// The cell is wet, yet the ground stands above its water.
    #[error(
        "{raster}: wet at {chance}, yet the terrain {terrain} stands {:.2} m ({:.2} ft) above its \
         water: surface and terrain do not belong together there",
        by.get::<meter>(), by.get::<foot>()
    )]
    GroundAboveWater {
        /// The raster.
        raster: String,
        /// The event.
        chance: AnnualChance,
        /// The terrain.
        terrain: String,
        /// How far the ground stands above the water.
        by: Length,
    },
    /// The cell is wet with a depth of nothing.
    #[error("{raster}: wet at {chance} with a depth of 0: the level is the ground itself")]
    DepthOfNothing {
        /// The raster.
        raster: String,
        /// The event.
        chance: AnnualChance,
    },
    /// A depth below nothing is no depth.
    #[error("{raster}: a depth of {:.2} m ({:.2} ft) at {chance} is not used; accepted: 0 and above", depth.get::<meter>(), depth.get::<foot>())]
    NegativeDepth {
        /// The raster.
        raster: String,
        /// The event.
        chance: AnnualChance,
        /// The depth.
        depth: Length,
    },
    /// A depth, and no ground to add it to.
    #[error("{raster}: a depth of water at {chance}, but {gap}: there is nothing to add it to")]
    DepthWithoutGround {
        /// The raster.
        raster: String,
        /// The event.
        chance: AnnualChance,
        /// Why there is no ground.
        gap: Gap,
    },
}
