//! A raster of water-surface elevations for one annual chance.

use super::raster_answer::wet;
use super::{Candidate, LevelSource, RasterAnswer, RasterRemark};
use crate::quantity::{AnnualChance, Elevation, Length};
use crate::site::Location;
use crate::terrain::{Dem, Ground, TerrainError};

/// The flood level from a raster of water-surface elevations (`--surface 1%=wse.tif`).
///
/// 1. Between four wet cell centres the level is bilinear.
/// 2. At the wet/dry edge, where one of the four is dry, the cell that holds the place
///    answers alone: a weighted mean of the wet ones would be of our making.
/// 3. A dry cell has no level: it may be outside the flood or not modelled, and is no
///    statement of dry ground.
/// 4. Ground above the water of a wet cell is said; the level stays what the raster says.
///
/// `sd` is the standard deviation that the user states for the raster (`[uncertainty]` in the site file); a
/// file does not say how its cells were rounded or interpolated, so without a statement none
/// is given. `ground` is the terrain at the place, where there is one.
///
/// # Errors
/// [`TerrainError`] where the raster cannot be read.
///
/// ```no_run
/// use sillmark::level::surface_level;
/// use sillmark::quantity::{AnnualChance, LengthUnit, VerticalDatum};
/// use sillmark::site::Location;
/// use sillmark::terrain::{Dem, DemStatement};
///
/// let statement = DemStatement {
///     unit: Some(LengthUnit::Foot),
///     datum: Some(VerticalDatum::Navd88),
///     crs: None,
/// };
/// let surface = Dem::open_surface("wse_1pct.tif".as_ref(), &statement)?;
/// let place = Location::from_degrees(-95.5, 29.7)?;
/// let answer = surface_level(&surface, AnnualChance::ONE_PERCENT, place, None, None)?;
/// match answer.candidate {
///     Some(level) => println!("{:?}, {}", level.elevation, level.how),
///     None => println!("{}", answer.remarks[0]), // for example: no water there
/// }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn surface_level(
    surface: &Dem,
    chance: AnnualChance,
    location: Location,
    ground: Option<&Ground>,
    sd: Option<Length>,
) -> Result<RasterAnswer, TerrainError> {
    let (value, how, mut remarks) = match wet(surface.read_at(location)?, surface, chance) {
        Ok(found) => found,
        Err(without) => return Ok(without),
    };
    let elevation = Elevation::new(value, surface.datum());
    // On another datum nothing can be said of the two.
    if let Some(ground) = ground
        && let Ok(by) = ground.elevation.above(elevation)
        && by > Length::default()
    {
        remarks.push(RasterRemark::GroundAboveWater {
            raster: surface.name().to_owned(),
            chance,
            terrain: ground.source.to_string(),
            by,
        });
    }
    Ok(RasterAnswer {
        candidate: Some(Candidate {
            source: LevelSource::SurfaceRaster,
            elevation,
            sd,
            chance,
            how: how.to_owned(),
            reference: surface.name().to_owned(),
        }),
        remarks,
    })
}
