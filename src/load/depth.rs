//! How deep the water stands at a wall.

use crate::quantity::{Elevation, IncomparableDatums, Length};

/// Depth of still water at a wall: flood level less the ground, with the ground lowered by
/// what the flood is expected to wash away (erosion and scour).
///
/// Reference: ASCE 7-10 section 5.4.1 and commentary C5, as worked in *A Beginner's Guide to
/// ASCE 7-10*, section 6.7.1.
///
/// # Errors
/// [`IncomparableDatums`] where level and ground stand on different datums.
///
/// ```
/// use sillmark::load::depth_at_wall;
/// use sillmark::quantity::{Length, parse_elevation, unit::foot};
/// let (level, ground) = (parse_elevation("54 ft NAVD88")?, parse_elevation("50 ft NAVD88")?);
/// let depth = depth_at_wall(level, ground, Length::new::<foot>(1.0))?;
/// assert!((depth.get::<foot>() - 5.0).abs() < 1e-12);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn depth_at_wall(
    level: Elevation,
    ground: Elevation,
    washed_away: Length,
) -> Result<Length, IncomparableDatums> {
    Ok((level.above(ground)? + washed_away).max(Length::default()))
}
