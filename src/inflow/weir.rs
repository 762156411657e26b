//! Water over the top of a barrier.

use super::{Coefficient, InflowPart, Way, WeirCoefficient};
use crate::quantity::unit::VolumeRate;
use crate::quantity::{Impossible, Length, finite, not_negative, positive};
use crate::statement::{Citation, Confidence};

/// What the water falls over.
#[derive(Clone, Debug, PartialEq)]
pub enum Crest {
    /// So broad that the water runs level on it, at critical depth.
    Broad,
    /// Sharp, over the whole width (Francis).
    Sharp,
    /// Sharp, the stream drawn in at both ends: length L − 0.2·H.
    SharpContracted {
        /// Height of the crest above the ground before it.
        crest_height: Length,
    },
    /// A stated discharge coefficient in ⅔·Cd·√(2·g)·L·H^1.5.
    Stated(Coefficient),
}

/// The flow over a crest of `length` at a `head` of water above it; a negative head is water
/// below the crest, which is no flow.
///
/// # Errors
/// [`Impossible`] for a length, head or coefficient that cannot be, and for a head so great
/// that a contracted stream would have no width left.
///
/// ```
/// use sillmark::inflow::{Crest, weir_flow};
/// use sillmark::quantity::unit::{Length, cubic_foot_per_second, foot};
/// let (length, head) = (Length::new::<foot>(20.0), Length::new::<foot>(0.8));
/// let flow = |crest| -> Result<f64, sillmark::quantity::Impossible> {
///     Ok(weir_flow(&crest, length, head)?.flow.get::<cubic_foot_per_second>())
/// };
/// assert!((flow(Crest::Broad)? - 44.20).abs() < 0.01);
/// assert!((flow(Crest::Sharp)? - 47.66).abs() < 0.01);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn weir_flow(crest: &Crest, length: Length, head: Length) -> Result<InflowPart, Impossible> {
    not_negative("length of the crest", length.value, "m")?;
    finite("head over the crest", head.value, "m")?;
    let wet = head.max(Length::default());
    let (coefficient, length, method, source) = match crest {
        Crest::Broad => (
            WeirCoefficient::broad_crested(),
            length,
            "Q = ⅔·√(2·g/3)·L·H^1.5",
            "broad crest at critical depth, SDSU CIVE530 midterm 1 (fall 2005, facets.sdsu.edu): C = 3.087 in feet",
        ),
        Crest::Sharp => (
            WeirCoefficient::francis(),
            length,
            "Q = 3.33·L·H^1.5 (feet)",
            "Francis' sharp crest, public course notes: C = 3.33 in feet, 1.84 in metres",
        ),
        Crest::SharpContracted { crest_height } => {
            positive("height of the crest", crest_height.value, "m")?;
            (
                WeirCoefficient::sharp_over_height(wet, *crest_height),
                contracted(length, wet)?,
                "Q = (3.27 + 0.40·H/P)·(L − 0.2·H)·H^1.5 (feet)",
                EVERETT,
            )
        }
        Crest::Stated(coefficient) => {
            coefficient.check()?;
            return part(
                WeirCoefficient::of_discharge(coefficient.value).flow(length, wet),
                "Q = ⅔·Cd·√(2·g)·L·H^1.5",
                coefficient.citation.clone(),
            );
        }
    };
    part(coefficient.flow(length, wet), method, seen(source))
}

const EVERETT: &str = "sharp crest, city of Everett (Washington) drainage manual vol. III, December 2014, equation 6: C = 3.27 + 0.40·H/P in feet";

/// Water over a barrier into the room behind, on the safe side for filling.
///
/// A plank is thin, so the water springs clear of it as from a sharp crest; a sharp crest
/// passes 8 % more than a broad one at the same head (3.33 against 3.087 in feet). The
/// larger of Francis' 3.33 and 3.27 + 0.40·H/P is used, P the height of the barrier, and
/// the stream is not drawn in at the ends. Not seen was up to which H/P the second holds.
///
/// # Errors
/// As [`weir_flow`]; the barrier's height has to be above zero.
///
/// ```
/// use sillmark::inflow::overtopping;
/// use sillmark::quantity::unit::{Length, cubic_foot_per_second, foot};
/// let feet = Length::new::<foot>;
/// let flow = overtopping(feet(3.0), feet(0.25), feet(2.0))?.flow; // C 3.33
/// assert!((flow.get::<cubic_foot_per_second>() - 1.249).abs() < 5e-4);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn overtopping(
    length: Length,
    head: Length,
    barrier_height: Length,
) -> Result<InflowPart, Impossible> {
    positive("height of the barrier", barrier_height.value, "m")?;
    let francis = weir_flow(&Crest::Sharp, length, head)?;
    let wet = head.max(Length::default());
    let safe = WeirCoefficient::over_a_barrier(wet, barrier_height);
    if safe <= WeirCoefficient::francis() {
        return Ok(francis);
    }
    part(
        safe.flow(length, wet),
        "Q = (3.27 + 0.40·H/P)·L·H^1.5 (feet)",
        seen(EVERETT),
    )
}

fn contracted(length: Length, head: Length) -> Result<Length, Impossible> {
    let left = length - head * 0.2;
    if left.value > 0.0 || head.value <= 0.0 {
        return Ok(left);
    }
    Err(Impossible::Outside {
        what: "head over the crest",
        value: head.value,
        unit: "m",
        accepted: format!(
            "less than 5 times the length of the crest, {} m",
            length.value
        ),
    })
}

fn part(
    flow: VolumeRate,
    method: &'static str,
    citation: Citation,
) -> Result<InflowPart, Impossible> {
    let part = InflowPart {
        way: Way::Overtopping,
        flow,
        method,
        citation,
        not_stated: Vec::new(),
    };
    part.checked()
}

fn seen(source: &str) -> Citation {
    Citation {
        source: source.into(),
        confidence: Confidence::Seen,
    }
}
