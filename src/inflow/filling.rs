//! How long a room takes to fill at a steady inflow.

use crate::quantity::unit::{Area, Time, Volume, VolumeRate};
use crate::quantity::{Impossible, Length, not_negative, positive};

/// When the water inside reaches a depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FillingTime {
    /// After this time.
    After(Time),
    /// Not at all: the pump carries what comes in, or nothing comes in.
    Never,
}

/// The time in which a steady inflow brings the water in a room to a depth, t = A·d / Q.
///
/// The inflow is taken as if nothing stood inside: water that rises behind the barrier
/// above the sill slows it, so the room fills no sooner than this.
///
/// # Errors
/// [`Impossible`] for an area, depth or flow that cannot be.
///
/// ```
/// use sillmark::inflow::{FillingTime, time_to_fill};
/// use sillmark::quantity::unit::{
///     Area, Length, Time, VolumeRate, liter_per_second, meter, second, square_meter,
/// };
/// let flow = VolumeRate::new::<liter_per_second>(4.0);
/// let (floor, depth) = (Area::new::<square_meter>(40.0), Length::new::<meter>(0.1));
/// let FillingTime::After(time) = time_to_fill(flow, floor, depth)? else { panic!() };
/// assert!((time.get::<second>() - 1000.0).abs() < 1e-9);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn time_to_fill(
    inflow: VolumeRate,
    floor_area: Area,
    depth: Length,
) -> Result<FillingTime, Impossible> {
    not_negative("inflow", inflow.value, "m³/s")?;
    positive("floor area", floor_area.value, "m²")?;
    not_negative("depth inside", depth.value, "m")?;
    Ok(at_rate(floor_area * depth, inflow))
}

pub(super) fn at_rate(volume: Volume, rate: VolumeRate) -> FillingTime {
    if volume.value <= 0.0 {
        return FillingTime::After(Time::default());
    }
    let time: Time = volume / rate;
    if rate.value > 0.0 && time.is_finite() {
        FillingTime::After(time)
    } else {
        FillingTime::Never
    }
}
