//! How long a room takes to fill while the water outside rises over the crest.

use super::filling::at_rate;
use super::{Filling, FillingTime, Inflow, WeirCoefficient};
use crate::quantity::unit::{Area, Time, Volume, VolumeRate, cubic_meter_per_second, second};
use crate::quantity::{Impossible, Length, Velocity, finite, not_negative, positive};

/// How near the time is to the exact root where it is found by halving an interval, as a
/// part of it; the time given is the earlier end.
pub const TIME_TOLERANCE: f64 = 1e-9;

/// A room, what comes in besides, and the crest that the water may pass.
#[derive(Clone, Debug, PartialEq)]
pub struct FillingCase {
    /// Area of the floor that the water spreads over.
    pub floor_area: Area,
    /// Depth inside that is asked for.
    pub depth: Length,
    /// Inflow that does not change: leakage, rain.
    pub steady: Inflow,
    /// What a pump carries away.
    pub pump: VolumeRate,
    /// Length of the crest.
    pub crest_length: Length,
    /// Its coefficient, the same at every head:
    /// [`WeirCoefficient::over_a_barrier`] is safe.
    pub coefficient: WeirCoefficient,
}

/// Water outside that rises at a steady rate and then stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RisingWater {
    /// Its level above the crest at the start; negative below the crest.
    pub start: Length,
    /// How fast it rises; zero where it stands.
    pub rate: Velocity,
    /// Its highest level above the crest.
    pub highest: Length,
}

/// The time in which water over a crest and a steady inflow, less what a pump carries, bring
/// the water in a room to a depth, while the water outside rises and then stands.
///
/// 1. The head is H(t) = start + rate·t, up to the highest.
/// 2. The volume over the crest up to t is C·L·∫H^1.5 dt, which is
///    C·L·(2/5)·(H(t)^2.5 − H(0)^2.5) / rate while the water rises.
/// 3. The pump empties the room until more comes in than it carries; filling begins then.
/// 4. The time at which the volume is A·d is found by halving an interval, to
///    [`TIME_TOLERANCE`].
///
/// It holds while the water inside stays below the crest; after that it is the soonest.
///
/// # Errors
/// [`Impossible`] for a quantity that cannot be, and a highest level below the start.
///
/// ```
/// use sillmark::inflow::{
///     FillingCase, FillingTime, Inflow, RisingWater, WeirCoefficient, time_to_fill_while_rising,
/// };
/// use sillmark::quantity::unit::{
///     Area, Length, Velocity, VolumeRate, meter, meter_per_second, minute, square_meter,
/// };
/// let metres = Length::new::<meter>;
/// let room = FillingCase {
///     floor_area: Area::new::<square_meter>(50.0),
///     depth: metres(0.3),
///     steady: Inflow::default(),
///     pump: VolumeRate::default(),
///     crest_length: metres(1.0),
///     coefficient: WeirCoefficient::francis(),
/// };
/// let river = RisingWater {
///     start: metres(0.0),
///     rate: Velocity::new::<meter_per_second>(0.1 / 3600.0), // 10 cm an hour
///     highest: metres(0.5),
/// };
/// let FillingTime::After(time) = time_to_fill_while_rising(&room, &river)?.time else { panic!() };
/// assert!((time.get::<minute>() - 30.16).abs() < 0.005);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn time_to_fill_while_rising(
    room: &FillingCase,
    outside: &RisingWater,
) -> Result<Filling, Impossible> {
    check(room, outside)?;
    let time = filled_after(room.floor_area * room.depth, &Flood::new(room, outside));
    let method = "A·d = ∫(steady inflow − pump + C·L·H^1.5) dt";
    Ok(Filling::new(time, method, &room.steady))
}

fn filled_after(target: Volume, flood: &Flood) -> FillingTime {
    if target.value <= 0.0 {
        return FillingTime::After(Time::default());
    }
    let Some(begins) = flood.filling_begins() else {
        return FillingTime::Never;
    };
    // Once the water stands, the net inflow stays at its greatest: an upper bound.
    let greatest = VolumeRate::new::<cubic_meter_per_second>(flood.greatest_net());
    let FillingTime::After(longest) = at_rate(target, greatest) else {
        return FillingTime::Never;
    };
    let mut early = begins;
    let mut late = (begins.max(flood.stands_after) + longest.value).min(f64::MAX);
    // Enough halvings for any interval of numbers; the tolerance ends it sooner.
    for _ in 0..2000 {
        if late - early <= TIME_TOLERANCE * late {
            break;
        }
        let middle = early + (late - early) / 2.0;
        if flood.volume_between(begins, middle) < target.value {
            early = middle;
        } else {
            late = middle;
        }
    }
    FillingTime::After(Time::new::<second>(early))
}

fn check(room: &FillingCase, outside: &RisingWater) -> Result<(), Impossible> {
    positive("floor area", room.floor_area.value, "m²")?;
    not_negative("depth inside", room.depth.value, "m")?;
    not_negative("steady inflow", room.steady.total().value, "m³/s")?;
    not_negative("flow of the pump", room.pump.value, "m³/s")?;
    not_negative("length of the crest", room.crest_length.value, "m")?;
    not_negative("weir coefficient", room.coefficient.si(), "√m/s")?;
    finite("level at the start", outside.start.value, "m")?;
    not_negative("rate of rise", outside.rate.value, "m/s")?;
    finite("highest level", outside.highest.value, "m")?;
    if outside.highest < outside.start {
        return Err(Impossible::Outside {
            what: "highest level",
            value: outside.highest.value,
            unit: "m",
            accepted: format!("the level at the start, {} m, or more", outside.start.value),
        });
    }
    Ok(())
}

/// The flood in numbers of SI units: metres above the crest, seconds, cubic metres.
struct Flood {
    start: f64,
    rate: f64,
    highest: f64,
    /// When the water stands at its highest.
    stands_after: f64,
    /// C·L.
    crest: f64,
    /// Steady inflow less the pump.
    steady: f64,
}

impl Flood {
    fn new(room: &FillingCase, outside: &RisingWater) -> Self {
        let start = outside.start.value;
        let rate = outside.rate.value;
        let rising = (outside.highest.value - start) / rate;
        // Water that does not rise in any time stands where it started.
        let (highest, stands_after) = if rising.is_finite() {
            (outside.highest.value, rising)
        } else {
            (start, 0.0)
        };
        Self {
            start,
            rate,
            highest,
            stands_after,
            crest: room.coefficient.si() * room.crest_length.value,
            steady: (room.steady.total() - room.pump).value,
        }
    }

    fn net_at(&self, level: f64) -> f64 {
        self.steady + self.crest * level.max(0.0).powf(1.5)
    }

    fn greatest_net(&self) -> f64 {
        self.net_at(self.highest)
    }

    /// When more comes in than the pump carries, which is so from then on; `None` if never.
    fn filling_begins(&self) -> Option<f64> {
        if self.net_at(self.start) > 0.0 {
            return Some(0.0);
        }
        if self.greatest_net() <= 0.0 {
            return None;
        }
        let level = (-self.steady / self.crest).powf(2.0 / 3.0);
        Some(((level - self.start) / self.rate).clamp(0.0, self.stands_after))
    }

    /// What gathers between two times after the filling began.
    fn volume_between(&self, from: f64, to: f64) -> f64 {
        let standing = (to - from.max(self.stands_after)).max(0.0);
        let risen = to.min(self.stands_after);
        let over_crest = standing * self.highest.max(0.0).powf(1.5)
            + self.mean_power_times_time(from.min(risen), risen);
        self.steady * (to - from) + self.crest * over_crest
    }

    /// ∫H^1.5 dt between two times of the rise.
    fn mean_power_times_time(&self, from: f64, to: f64) -> f64 {
        let level = |time: f64| (self.start + self.rate * time).max(0.0);
        let (low, high) = (level(from), level(to));
        // Not the difference of two levels, which may be all rounding.
        let rise = if low > 0.0 {
            self.rate * (to - from)
        } else {
            high
        };
        if rise <= 0.0 {
            return (to - from) * high.powf(1.5);
        }
        // (high^2.5 − low^2.5) without the loss of digits of a small rise of deep water.
        let difference = -high.powf(2.5) * (2.5 * (-rise / high).ln_1p()).exp_m1();
        difference / (2.5 * self.rate)
    }
}
