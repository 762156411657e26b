//! Loads: the depth that they are taken for, and whether they follow from it.

mod formula;
mod recompute;
mod still;
mod waves;

use super::Pair;
use super::heights::reference;
use super::slips::height_slips;
use crate::proposal::{ProposedLoad, ProposedOpening};
use crate::quantity::Length;
use crate::review::desk::{Desk, is_coastal_high_hazard};
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::uncertain::lower_within_ours;
use crate::review::{Contribution, Figure, Finding, Point, Subject, Tolerance, Topic};
use crate::site::Waves;
use crate::statement::{InSi, Written};
use formula::{Formulas, Quantity};
use recompute::recompute;

/// What the proposal states of loads; `pair` is there for an opening that the site has.
pub(super) fn points(
    desk: &Desk<'_>,
    subject: &Subject,
    theirs: &ProposedOpening,
    pair: Option<&Pair<'_>>,
) -> Vec<Point> {
    let load = &theirs.load;
    let mut points: Vec<Point> = pair
        .and_then(|pair| depth(desk, pair, load))
        .into_iter()
        .collect();
    let formulas = Formulas::of(desk, load);
    for stated in stated(load) {
        let at = (subject, stated.topic);
        let per_width = stated.quantity != Quantity::Force;
        let width = pair.and_then(|pair| pair.ours.opening.width);
        let point = match (&formulas, load.depth.as_ref(), per_width, width) {
            (Err(missing), ..) => unchecked(at, &stated, missing.clone()),
            (_, None, ..) => unchecked(at, &stated, "load.depth in the proposal".to_owned()),
            (_, _, false, None) => unchecked(at, &stated, "the width of the opening".to_owned()),
            (Ok(formulas), Some(depth), ..) => {
                let width = width.filter(|_| !per_width);
                let width = width.map_or(1.0, |width| width.value);
                recompute(at, &stated, depth, formulas, width)
            }
        };
        let left_out = pair.is_some_and(|pair| waves_left_out(desk, pair));
        points.push(point.with(left_out.then_some(Finding::WavesLeftOut)));
    }
    points
}

/// Whether waves break at an opening, and the proposal has a load of still water.
fn waves_left_out(desk: &Desk<'_>, pair: &Pair<'_>) -> bool {
    let still = matches!(pair.theirs.load.waves, None | Some(Waves::None));
    let ours = desk.assessment.site.conditions.water.waves;
    still && (ours == Some(Waves::Breaking) || is_coastal_high_hazard(pair.place))
}

/// A load that the proposal states.
struct Stated {
    topic: Topic,
    quantity: Quantity,
    figure: Figure,
    text: String,
    si: f64,
    rounding: f64,
}

impl Stated {
    fn of<Value: InSi>(
        topic: Topic,
        quantity: Quantity,
        written: &Written<Value>,
        figure: impl Fn(Value) -> Figure,
    ) -> Self {
        Self {
            topic,
            quantity,
            figure: figure(written.value),
            text: written.text.clone(),
            si: written.value.in_si(),
            rounding: written.rounding_sd(),
        }
    }

    fn proposed(&self) -> Proposed {
        Proposed {
            figure: self.figure.clone(),
            written: self.text.clone(),
        }
    }
}

fn stated(load: &ProposedLoad) -> Vec<Stated> {
    use Quantity as Q;
    let pressure = load.pressure.as_ref();
    let force = load.force_per_width.as_ref();
    let moment = load.moment_per_width.as_ref();
    let whole = load.force.as_ref();
    [
        pressure.map(|it| Stated::of(Topic::Pressure, Q::Pressure, it, Figure::Pressure)),
        force.map(|it| Stated::of(Topic::ForcePerWidth, Q::ForcePerWidth, it, Figure::LineLoad)),
        moment.map(|it| {
            Stated::of(
                Topic::MomentPerWidth,
                Q::MomentPerWidth,
                it,
                Figure::MomentPerWidth,
            )
        }),
        whole.map(|it| Stated::of(Topic::Force, Q::Force, it, Figure::Force)),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn unchecked(at: (&Subject, Topic), stated: &Stated, missing: String) -> Point {
    Point::unchecked(at, None, Some(stated.proposed()), vec![missing], "")
}

/// The depth that the load is taken for, against our design level over the sill. Where waves
/// break it is one over the ground, which is another.
fn depth(desk: &Desk<'_>, pair: &Pair<'_>, load: &ProposedLoad) -> Option<Point> {
    let written = load.depth.as_ref()?;
    if matches!(load.waves, Some(Waves::Breaking | Waves::NonBreaking)) {
        return None;
    }
    let ours: Length = pair.ours.protection_height?;
    let tolerance = Tolerance::default()
        .and(Contribution::OurLevel, desk.design_sd(pair.place))
        .and(Contribution::OurSill, desk.sill_sd())
        .and(Contribution::LastDigit, Some(written.rounding_sd()));
    let point = Point::compared(
        (&pair.subject, Topic::LoadDepth),
        Figure::Height(ours),
        Proposed::of(Figure::Height(written.value), written),
        tolerance.clone(),
        Sense::MoreIsSafer,
        reference(desk, pair),
    );
    let slips = height_slips(desk, pair, &point, written, &tolerance);
    let lower = lower_within_ours(&point);
    Some(point.with(slips).with(lower))
}
