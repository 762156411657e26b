//! Water over the top of a barrier.

use super::gap::strip_flow;
use super::{Coefficient, Gap, InflowPart, Way};
use crate::load::standard_gravity;
use crate::quantity::unit::{FlowPerLength, VolumeRate, cubic_meter_per_second, foot, meter};
use crate::quantity::{Impossible, Length, finite, not_negative, positive};
use crate::statement::{Citation, Confidence};

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
            return Ok(part(
                WeirCoefficient::of_discharge(coefficient.value).flow(length, wet),
                "Q = ⅔·Cd·√(2·g)·L·H^1.5",
                coefficient.citation.clone(),
            ));
        }
    };
    Ok(part(coefficient.flow(length, wet), method, seen(source)))
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
    let over_height = WeirCoefficient::sharp_over_height(wet, barrier_height);
    if over_height <= WeirCoefficient::francis() {
        return Ok(francis);
    }
    Ok(part(
        over_height.flow(length, wet),
        "Q = (3.27 + 0.40·H/P)·L·H^1.5 (feet)",
        seen(EVERETT),
    ))
}

/// One step of a notch that widens upwards, or of barriers with tops at several heights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NotchStep {
    /// Width of the notch over the height of this step.
    pub width: Length,
    /// Height of this step.
    pub height: Length,
}

/// The flow through a notch of rectangular steps, named from the lowest up, with the water
/// `head` above the lowest crest: Q = Σ ⅔·Cd·bᵢ·√(2·g)·(h₂ᵢ^1.5 − h₁ᵢ^1.5), h the depths of
/// each step's foot and top below the water. The highest step is open above.
///
/// # Errors
/// [`Impossible`] for a width, height, head or coefficient that cannot be.
pub fn stepped_notch(
    steps: &[NotchStep],
    head: Length,
    coefficient: &Coefficient,
) -> Result<InflowPart, Impossible> {
    finite("head over the lowest crest", head.value, "m")?;
    coefficient.check()?;
    let mut flow = VolumeRate::default();
    let mut from = Length::default();
    for (index, step) in steps.iter().enumerate() {
        not_negative("width of a step", step.width.value, "m")?;
        not_negative("height of a step", step.height.value, "m")?;
        let top = from + step.height;
        let open_above = index + 1 == steps.len();
        let to = if open_above { top.max(head) } else { top };
        let strip = Gap {
            width: step.width,
            from,
            to,
        };
        flow += strip_flow(&strip, head, coefficient.value);
        from = top;
    }
    Ok(part(
        flow,
        "Q = Σ ⅔·Cd·b·√(2·g)·(h₂^1.5 − h₁^1.5) over the steps",
        coefficient.citation.clone(),
    ))
}

/// Depth of a flow at critical speed in a rectangular channel, (q²/g)^⅓, with q the flow on
/// each metre of width; over a broad crest it is ⅔ of the head.
///
/// # Errors
/// [`Impossible`] for a flow that is negative or not finite.
pub fn critical_depth(flow: FlowPerLength) -> Result<Length, Impossible> {
    not_negative("flow on each metre of width", flow.value, "m²/s")?;
    Ok((flow * flow / standard_gravity()).cbrt())
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

fn part(flow: VolumeRate, method: &'static str, citation: Citation) -> InflowPart {
    InflowPart {
        way: Way::Overtopping,
        flow,
        method,
        citation,
        not_stated: Vec::new(),
    }
}

fn seen(source: &str) -> Citation {
    Citation {
        source: source.into(),
        confidence: Confidence::Seen,
    }
}
