//! The flood level and its annual chance.

use super::level_slips::{level_against_ours, proposed};
use super::{SITE, not_stated};
use crate::quantity::{AnnualChance, Elevation};
use crate::review::desk::Desk;
use crate::review::point::Proposed;
use crate::review::{Contribution, Figure, Finding, Outcome, Point, Topic};

/// The annual chance and the flood level.
pub(super) fn flood(desk: &Desk<'_>) -> Vec<Point> {
    vec![chance(desk), flood_level(desk)]
}

fn chance(desk: &Desk<'_>) -> Point {
    let at = (&SITE, Topic::AnnualChance);
    let ours = desk.assessment.method.event;
    let reference = "option --chance";
    let Some(theirs) = desk.proposal.annual_chance else {
        let missing = not_stated("annual_chance");
        return Point::unchecked(at, Some(Figure::Chance(ours)), None, missing, reference);
    };
    let outcome = if theirs.same_event(ours) {
        Outcome::Holds
    } else if theirs < ours {
        Outcome::Exceeds { by: None }
    } else {
        Outcome::FallsShort { by: None }
    };
    Point {
        ours: Some(Figure::Chance(ours)),
        theirs: Some(Proposed::follows(Figure::Chance(theirs))),
        ..Point::bare(&SITE, Topic::AnnualChance, outcome, reference)
    }
}

/// A level of ours with its standard deviation and where it stands.
struct Ours {
    elevation: Elevation,
    sd: Option<f64>,
    reference: String,
}

/// Our level of the flood that the proposal is about: the assessed one where it says nothing.
fn our_level(desk: &Desk<'_>) -> Result<Ours, String> {
    let place = &desk.assessment.place;
    let assessed = desk.assessment.method.event;
    let other = |chance: &AnnualChance| !chance.same_event(assessed);
    if let Some(chance) = desk.proposal.annual_chance.filter(other) {
        let curve = place.curve.as_ref();
        let level = curve.and_then(|curve| {
            let mut levels = curve.stages.levels().iter();
            let level = levels.find(|level| level.chance.same_event(chance))?;
            Some(Ours {
                elevation: level.elevation,
                sd: level.sd.map(|sd| sd.value),
                reference: curve.reference.clone(),
            })
        });
        return level.ok_or_else(|| {
            format!(
                "our level of the {chance} annual chance flood; --chance \"{chance}\" assesses it"
            )
        });
    }
    match &place.flood_level {
        Some(level) => Ok(Ours {
            elevation: level.decided.elevation,
            sd: level.decided.sd.map(|sd| sd.value),
            reference: format!(
                "{}: {}",
                level.decided.source.title(),
                level.decided.reference
            ),
        }),
        None => Err(desk.no_design_level(place)),
    }
}

fn flood_level(desk: &Desk<'_>) -> Point {
    let at = (&SITE, Topic::FloodLevel);
    let ours = our_level(desk);
    let figure = ours
        .as_ref()
        .ok()
        .map(|ours| Figure::Elevation(ours.elevation));
    let reference = ours.as_ref().map(|ours| ours.reference.clone());
    let reference = reference.unwrap_or_default();
    let Some(written) = &desk.proposal.flood_level else {
        return Point::unchecked(at, figure, None, not_stated("flood_level"), reference);
    };
    let no_source = desk.proposal.source.is_none().then_some(Finding::NoSource);
    let theirs = match desk.level(written) {
        Ok(theirs) => theirs,
        Err(missing) => {
            let stated = Proposed::of(Figure::Elevation(written.value), written);
            return Point::unchecked(at, figure, Some(stated), vec![missing], reference)
                .with(no_source);
        }
    };
    let ours = match ours {
        Ok(ours) => ours,
        Err(missing) => {
            return Point::unchecked(at, None, Some(proposed(&theirs)), vec![missing], reference)
                .with(no_source);
        }
    };
    let tolerance = theirs.tolerance((Contribution::OurLevel, ours.sd));
    let point = level_against_ours(desk, at, ours.elevation, &theirs, &tolerance, reference);
    let mut findings = Vec::new();
    if point.difference().is_some() {
        let design = desk.assessment.place.design_level.as_ref();
        let freeboard = design.and_then(|design| design.freeboard);
        if let (Some(design), Some(freeboard)) = (design, freeboard)
            && freeboard.value > tolerance.half_width()
            && tolerance.takes(
                design.elevation.height().value,
                theirs.on_ours.elevation.height().value,
            )
        {
            findings.push(Finding::DesignLevelAsFloodLevel {
                level: design.elevation,
            });
        }
    }
    point.with(findings).with(no_source)
}
