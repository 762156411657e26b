//! Water over tops at several heights.

use super::gap::strip_flow;
use super::{Coefficient, Gap, InflowPart, Way};
use crate::quantity::unit::VolumeRate;
use crate::quantity::{Impossible, Length, finite, not_negative};

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
///
/// ```
/// use sillmark::inflow::{Coefficient, NotchStep, stepped_notch};
/// use sillmark::quantity::unit::{Length, cubic_foot_per_second, foot};
/// let step = |width, height| NotchStep {
///     width: Length::new::<foot>(width),
///     height: Length::new::<foot>(height),
/// };
/// // A low barrier of 3 ft beside one of 4 ft that is 0.5 ft higher, 0.7 ft of water over it.
/// let steps = [step(3.0, 0.5), step(7.0, 0.0)];
/// let flow = stepped_notch(&steps, Length::new::<foot>(0.7), &Coefficient::orifice())?.flow;
/// assert!((flow.get::<cubic_foot_per_second>() - 6.788).abs() < 5e-4);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
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
    let part = InflowPart {
        way: Way::Overtopping,
        flow,
        method: "Q = Σ ⅔·Cd·b·√(2·g)·(h₂^1.5 − h₁^1.5) over the steps",
        citation: coefficient.citation.clone(),
        not_stated: Vec::new(),
    };
    part.checked()
}
