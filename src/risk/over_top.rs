//! The chance that the design event passes a given height.

use super::{normal, root_sum_square};
use crate::quantity::{Elevation, IncomparableDatums, Length};

/// The chance that a level, known with the standard deviation `sd`, lies more than `margin`
/// above its stated value.
///
/// The level is taken as normally distributed about its stated value. The chance covers what
/// `sd` covers (mapping and measurement), not the flood study itself, and it is for the
/// design event: the chance in a year is smaller.
///
/// ```
/// use sillmark::quantity::{Length, unit::meter};
/// use sillmark::risk::chance_of_passing;
/// let chance = chance_of_passing(Length::new::<meter>(0.1), Length::new::<meter>(0.1));
/// assert!((chance - 0.1587).abs() < 1e-4); // one standard deviation, table of the normal distribution
/// ```
#[must_use]
pub fn chance_of_passing(margin: Length, sd: Length) -> f64 {
    if sd.value > 0.0 {
        normal::tail((margin / sd).value)
    } else if margin.value < 0.0 {
        1.0
    } else {
        0.0
    }
}

/// The chance that the water of the event stands above the top of a barrier, where neither
/// the level nor the top is known exactly.
///
/// The top is as uncertain as the sill that it was measured from (the barrier's own height is
/// made to a millimetre); level and sill are measured apart, so their deviations add by
/// squares. Covered is what the two deviations cover: rounding, mapping, terrain, survey. Not
/// covered are the flood study itself, waves, and a barrier that leaks or is not put up.
///
/// # Errors
/// [`IncomparableDatums`] where level and top do not stand on one datum.
///
/// ```
/// use sillmark::quantity::{Length, parse_elevation, unit::foot};
/// use sillmark::risk::chance_over_top;
/// let (level, top) = (parse_elevation("9 ft NAVD88")?, parse_elevation("9.5 ft NAVD88")?);
/// let feet = Length::new::<foot>;
/// // 0.3 and 0.4 ft make 0.5 ft: the top lies one standard deviation above the level.
/// let chance = chance_over_top(level, feet(0.3), top, feet(0.4))?;
/// assert!((chance - 0.1587).abs() < 1e-4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn chance_over_top(
    level: Elevation,
    level_sd: Length,
    top: Elevation,
    sill_sd: Length,
) -> Result<f64, IncomparableDatums> {
    let margin = top.above(level)?;
    Ok(chance_of_passing(
        margin,
        root_sum_square([level_sd, sill_sd]),
    ))
}
