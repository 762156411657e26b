//! Heights measured from the ground instead of the sill.

use crate::quantity::Length;
use crate::review::{Finding, Tolerance, Whose};

/// How far a sill lies over the ground before it.
#[derive(Clone, Copy, Debug)]
pub(in crate::review) struct Step {
    /// Sill less ground.
    pub(in crate::review) height: Length,
    /// Standard deviation of the ground, where it is known.
    pub(in crate::review) sd: Option<Length>,
}

/// The steps that explain why a height differs from ours or from the proposal's own figures
/// (the height less those, metres).
pub(in crate::review) fn ground_slips(
    difference: f64,
    steps: &[Step],
    tolerance: &Tolerance,
    whose: Whose,
) -> Vec<Finding> {
    let found = steps.iter().find(|step| {
        let deviation = step.sd.map_or(0.0, |sd| 2.0 * sd.value);
        let near = tolerance.half_width().hypot(deviation);
        let over = step.height.value;
        over.abs() > near && (difference - over).abs() <= near
    });
    found
        .map(|step| Finding::FromTheGround {
            sill_above_ground: step.height,
            whose,
        })
        .into_iter()
        .collect()
}
