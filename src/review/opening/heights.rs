//! Protection height and barrier height against ours.

use super::Pair;
use super::slips::{height_slips, over_sill};
use crate::quantity::Length;
use crate::review::desk::Desk;
use crate::review::outcome::Sense;
use crate::review::uncertain::lower_within_ours;
use crate::review::{Contribution, Figure, Point, Tolerance, Topic};
use crate::statement::Written;

/// Both against the height that ours has to protect; a barrier is never lower than that.
pub(super) fn points(desk: &Desk<'_>, pair: &Pair<'_>) -> Vec<Point> {
    let theirs = pair.theirs;
    let (protection, barrier) = (&theirs.protection_height, &theirs.barrier_height);
    let mut points = Vec::new();
    if let Some(written) = protection {
        let rounding = Some(written.rounding_sd());
        points.push(height(
            desk,
            pair,
            Topic::ProtectionHeight,
            written,
            rounding,
        ));
    }
    match barrier {
        // A barrier is made to a millimetre, whatever the last digit of its height is.
        Some(written) => points.push(height(desk, pair, Topic::BarrierHeight, written, None)),
        None => points.push(no_barrier_height(desk, pair)),
    }
    points
}

/// Where the height that both are held against comes from; where the opening has a place of its
/// own, the design level there is another than the building's.
pub(super) fn reference(desk: &Desk<'_>, pair: &Pair<'_>) -> String {
    let elsewhere = pair.ours.place.as_ref();
    match elsewhere.and_then(|place| place.design_level.as_ref()) {
        Some(design) => format!(
            "our design level where it stands, {}, less our sill",
            desk.units().elevation(design.elevation)
        ),
        None => "our design level less our sill".to_owned(),
    }
}

fn height(
    desk: &Desk<'_>,
    pair: &Pair<'_>,
    topic: Topic,
    written: &Written<Length>,
    rounding: Option<f64>,
) -> Point {
    let at = (&pair.subject, topic);
    let ours = pair.ours.protection_height;
    let figure = ours.map(Figure::Height);
    let theirs = match over_sill(desk, pair, written) {
        Ok(theirs) => theirs,
        Err(missing) => {
            return Point::unchecked(at, figure, None, vec![missing], reference(desk, pair));
        }
    };
    let Some(ours) = ours else {
        let missing = no_height(desk, pair);
        return Point::unchecked(at, None, Some(theirs), missing, reference(desk, pair));
    };
    let mut tolerance = Tolerance::default()
        .and(Contribution::OurLevel, desk.design_sd(pair.place))
        .and(Contribution::OurSill, desk.sill_sd());
    if let Some(rounding) = rounding {
        tolerance = tolerance.and(Contribution::LastDigit, Some(rounding));
    }
    let point = Point::compared(
        at,
        Figure::Height(ours),
        theirs,
        tolerance.clone(),
        Sense::MoreIsSafer,
        reference(desk, pair),
    );
    let slips = height_slips(desk, pair, &point, written, &tolerance);
    let lower = lower_within_ours(&point);
    point.with(slips).with(lower)
}

fn no_barrier_height(desk: &Desk<'_>, pair: &Pair<'_>) -> Point {
    let missing = vec!["barrier_height in the proposal".to_owned()];
    let ours = pair.ours.protection_height.map(Figure::Height);
    Point::unchecked(
        (&pair.subject, Topic::BarrierHeight),
        ours,
        None,
        missing,
        reference(desk, pair),
    )
}

/// Why there is no height of ours.
fn no_height(desk: &Desk<'_>, pair: &Pair<'_>) -> Vec<String> {
    let why = pair.ours.reasons.first();
    let why = why.map(|reason| reason.text(desk.units()));
    vec![format!(
        "a protection height of ours: {}",
        why.unwrap_or_default()
    )]
}
