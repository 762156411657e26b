//! Where the ground along the edge of a zone may be asked for.

use super::BoundaryError;
use super::level::{BOTH_BANKS, MOST_SAMPLES, RADIUS, SAMPLES, step_of, zone_of};
use super::shore::Water;
use crate::hazard::ZoneMap;
use crate::quantity::{AnnualChance, Length};
use crate::site::Location;

/// So many times as many points as a level is made of: those that lie on a void or beside the rim
/// of the terrain give their place to others. Where more than three quarters of a shore have no
/// ground, a level from a part of the terrain is made of fewer samples than one from all of it.
const SPARE: usize = 4;

/// The places at which [`boundary_level`](super::boundary_level) may ask for the ground around,
/// on a terrain of cells of such a size: for those who bring only a part of a terrain here.
///
/// # Errors
/// [`BoundaryError`] where the place has no coordinates in the layer.
pub fn shore_places(
    map: &ZoneMap,
    event: AnnualChance,
    location: Location,
    cell: Length,
) -> Result<Vec<Location>, BoundaryError> {
    let Some((number, zone)) = zone_of(map, event, location)? else {
        return Ok(Vec::new());
    };
    let frame = map.frame(location)?;
    let water = Water::new(map, frame, zone.annual_chance);
    let shore = water.shore(number, step_of(cell), RADIUS);
    let reach = shore
        .first()
        .map_or(0.0, |first| 2.0 * BOTH_BANKS * first.distance);
    let near = shore.iter().enumerate().take_while(|(taken, point)| {
        let is_enough = *taken >= SPARE * SAMPLES && point.distance > reach;
        !is_enough && *taken < SPARE * MOST_SAMPLES
    });
    let places = near.map(|(_, point)| map.location(frame.at(point.at.x, point.at.y)));
    Ok(places.collect::<Result<_, _>>()?)
}
