//! What cannot be an anchorage, or a force on one.

use thiserror::Error;

use crate::quantity::unit::{Area, Force, Length, Pressure};

/// Why an anchorage or a demand was refused.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum AnchorError {
    /// A quantity is zero, negative or not finite.
    #[error("{what} \"{value}\" is not above 0; accepted: a finite value above 0")]
    NotAboveZero {
        /// What it is.
        what: &'static str,
        /// Its value.
        value: String,
    },
    /// A quantity is negative or not finite.
    #[error("{what} \"{value}\" is negative or not finite; accepted: a finite value from 0")]
    Negative {
        /// What it is.
        what: &'static str,
        /// Its value.
        value: String,
    },
    /// A number is outside the range that the clause gives.
    #[error("{what} \"{value}\" is out of range; accepted: {accepted}")]
    OutOfRange {
        /// What it is.
        what: &'static str,
        /// Its value.
        value: String,
        /// The range, with its clause.
        accepted: &'static str,
    },
    /// There are no anchors.
    #[error("{what} \"0\" is not above 0; accepted: a whole number from 1")]
    NoAnchors {
        /// What there are none of.
        what: &'static str,
    },
    /// The anchors reach through the member.
    #[error(
        "embedment \"{embedment}\" is not less than the thickness; accepted: an embedment below \"{thickness}\""
    )]
    ThroughMember {
        /// `h_ef`.
        embedment: String,
        /// `h_a`.
        thickness: String,
    },
    /// The greatest share is less than an even one.
    #[error(
        "greatest {what} of an anchor \"{greatest}\" is less than an even share; accepted: at least \"{even}\""
    )]
    ShareTooSmall {
        /// Tension or shear.
        what: &'static str,
        /// The greatest share as stated.
        greatest: String,
        /// The force over the number of anchors.
        even: String,
    },
    /// A moment on a single row of anchors.
    #[error(
        "moment \"{moment}\" on a single row of anchors has no lever arm; accepted: 2 rows or more, or no moment"
    )]
    NoLeverArm {
        /// The moment.
        moment: String,
    },
    /// Heights that do not rise.
    #[error(
        "height \"{height}\" of an anchor is not above the one before it; accepted: heights that rise from one to the next"
    )]
    HeightsDoNotRise {
        /// The height.
        height: String,
    },
    /// A stretch of load whose end is not above its start.
    #[error("end \"{to}\" of a load is not above its start; accepted: an end above \"{from}\"")]
    EmptyBand {
        /// Start.
        from: String,
        /// End.
        to: String,
    },
}

/// A quantity that an error can show.
pub(super) trait Shown: Copy {
    /// The value in SI base units.
    fn number(self) -> f64;
    /// The unit.
    const UNIT: &'static str;

    /// Both, as an error quotes them.
    fn shown(self) -> String {
        format!("{} {}", self.number(), Self::UNIT)
    }
}

macro_rules! shown {
    ($($quantity:ty: $unit:literal),+) => {$(
        impl Shown for $quantity {
            const UNIT: &'static str = $unit;
            fn number(self) -> f64 {
                self.value
            }
        }
    )+};
}

shown!(Length: "m", Area: "m²", Force: "N", Pressure: "Pa");

/// Refuses what is not finite and above 0.
pub(super) fn above_zero<Q: Shown>(what: &'static str, quantity: Q) -> Result<(), AnchorError> {
    let number = quantity.number();
    if number.is_finite() && number > 0.0 {
        Ok(())
    } else {
        Err(AnchorError::NotAboveZero {
            what,
            value: quantity.shown(),
        })
    }
}

/// Refuses what is not finite or below 0.
pub(super) fn not_negative<Q: Shown>(what: &'static str, quantity: Q) -> Result<(), AnchorError> {
    let number = quantity.number();
    if number.is_finite() && number >= 0.0 {
        Ok(())
    } else {
        Err(AnchorError::Negative {
            what,
            value: quantity.shown(),
        })
    }
}
