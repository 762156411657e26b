//! The pump that keeps up with the inflow.

use super::{Inflow, Missing, NotCounted};
use crate::quantity::unit::VolumeRate;
use crate::quantity::{Impossible, finite};
use crate::statement::{Citation, Confidence};

/// What a pump has to carry.
#[derive(Clone, Debug, PartialEq)]
pub struct PumpDemand {
    /// The sum of the inflows that have a number.
    pub inflow: VolumeRate,
    /// How much more than that the pump should carry, as a factor.
    pub margin: f64,
    /// Inflow times margin; "at least" where something is not counted. It is needed at the
    /// head the pump works against, which the pump maker's curve shows.
    pub capacity: VolumeRate,
    /// The sum it rests on.
    pub citation: Citation,
    /// Ways in without a number.
    pub not_counted: Vec<NotCounted>,
    /// What was not stated.
    pub not_stated: Vec<Missing>,
}

impl PumpDemand {
    /// Whether the capacity is a lower bound, because a way in has no number.
    #[must_use]
    pub fn is_at_least(&self) -> bool {
        !self.not_counted.is_empty()
    }
}

/// The capacity of a pump for an inflow: Q = (Qa + Qb + …) × margin.
///
/// FEMA P-259 adds runoff, seepage and other inflow and names no margin (from memory); so
/// there is none unless the user states it, and its absence is listed.
///
/// # Errors
/// [`Impossible`] for a margin below 1 or not finite.
///
/// ```
/// use sillmark::inflow::{Inflow, Missing, pump_demand};
/// let pump = pump_demand(&Inflow::default(), None)?;
/// assert_eq!(pump.not_stated, [Missing::PumpMargin, Missing::PumpHead]);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn pump_demand(inflow: &Inflow, margin: Option<f64>) -> Result<PumpDemand, Impossible> {
    let factor = margin.unwrap_or(1.0);
    finite("margin of the pump", factor, "")?;
    if factor < 1.0 {
        return Err(Impossible::Outside {
            what: "margin of the pump",
            value: factor,
            unit: "",
            accepted: "a factor of 1 or more, such as 1.5".into(),
        });
    }
    let capacity = inflow.total() * factor;
    finite("capacity of the pump", capacity.value, "m³/s")?;
    let mut not_stated = inflow.not_stated();
    if margin.is_none() {
        not_stated.push(Missing::PumpMargin);
    }
    not_stated.push(Missing::PumpHead);
    Ok(PumpDemand {
        inflow: inflow.total(),
        margin: factor,
        capacity,
        citation: Citation {
            source: "FEMA P-259, interior drainage: Q = Qa + Qb + Qc".into(),
            confidence: Confidence::FromMemory,
        },
        not_counted: inflow.not_counted.clone(),
        not_stated,
    })
}
