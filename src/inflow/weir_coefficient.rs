//! The coefficient of a weir, in either system of units.

use crate::load::standard_gravity;
use crate::quantity::Length;
use crate::quantity::unit::{VolumeRate, cubic_meter_per_second, foot, meter};

/// C of the weir formula Q = C·L·H^1.5.
///
/// It has the dimension √length / time, so its number depends on the unit: Francis' 3.33 in
/// feet is 1.84 in metres.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct WeirCoefficient(f64);

impl WeirCoefficient {
    /// A coefficient in √m/s.
    #[must_use]
    pub fn from_si(value: f64) -> Self {
        Self(value)
    }

    /// A coefficient in √ft/s.
    #[must_use]
    pub fn from_us(value: f64) -> Self {
        Self(value * Length::new::<foot>(1.0).get::<meter>().sqrt())
    }

    /// The general form C = ⅔·Cd·√(2·g).
    #[must_use]
    pub fn of_discharge(coefficient: f64) -> Self {
        Self(2.0 / 3.0 * coefficient * (2.0 * standard_gravity().value).sqrt())
    }

    /// The theory of critical depth on a broad crest, C = ⅔·√(2·g/3): 3.087 in feet, 1.705
    /// in metres.
    #[must_use]
    pub fn broad_crested() -> Self {
        Self(2.0 / 3.0 * (2.0 / 3.0 * standard_gravity().value).sqrt())
    }

    /// Francis' sharp crest as wide as the channel: 3.33 in feet, 1.84 in metres.
    #[must_use]
    pub fn francis() -> Self {
        Self::from_us(3.33)
    }

    /// A sharp crest `crest_height` above the ground before it, C = 3.27 + 0.40·H/P in feet.
    #[must_use]
    pub fn sharp_over_height(head: Length, crest_height: Length) -> Self {
        Self::from_us(3.27 + 0.40 * (head / crest_height).value)
    }

    /// The larger of Francis' and [`Self::sharp_over_height`] at the `highest_head`: the safe
    /// one for filling. The second grows with the head, so it holds for every lower head too.
    #[must_use]
    pub fn over_a_barrier(highest_head: Length, barrier_height: Length) -> Self {
        let over_height = Self::sharp_over_height(highest_head, barrier_height);
        if over_height > Self::francis() {
            over_height
        } else {
            Self::francis()
        }
    }

    /// The number in √m/s.
    #[must_use]
    pub fn si(self) -> f64 {
        self.0
    }

    /// The number in √ft/s.
    #[must_use]
    pub fn us(self) -> f64 {
        self.0 / Length::new::<foot>(1.0).get::<meter>().sqrt()
    }

    /// Q = C·L·H^1.5; no flow where the water stands below the crest.
    #[must_use]
    pub fn flow(self, length: Length, head: Length) -> VolumeRate {
        let head = head.get::<meter>().max(0.0);
        VolumeRate::new::<cubic_meter_per_second>(
            self.0 * length.get::<meter>() * head * head.sqrt(),
        )
    }
}
