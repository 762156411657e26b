//! Water that the methods here do not cover.

use std::fmt;

use crate::quantity::Length;

/// Why the load is not the whole of what the water does: an engineer has to look.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outside {
    /// The water is faster than 10 ft/s; its drag is in the load.
    FasterThanVelocityHead,
    /// The water is faster than 10 ft/s, and its drag is taken with the greatest coefficient,
    /// since the width of the wall is not stated.
    DragWithoutWidth,
    /// Waves that do not break are not in the load.
    NonBreakingWaves,
    /// Waves break over an opening below the ground, where they press the soil as well.
    WaveOnBuriedOpening,
    /// The crests of the waves pass over the barrier.
    WaveOverTop {
        /// Height of the crest over the sill.
        crest: Length,
        /// Height of the barrier.
        top: Length,
    },
    /// No barrier is designed for extreme debris.
    ExtremeDebris,
    /// Objects are carried by the water at a speed that nobody stated; their blow is not in the
    /// load.
    DebrisWithoutVelocity,
    /// The water stands below the ground, so that soil above it is not saturated; the soil
    /// is not in the load.
    UnsaturatedSoil,
}

impl fmt::Display for Outside {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::FasterThanVelocityHead => "the water flows faster than 10 ft/s (3.0 m/s)",
            Self::DragWithoutWidth => {
                "the water flows faster than 10 ft/s (3.0 m/s); its drag is taken with the \
                 greatest coefficient of the table, since the width of the wall is not stated"
            }
            Self::NonBreakingWaves => "the load of waves that do not break is not included",
            Self::WaveOnBuriedOpening => "waves break over an opening below the ground",
            Self::WaveOverTop { .. } => "the crests of the waves pass over the barrier",
            Self::ExtremeDebris => "no barrier is designed for extreme debris",
            Self::DebrisWithoutVelocity => {
                "debris is stated, and its blow is not in the load, since the velocity of the \
                 water is not stated"
            }
            Self::UnsaturatedSoil => {
                "the water stands below the ground, and the load of soil that is not saturated \
                 is not included"
            }
        })
    }
}
