//! What a height over the sill may go wrong by.

use super::Pair;
use crate::proposal::{MeasuredFrom, ProposedOpening};
use crate::quantity::Length;
use crate::review::desk::Desk;
use crate::review::explain::{Freeboards, Step, freeboard_slips, ground_slips, unit_slips};
use crate::review::point::Proposed;
use crate::review::{Figure, Finding, Point, Tolerance, Whose};
use crate::statement::Written;
use crate::verdict::GroundSource;

/// Standard deviation of ground.
pub(super) fn sd_of_ground(desk: &Desk<'_>, source: GroundSource) -> Option<f64> {
    let uncertainty = &desk.assessment.method.uncertainty;
    let sd = match source {
        GroundSource::Surveyed => Some(uncertainty.sill.sd),
        GroundSource::Terrain => uncertainty.terrain_sd(),
    };
    sd.map(|sd| sd.value)
}

/// How far the sill lies over the ground, by the proposal's own levels.
pub(super) fn their_step(desk: &Desk<'_>, theirs: &ProposedOpening) -> Option<Step> {
    let sill = desk.level(theirs.sill.as_ref()?).ok()?;
    let ground = desk.level(theirs.ground.as_ref()?).ok()?;
    let height = sill
        .on_ours
        .elevation
        .above(ground.on_ours.elevation)
        .ok()?;
    Some(Step { height, sd: None })
}

/// How far the sill lies over the ground, by our levels.
pub(super) fn our_step(desk: &Desk<'_>, pair: &Pair<'_>) -> Option<Step> {
    let ground = pair.place.lowest_ground?;
    let height = pair.ours.sill?.above(ground.elevation).ok()?;
    let sd = sd_of_ground(desk, ground.source).map(metres);
    Some(Step { height, sd })
}

/// A height as it is over the sill: as stated, or what is left of one from the ground.
pub(super) fn over_sill(
    desk: &Desk<'_>,
    pair: &Pair<'_>,
    written: &Written<Length>,
) -> Result<Proposed, String> {
    if pair.theirs.measured_from != Some(MeasuredFrom::Ground) {
        return Ok(Proposed::of(Figure::Height(written.value), written));
    }
    let step = their_step(desk, pair.theirs).or_else(|| our_step(desk, pair));
    let step = step.ok_or_else(|| {
        "the ground before the opening, which the height is measured from".to_owned()
    })?;
    Ok(less_step(written, &step))
}

/// What is left over the sill of a height from the ground.
pub(super) fn less_step(written: &Written<Length>, step: &Step) -> Proposed {
    Proposed {
        figure: Figure::Height(written.value - step.height),
        written: format!("{} over the ground", written.text),
    }
}

/// All slips that make a height over the sill ours.
pub(super) fn height_slips(
    desk: &Desk<'_>,
    pair: &Pair<'_>,
    point: &Point,
    written: &Written<Length>,
    tolerance: &Tolerance,
) -> Vec<Finding> {
    let stated_from = pair.theirs.measured_from;
    let (Some(ours), Some(difference)) = (pair.ours.protection_height, point.difference()) else {
        return Vec::new();
    };
    let mut found = freeboard_slips(
        difference,
        Freeboards {
            ours: pair
                .place
                .design_level
                .as_ref()
                .and_then(|design| design.freeboard),
            theirs: desk.proposal.freeboard.as_ref().map(|stated| stated.value),
        },
        tolerance,
    );
    if stated_from.is_none() {
        let steps: Vec<Step> = [their_step(desk, pair.theirs), our_step(desk, pair)]
            .into_iter()
            .flatten()
            .collect();
        found.extend(ground_slips(difference, &steps, tolerance, Whose::Ours));
    }
    if stated_from == Some(MeasuredFrom::Ground) && written.value.value >= ours.value {
        let over_sill = metres(ours.value + difference);
        if over_sill < ours {
            found.push(Finding::LessOverTheSill {
                over_ground: written.value,
                over_sill,
            });
        }
    }
    found.extend(unit_slips(&written.text, |factor| {
        let number = written.value * factor;
        let scaled = tolerance.clone().with_last_digit_times(factor);
        let same = ours.value > 0.0 && scaled.takes(ours.value, number.value);
        same.then_some(Figure::Height(number))
    }));
    found
}

fn metres(number: f64) -> Length {
    Length::new::<crate::quantity::unit::meter>(number)
}
