//! An object that the barrier stops in a given time.

use crate::load::error::{speed, time};
use crate::load::{LoadError, standard_gravity};
use crate::quantity::Velocity;
use crate::quantity::unit::{Force, Time, pound_force, second};

/// Normal impact: an object at the speed of the water that is stopped evenly in a time,
/// F = W·V/(g·t) with g = 32.2 ft/s².
///
/// The default is the object of the codes, 1,000 lb stopped in 0.5 s on 1 ft², at or below
/// the flood level.
///
/// Reference: Simi Valley Municipal Code 7-5.704; without the time, US government
/// flood-proofing manual (1986) section 6.4.2, p. 49.
///
/// ```
/// use sillmark::load::StoppedObject;
/// use sillmark::quantity::unit::{Velocity, foot_per_second, pound_force};
/// let force = StoppedObject::default().force(Velocity::new::<foot_per_second>(5.0))?;
/// assert!((force.get::<pound_force>() - 310.6).abs() < 0.05);
/// # Ok::<(), sillmark::load::LoadError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StoppedObject {
    /// Weight of the object.
    pub weight: Force,
    /// Time in which it is stopped.
    pub time: Time,
}

/// Weight of the object where nothing else is known, 1,000 lb (T. B. Quimby, *A Beginner's
/// Guide to ASCE 7-10*, section on impact loads).
#[must_use]
pub fn object_weight() -> Force {
    Force::new::<pound_force>(1000.0)
}

impl Default for StoppedObject {
    fn default() -> Self {
        Self {
            weight: object_weight(),
            time: Time::new::<second>(0.5),
        }
    }
}

impl StoppedObject {
    /// The force at a velocity.
    ///
    /// # Errors
    /// [`LoadError`] for a velocity, weight or time that cannot be.
    pub fn force(&self, velocity: Velocity) -> Result<Force, LoadError> {
        let stop = standard_gravity() * time("time to stop", self.time)?;
        Ok(weight(self.weight)? * (speed(velocity)? / stop))
    }
}

/// A weight of an object that can float against a building.
pub(super) fn weight(value: Force) -> Result<Force, LoadError> {
    if value.is_finite() && value >= Force::default() {
        Ok(value)
    } else {
        Err(LoadError::Weight(value))
    }
}
