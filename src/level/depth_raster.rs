//! A raster of water depths for one annual chance, on the terrain.

use super::raster_answer::wet;
use super::{Candidate, LevelSource, RasterAnswer, RasterRemark};
use crate::quantity::{AnnualChance, Length};
use crate::site::Location;
use crate::terrain::{DepthRaster, Gap, Ground, TerrainError};

/// The flood level from a raster of depths (`--depth 1%=depth.tif`): the ground plus the
/// depth, on the datum of the terrain.
///
/// The depth is read as [`surface_level`](super::surface_level) reads a surface: bilinear
/// between four wet cells, the own cell alone at the wet/dry edge, nothing in a dry cell. A
/// depth of 0 is a wet cell whose level is the ground; it is said. A depth below 0 is not
/// used.
///
/// The terrain should be the one that the depths were made from: on another one the level is
/// off by the difference of the two. `sd` is what the user states for the depths
/// (`[uncertainty]` in the site file), `ground_sd` that of the terrain; where both are known they combine by
/// root-sum-square, else no standard deviation is given.
///
/// # Errors
/// [`TerrainError`] where the raster cannot be read.
pub fn depth_level(
    depths: &DepthRaster,
    chance: AnnualChance,
    location: Location,
    ground: &Result<Ground, Gap>,
    sd: Option<Length>,
    ground_sd: Option<Length>,
) -> Result<RasterAnswer, TerrainError> {
    let (depth, how, mut remarks) = match wet(depths.read_at(location)?, depths, chance) {
        Ok(found) => found,
        Err(without) => return Ok(without),
    };
    let raster = depths.name().to_owned();
    let refused = |remark| {
        Ok(RasterAnswer {
            candidate: None,
            remarks: vec![remark],
        })
    };
    if depth < Length::default() {
        return refused(RasterRemark::NegativeDepth {
            raster,
            chance,
            depth,
        });
    }
    let ground = match ground {
        Ok(ground) => ground,
        Err(gap) => {
            return refused(RasterRemark::DepthWithoutGround {
                raster,
                chance,
                gap: *gap,
            });
        }
    };
    if depth == Length::default() {
        remarks.push(RasterRemark::DepthOfNothing { raster, chance });
    }
    Ok(RasterAnswer {
        candidate: Some(Candidate {
            source: LevelSource::DepthRaster,
            elevation: ground.elevation.raised(depth),
            sd: sd.zip(ground_sd).map(|(depth, ground)| depth.hypot(ground)),
            chance,
            how: format!("ground + depth; depth: {how}"),
            reference: format!("{} on {}", depths.name(), ground.source),
        }),
        remarks,
    })
}
