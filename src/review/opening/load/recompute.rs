//! A load recomputed from the depth that the proposal itself states.

use super::Stated;
use super::formula::{Formulas, Load};
use crate::quantity::Length;
use crate::review::explain::other_unit;
use crate::review::outcome::Sense;
use crate::review::{Contribution, Finding, LoadSlip, Point, Subject, Tolerance, Topic};
use crate::statement::Written;

/// The load from its own depth beside the load as stated; where they differ, every slip that
/// gives the stated one. `width` in metres, 1 for a load on each unit of width.
pub(super) fn recompute(
    at: (&Subject, Topic),
    stated: &Stated,
    depth: &Written<Length>,
    formulas: &Formulas,
    width: f64,
) -> Point {
    let Some(formula) = formulas.formula(stated.quantity) else {
        let missing = "a formula for the moment of breaking waves: the code gives none";
        return super::unchecked(at, stated, missing.to_owned());
    };
    let h = depth.value.value;
    let load = |of: &Load<'_>, h: f64| of(h) * width;
    let right = load(&formula.right, h);
    let tolerance = |of: &Load<'_>| {
        let of_depth = slope(|h| load(of, h), h) * depth.rounding_sd();
        Tolerance::default()
            .and(
                Contribution::LastDigit,
                Some(stated.rounding.hypot(of_depth)),
            )
            .and_at_most(
                Contribution::WaterWeight,
                load(of, h) * formulas.weight_spread(),
            )
    };
    let near = tolerance(&formula.right);
    let ours = stated.figure.difference(right);
    let point = Point::compared(
        at,
        ours.unwrap_or_else(|| stated.figure.clone()),
        stated.proposed(),
        near.clone(),
        Sense::MoreIsSafer,
        formula.reference,
    );
    if point.difference().is_none() {
        return point;
    }
    let right = &formula.right;
    let in_other_unit = other_unit(&depth.text).map(|(unit, factor)| {
        let of: Load<'_> = Box::new(move |h| right(h * factor));
        (LoadSlip::DepthTakenIn(unit), of)
    });
    let right = load(right, h);
    let slips = formula.slips.iter().chain(&in_other_unit);
    let slips = slips.filter_map(|(slip, of)| {
        let wrong = load(of, h);
        let fits = tolerance(of).takes(wrong, stated.si) && !near.takes(wrong, right);
        let figure = stated.figure.difference(wrong)?;
        fits.then_some(Finding::Load {
            slip: *slip,
            figure,
        })
    });
    let slips: Vec<Finding> = slips.collect();
    point.with(slips)
}

/// How much a load grows with the depth, from two depths a ten-thousandth apart.
fn slope(load: impl Fn(f64) -> f64, h: f64) -> f64 {
    let step = (h * 1e-4).max(1e-9);
    (load(h + step) - load(h - step)).abs() / (2.0 * step)
}
