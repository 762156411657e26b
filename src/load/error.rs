//! Numbers that no load can be worked out from.

use crate::quantity::Length;
use crate::quantity::unit::{Force, Time, Velocity, meter, meter_per_second, newton, second};

/// A number that a load cannot be worked out from.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum LoadError {
    /// A height or depth is not a number.
    #[error("{name} \"{} m\" is not a height; accepted: a finite length", .value.get::<meter>())]
    Height {
        /// Which height.
        name: &'static str,
        /// Its value.
        value: Length,
    },
    /// A length that has to be above zero, or at least not below it.
    #[error("{name} \"{} m\" is not accepted; accepted: a finite length of {accepted}", .value.get::<meter>())]
    Length {
        /// Which length.
        name: &'static str,
        /// Its value.
        value: Length,
        /// The accepted range.
        accepted: &'static str,
    },
    /// A velocity is negative or not a number.
    #[error("velocity \"{} m/s\" is not a speed of water; accepted: a finite speed of 0 or more", .0.get::<meter_per_second>())]
    Velocity(Velocity),
    /// A time is not above zero.
    #[error("{name} \"{} s\" is not accepted; accepted: a finite time above 0", .value.get::<second>())]
    Time {
        /// Which time.
        name: &'static str,
        /// Its value.
        value: Time,
    },
    /// A weight is negative or not a number.
    #[error("weight of the object \"{} N\" is not accepted; accepted: a finite weight of 0 or more", .0.get::<newton>())]
    Weight(Force),
    /// A coefficient or factor lies outside its range.
    #[error("{name} \"{value}\" is not accepted; accepted: {accepted}")]
    Coefficient {
        /// Which coefficient.
        name: &'static str,
        /// Its value.
        value: f64,
        /// The accepted range.
        accepted: &'static str,
    },
    /// The velocity head stands for the flow only up to 10 ft/s.
    #[error(
        "the velocity \"{} m/s\" is above what a velocity head stands for; accepted: up to \
         10 ft/s (3.048 m/s)",
        .0.get::<meter_per_second>()
    )]
    TooFastForHead(Velocity),
}

pub(super) fn height(name: &'static str, value: Length) -> Result<Length, LoadError> {
    if value.is_finite() {
        Ok(value)
    } else {
        Err(LoadError::Height { name, value })
    }
}

pub(super) fn not_negative(name: &'static str, value: Length) -> Result<Length, LoadError> {
    if value.is_finite() && value >= Length::default() {
        Ok(value)
    } else {
        Err(LoadError::Length {
            name,
            value,
            accepted: "0 or more",
        })
    }
}

pub(super) fn positive(name: &'static str, value: Length) -> Result<Length, LoadError> {
    if value.is_finite() && value > Length::default() {
        Ok(value)
    } else {
        Err(LoadError::Length {
            name,
            value,
            accepted: "more than 0",
        })
    }
}

pub(super) fn speed(value: Velocity) -> Result<Velocity, LoadError> {
    if value.is_finite() && value >= Velocity::default() {
        Ok(value)
    } else {
        Err(LoadError::Velocity(value))
    }
}

pub(super) fn time(name: &'static str, value: Time) -> Result<Time, LoadError> {
    if value.is_finite() && value > Time::default() {
        Ok(value)
    } else {
        Err(LoadError::Time { name, value })
    }
}

/// A coefficient between two bounds, both accepted; what is not a number is refused.
pub(super) fn coefficient(
    name: &'static str,
    value: f64,
    range: std::ops::RangeInclusive<f64>,
    accepted: &'static str,
) -> Result<f64, LoadError> {
    if range.contains(&value) {
        Ok(value)
    } else {
        Err(LoadError::Coefficient {
            name,
            value,
            accepted,
        })
    }
}
