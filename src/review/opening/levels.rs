//! Sill and ground.

use super::Pair;
use super::slips::sd_of_ground;
use crate::quantity::Elevation;
use crate::review::building::{level_slips, proposed};
use crate::review::desk::Desk;
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Contribution, Figure, Point, Topic};
use crate::statement::Written;

/// Those that the proposal states.
pub(super) fn points(desk: &Desk<'_>, pair: &Pair<'_>) -> Vec<Point> {
    let sill = pair.theirs.sill.as_ref().map(|theirs| {
        let known = Known {
            level: pair.ours.sill,
            of: (Contribution::OurSill, desk.sill_sd()),
            missing: "a sill of ours: nobody has measured it",
            reference: "site file, sill of the opening",
        };
        compared(desk, pair, Topic::Sill, theirs, &known)
    });
    let ground = pair.theirs.ground.as_ref().map(|theirs| {
        let lowest = pair.place.lowest_ground;
        let known = Known {
            level: lowest.map(|ground| ground.elevation),
            of: (
                Contribution::OurGround,
                lowest.and_then(|ground| sd_of_ground(desk, ground.source)),
            ),
            missing: "ground of ours: neither surveyed nor in a terrain model (--dem)",
            reference: "lowest ground near the walls, surveyed or of the terrain model",
        };
        compared(desk, pair, Topic::Ground, theirs, &known)
    });
    sill.into_iter().chain(ground).collect()
}

/// What is known of a level on our side.
struct Known {
    level: Option<Elevation>,
    of: (Contribution, Option<f64>),
    missing: &'static str,
    reference: &'static str,
}

/// A higher sill or ground than ours makes barriers lower and water shallower.
fn compared(
    desk: &Desk<'_>,
    pair: &Pair<'_>,
    topic: Topic,
    written: &Written<Elevation>,
    known: &Known,
) -> Point {
    let at = (&pair.subject, topic);
    let figure = known.level.map(Figure::Elevation);
    let theirs = match desk.level(written) {
        Ok(theirs) => theirs,
        Err(missing) => {
            let stated = Proposed::of(Figure::Elevation(written.value), written);
            return Point::unchecked(at, figure, Some(stated), vec![missing], known.reference);
        }
    };
    let Some(ours) = known.level else {
        let missing = vec![known.missing.to_owned()];
        let theirs = Some(proposed(&theirs));
        return Point::unchecked(at, None, theirs, missing, known.reference);
    };
    let tolerance = theirs.tolerance(known.of);
    let point = Point::compared(
        at,
        Figure::Elevation(ours),
        proposed(&theirs),
        tolerance.clone(),
        Sense::LessIsSafer,
        known.reference,
    );
    let slips = point
        .difference()
        .map(|difference| level_slips(desk, &theirs, ours, &tolerance, difference));
    point.with(slips.unwrap_or_default())
}
