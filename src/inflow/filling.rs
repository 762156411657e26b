//! How long a room takes to fill at a steady inflow.

use super::{Inflow, Missing, NotCounted};
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

/// The filling of a room, with what the time rests on.
#[derive(Clone, Debug, PartialEq)]
pub struct Filling {
    /// When the depth is reached. It is no answer but an upper bound where
    /// [`Self::may_be_sooner`].
    pub time: FillingTime,
    /// The formula, in words for a trail.
    pub method: &'static str,
    /// Ways in without a number.
    pub not_counted: Vec<NotCounted>,
    /// What was not stated.
    pub not_stated: Vec<Missing>,
}

impl Filling {
    /// Whether the room may fill sooner, even where the time says never, because a way in
    /// has no number.
    #[must_use]
    pub fn may_be_sooner(&self) -> bool {
        !self.not_counted.is_empty()
    }

    pub(super) fn new(time: FillingTime, method: &'static str, inflow: &Inflow) -> Self {
        Self {
            time,
            method,
            not_counted: inflow.not_counted.clone(),
            not_stated: inflow.not_stated(),
        }
    }
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
/// use sillmark::inflow::{FillingTime, Inflow, rain_flow, time_to_fill};
/// use sillmark::quantity::unit::{
///     Area, Length, Velocity, hour, meter, meter_per_second, square_meter,
/// };
/// let rain = Velocity::new::<meter_per_second>(0.05 / 3600.0); // 50 mm an hour
/// let mut inflow = Inflow::default();
/// inflow.add(rain_flow(rain, Area::new::<square_meter>(80.0), Some(1.0))?);
/// let (floor, depth) = (Area::new::<square_meter>(40.0), Length::new::<meter>(0.1));
/// let FillingTime::After(time) = time_to_fill(&inflow, floor, depth)?.time else { panic!() };
/// assert!((time.get::<hour>() - 1.0).abs() < 1e-9); // 4 m³ at 4 m³/h
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn time_to_fill(
    inflow: &Inflow,
    floor_area: Area,
    depth: Length,
) -> Result<Filling, Impossible> {
    not_negative("inflow", inflow.total().value, "m³/s")?;
    positive("floor area", floor_area.value, "m²")?;
    not_negative("depth inside", depth.value, "m")?;
    let time = at_rate(floor_area * depth, inflow.total());
    Ok(Filling::new(time, "t = A·d / Q", inflow))
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
