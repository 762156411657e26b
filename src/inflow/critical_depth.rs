//! The depth of water at critical speed.

use crate::load::standard_gravity;
use crate::quantity::unit::FlowPerLength;
use crate::quantity::{Impossible, Length, finite, not_negative};

/// Depth of a flow at critical speed in a rectangular channel, (q²/g)^⅓, with q the flow on
/// each metre of width; over a broad crest it is ⅔ of the head.
///
/// # Errors
/// [`Impossible`] for a flow that is negative or not finite.
///
/// ```
/// use sillmark::inflow::critical_depth;
/// use sillmark::quantity::unit::{FlowPerLength, Length, VolumeRate, cubic_meter_per_second, meter};
/// let flow: FlowPerLength =
///     VolumeRate::new::<cubic_meter_per_second>(50.0) / Length::new::<meter>(1.0);
/// assert!((critical_depth(flow)?.get::<meter>() - 6.34).abs() < 0.005);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn critical_depth(flow: FlowPerLength) -> Result<Length, Impossible> {
    not_negative("flow on each metre of width", flow.value, "m²/s")?;
    let depth: Length = (flow * flow / standard_gravity()).cbrt();
    finite("critical depth", depth.value, "m")?;
    Ok(depth)
}
