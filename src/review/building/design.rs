//! The design level: against ours, and against the proposal's own flood level and freeboard.

use super::level_slips::{level_against_ours, proposed};
use super::{SITE, not_stated};
use crate::review::desk::Desk;
use crate::review::explain::{Freeboards, freeboard_slips};
use crate::review::outcome::Sense;
use crate::review::point::Proposed;
use crate::review::{Contribution, Figure, Finding, Point, Tolerance, Topic, Whose};

/// The design level against ours, and against the proposal's own flood level and freeboard.
pub(super) fn design(desk: &Desk<'_>) -> Vec<Point> {
    std::iter::once(design_level(desk))
        .chain(own_design_level(desk))
        .collect()
}

fn design_level(desk: &Desk<'_>) -> Point {
    let at = (&SITE, Topic::DesignLevel);
    let place = &desk.assessment.place;
    let rule = &desk.assessment.method.rule;
    let reference = format!("rule {}: {}", rule.id, rule.citation);
    let ours = place.design_level.as_ref();
    let figure = ours.map(|ours| Figure::Elevation(ours.elevation));
    let Some(theirs) = desk.their_design() else {
        let missing = not_stated("design_level, or flood_level and freeboard,");
        return Point::unchecked(at, figure, None, missing, reference);
    };
    let theirs = match theirs {
        Ok(theirs) => theirs,
        Err(missing) => {
            let stated = desk.proposal.design_level.as_ref();
            let stated = stated.map(|it| Proposed::of(Figure::Elevation(it.value), it));
            return Point::unchecked(at, figure, stated, vec![missing], reference);
        }
    };
    let Some(ours) = ours else {
        let missing = vec![desk.no_design_level(place)];
        return Point::unchecked(at, None, Some(proposed(&theirs)), missing, reference);
    };
    let sd = desk.design_sd(place);
    let tolerance = theirs.tolerance((Contribution::OurLevel, sd));
    let point = level_against_ours(desk, at, ours.elevation, &theirs, &tolerance, reference);
    let mut findings = Vec::new();
    if let Some(difference) = point.difference() {
        findings.extend(freeboard_slips(
            difference,
            Freeboards {
                ours: ours.freeboard,
                theirs: desk.proposal.freeboard.as_ref().map(|stated| stated.value),
            },
            &tolerance,
        ));
        let flood = place
            .flood_level
            .as_ref()
            .map(|level| level.decided.elevation);
        let near = tolerance.half_width();
        let visible = ours
            .freeboard
            .is_some_and(|freeboard| freeboard.value > near);
        if let Some(level) = flood
            && visible
            && !theirs.text.is_empty()
            && tolerance.takes(
                level.height().value,
                theirs.on_ours.elevation.height().value,
            )
        {
            findings.push(Finding::BaseLevelAsDesignLevel {
                level,
                whose: Whose::Ours,
            });
        }
    }
    point.with(findings)
}

/// Where the proposal states all three: whether they go together.
fn own_design_level(desk: &Desk<'_>) -> Option<Point> {
    let proposal = desk.proposal;
    let (flood, freeboard) = (proposal.flood_level.as_ref()?, proposal.freeboard.as_ref()?);
    let design = proposal.design_level.as_ref()?;
    let (flood_level, design_level) = (desk.level(flood).ok()?, desk.level(design).ok()?);
    let own = flood_level.on_ours.elevation.raised(freeboard.value);
    let rounding = flood_level.rounding.hypot(design_level.rounding);
    let tolerance = Tolerance::default()
        .and(Contribution::LastDigit, Some(rounding))
        .and_foot(own.height().value);
    let point = Point::compared(
        (&SITE, Topic::OwnDesignLevel),
        Figure::Elevation(own),
        proposed(&design_level),
        tolerance.clone(),
        Sense::MoreIsSafer,
        "flood level + freeboard, as the proposal states them",
    );
    let near = tolerance.half_width();
    let mut findings = Vec::new();
    if let Some(difference) = point.difference()
        && freeboard.value.value > near
    {
        if (difference - freeboard.value.value).abs() <= near {
            findings.push(Finding::FreeboardTwice {
                freeboard: freeboard.value,
                whose: Whose::Theirs,
            });
        } else if (difference + freeboard.value.value).abs() <= near {
            findings.push(Finding::BaseLevelAsDesignLevel {
                level: flood_level.on_ours.elevation,
                whose: Whose::Theirs,
            });
        }
    }
    Some(point.with(findings))
}
