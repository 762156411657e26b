//! Freeboard counted twice or left out.

use crate::quantity::Length;
use crate::review::{Finding, Tolerance, Whose};

/// The freeboards that may have been counted.
#[derive(Clone, Copy, Debug, Default)]
pub(in crate::review) struct Freeboards {
    /// By our rule.
    pub(in crate::review) ours: Option<Length>,
    /// As proposed.
    pub(in crate::review) theirs: Option<Length>,
}

/// What freeboard makes of a difference from ours in a level or a height (theirs less ours,
/// metres).
pub(in crate::review) fn freeboard_slips(
    difference: f64,
    freeboards: Freeboards,
    tolerance: &Tolerance,
) -> Vec<Finding> {
    let near = tolerance.half_width();
    let visible = |freeboard: &Length| freeboard.value > near;
    let mut found = Vec::new();
    // Twice is theirs and once more of theirs; where they state none it may be ours.
    let twice = freeboards.theirs.or(freeboards.ours).filter(visible);
    if let Some(freeboard) = twice
        && (difference - freeboard.value).abs() <= near
    {
        found.push(Finding::FreeboardTwice {
            freeboard,
            whose: Whose::Ours,
        });
    }
    if let Some(freeboard) = freeboards.ours.filter(visible)
        && (difference + freeboard.value).abs() <= near
    {
        found.push(Finding::FreeboardForgotten { freeboard });
    }
    found
}
