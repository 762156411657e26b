//! Whether a space counts as substantially impermeable.

use super::{Inflow, NotCounted};
use crate::quantity::unit::{Area, Time, Volume, VolumeRate, hour, inch};
use crate::quantity::{Impossible, Length, finite, not_negative, positive};
use crate::statement::{Citation, Confidence};

/// The water that may gather, without a pump, in [`impermeable_period`]: 4 in.
#[must_use]
pub fn impermeable_depth() -> Length {
    Length::new::<inch>(4.0)
}

/// The time of the definition: 24 hours.
#[must_use]
pub fn impermeable_period() -> Time {
    Time::new::<hour>(24.0)
}

/// What the definition makes of an inflow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ImpermeableVerdict {
    /// No more than 4 in gather in 24 hours.
    Within,
    /// More than 4 in gather in 24 hours.
    Exceeded,
    /// What has a number stays within, but a way in has none.
    Unknown,
}

/// An inflow held against the definition of "substantially impermeable".
#[derive(Clone, Debug, PartialEq)]
pub struct Impermeability {
    /// What the definition makes of it.
    pub verdict: ImpermeableVerdict,
    /// Water on the floor after 24 hours without a pump.
    pub depth_in_24_hours: Length,
    /// Water on the floor after the stated duration of the flood, without a pump.
    pub depth_in_flood: Option<Length>,
    /// The inflow that just reaches 4 in in 24 hours.
    pub greatest_flow: VolumeRate,
    /// The definition.
    pub citation: Citation,
    /// Ways in without a number: the depths are "at least".
    pub not_counted: Vec<NotCounted>,
}

/// Rounding in the last digits does not pass a limit.
const ROUNDING: f64 = 1e-9;

/// Holds an inflow against the definition: no more than 4 in of water gather on the floor in
/// 24 hours with nothing to remove it.
///
/// ASCE 24 section 1.1 and USACE EP 1165-2-314, the definition as quoted in a trade magazine
/// (constructionspecifier.com/time-to-rethink-floodproofing/5). A pump is required besides:
/// the definition is no substitute for [`super::pump_demand`]. Rain belongs in the sum only
/// where it falls into the space itself.
///
/// # Errors
/// [`Impossible`] for a floor area or duration that cannot be.
///
/// ```
/// use sillmark::inflow::{ImpermeableVerdict, Inflow, impermeability};
/// use sillmark::quantity::unit::{Area, square_foot, us_gallon_per_minute};
/// let found = impermeability(&Inflow::default(), Area::new::<square_foot>(1000.0), None)?;
/// assert_eq!(found.verdict, ImpermeableVerdict::Within);
/// assert!((found.greatest_flow.get::<us_gallon_per_minute>() - 1.73).abs() < 0.005);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn impermeability(
    inflow: &Inflow,
    floor_area: Area,
    flood: Option<Time>,
) -> Result<Impermeability, Impossible> {
    positive("floor area", floor_area.value, "m²")?;
    if let Some(duration) = flood {
        not_negative("duration of the flood", duration.value, "s")?;
    }
    let depth_in = |duration: Time| {
        let volume: Volume = inflow.total() * duration;
        let depth: Length = volume / floor_area;
        finite("depth of the water inside", depth.value, "m")?;
        Ok(depth)
    };
    let depth_in_24_hours = depth_in(impermeable_period())?;
    let verdict = if depth_in_24_hours > impermeable_depth() * (1.0 + ROUNDING) {
        ImpermeableVerdict::Exceeded
    } else if inflow.is_complete() {
        ImpermeableVerdict::Within
    } else {
        ImpermeableVerdict::Unknown
    };
    Ok(Impermeability {
        verdict,
        depth_in_24_hours,
        depth_in_flood: flood.map(depth_in).transpose()?,
        greatest_flow: floor_area * impermeable_depth() / impermeable_period(),
        citation: impermeable_citation(),
        not_counted: inflow.not_counted.clone(),
    })
}

/// Where the definition of "substantially impermeable" stands.
#[must_use]
pub fn impermeable_citation() -> Citation {
    Citation {
        source: "ASCE 24 section 1.1 and USACE EP 1165-2-314, substantially impermeable, as quoted at constructionspecifier.com/time-to-rethink-floodproofing/5".into(),
        confidence: Confidence::Seen,
    }
}
