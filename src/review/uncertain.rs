//! What lies lower than ours, but not by more than ours is uncertain by.

use super::outcome::OutcomeKind;
use super::{Contribution, Figure, Finding, Point, Tolerance};
use crate::quantity::unit::{Length, meter};

/// Half of the last digit that heights are told with, 0.01 ft: nobody sees less.
const NOTHING: f64 = 0.005 * 0.3048;

/// The finding that a figure which holds is lower than ours, where only what our own level and
/// sill are uncertain by lets it hold: it cannot be rejected, and the reader has to know why.
pub(super) fn lower_within_ours(point: &Point) -> Vec<Finding> {
    let found = || {
        if point.outcome.kind() != OutcomeKind::Holds {
            return None;
        }
        let (Figure::Elevation(_) | Figure::Height(_)) = point.ours.as_ref()? else {
            return None;
        };
        let tolerance = point.tolerance.as_ref()?;
        let (own, _) = point.ours.as_ref()?.in_si()?;
        let (their, _) = point.theirs.as_ref()?.figure.in_si()?;
        let lower = own - their;
        let exact = without_ours(tolerance);
        (lower > NOTHING && !exact.takes(own, their)).then(|| Finding::WithinOurUncertainty {
            by: Length::new::<meter>(lower),
            tolerance: Length::new::<meter>(tolerance.half_width()),
        })
    };
    found().into_iter().collect()
}

/// What is left of a tolerance if our level, sill and ground were known exactly.
fn without_ours(tolerance: &Tolerance) -> Tolerance {
    let ours = [
        Contribution::OurLevel,
        Contribution::OurSill,
        Contribution::OurGround,
    ];
    let mut rest = tolerance.clone();
    rest.parts.retain(|part| !ours.contains(&part.of));
    rest
}
