//! The short answer: what to cut, what carries it, what is nearest to its limit.

use super::ways::not_known;
use super::words::{self, counted, list, people, percent};
use crate::barrier::{BarrierAnswer, BarrierDesign, Ends, Open, Piece, Upright};
use crate::inflow::Inflow;
use crate::quantity::{Length, UnitSystem};
use crate::report::nearest::Nearest;
use crate::site::Mount;
use crate::statement::Choice;

/// A barrier in a few lines, for the person who fits it. What it falls short of and what is
/// still to settle ([`open_lines`](super::open_lines)) is not in them.
///
/// ```
/// use sillmark::barrier::{BarrierAnswer, BarrierTask, DesignRules, Kit, MountPlace, Practice, Run, Surroundings};
/// use sillmark::load::{CombinationSet, LoadZone, Salinity, WaterCase};
/// use sillmark::quantity::{UnitSystem, unit::{Length, foot, inch}};
/// use sillmark::report::barrier_lines;
/// let practice = Practice::shipped()?;
/// let rules = DesignRules {
///     combination: CombinationSet::shipped()?.remove(0),
///     zone: LoadZone::Other,
///     deflection: practice.deflection.clone(),
///     practice,
/// };
/// let feet = Length::new::<foot>;
/// let task = BarrierTask {
///     run: Run::straight(Length::new::<inch>(36.0)),
///     height: feet(2.1),
///     opening_height: None,
///     place: MountPlace { reveal: Some(Length::new::<inch>(6.0)), ..MountPlace::default() },
///     brace: None,
///     water: WaterCase::still(feet(2.1), feet(0.5), Salinity::Fresh),
/// };
/// let around = Surroundings::default();
/// let answer = BarrierAnswer::of(&task, &Kit::demonstration()?, &rules, around)?.unwrap();
/// let lines = barrier_lines(&answer, UnitSystem::Us);
/// assert!(lines[0].starts_with("5 planks of 35.0 in, one span, end posts in the reveal"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn barrier_lines(answer: &BarrierAnswer, units: UnitSystem) -> Vec<String> {
    let design = &answer.design;
    let mut lines = vec![pieces(design, units)];
    lines.extend(posts(design));
    lines.extend(nearest(design));
    lines.push(carried_and_leaked(answer, units));
    lines
}

/// The planks, the spans and the mount.
fn pieces(design: &BarrierDesign, units: UnitSystem) -> String {
    let to_measure = design
        .open
        .iter()
        .any(|open| matches!(open, Open::Mount { .. }));
    let mut parts = vec![planks(design, to_measure, units)];
    match design.spans() {
        0 => {}
        1 => parts.push("one span".to_owned()),
        spans => parts.push(format!("{spans} spans")),
    }
    parts.extend(design.end_post.as_ref().and_then(|end| {
        let ends = match end.ends {
            Some(Ends::Mounted(Mount::Inside)) => "end posts in the reveal",
            Some(Ends::Mounted(Mount::Outside)) => "end posts on the face of the wall",
            Some(Ends::AgainstWall) => "end posts with their backs to the wall",
            None if to_measure => "the mount still to be measured",
            None => return None,
        };
        Some(ends.to_owned())
    }));
    parts.join(", ")
}

fn planks(design: &BarrierDesign, to_measure: bool, units: UnitSystem) -> String {
    let planks: Vec<&Piece> = design
        .pieces
        .iter()
        .filter(|piece| piece.name == "plank")
        .collect();
    let at_most = if to_measure { "at most " } else { "" };
    match planks.as_slice() {
        [] => "no room for planks between the posts".to_owned(),
        [.., _, _, _] => {
            let count = planks.iter().map(|piece| piece.count).sum();
            let lengths = planks.iter().map(|piece| piece.length);
            let shortest = lengths.fold(planks[0].length, Length::min);
            format!(
                "{} of {} lengths from {} to {at_most}{}",
                counted(count, "plank"),
                planks.len(),
                units.dimension(shortest),
                units.dimension(planks[0].length)
            )
        }
        few => {
            let few: Vec<String> = few
                .iter()
                .map(|piece| {
                    let length = units.dimension(piece.length);
                    format!("{} of {at_most}{length}", counted(piece.count, "plank"))
                })
                .collect();
            list(&few)
        }
    }
}

/// The free-standing posts, why there are posts between, and the brace.
fn posts(design: &BarrierDesign) -> Option<String> {
    let between = design.count(Upright::Intermediate);
    let corners = design.count(Upright::Corner);
    let mut posts = Vec::new();
    if between > 0 {
        posts.push(format!(
            "{} ({})",
            counted(between, "intermediate post"),
            because(design, between)
        ));
    }
    if corners > 0 {
        posts.push(counted(corners, "corner post"));
    }
    let braced = design.uprights.iter().find_map(|post| post.brace);
    let brace = braced.map(|brace| {
        let side = Choice::word(brace.side);
        if design.open.contains(&Open::BraceSide) {
            format!(", braced (planned on the {side})")
        } else {
            format!(", braced on the {side}")
        }
    });
    let posts = (!posts.is_empty()).then(|| list(&posts))?;
    Some(format!("{posts}{}", brace.unwrap_or_default()))
}

/// Why there are posts between, each reason once.
fn because(design: &BarrierDesign, between: u32) -> String {
    const PLANKS: &str = "planks would ";
    let (mut planks, mut others) = (Vec::new(), Vec::new());
    for reason in design.legs.iter().flat_map(|leg| &leg.divided_because) {
        let (reasons, reason) = match reason.strip_prefix(PLANKS) {
            Some(fails) => (&mut planks, fails.to_owned()),
            None => (&mut others, (*reason).to_owned()),
        };
        if !reasons.contains(&reason) {
            reasons.push(reason);
        }
    }
    if !planks.is_empty() {
        let without = if between == 1 { "it" } else { "them" };
        others.insert(0, format!("without {without}, {PLANKS}{}", list(&planks)));
    }
    if others.is_empty() {
        others.push("so that every post holds".to_owned());
    }
    others.join("; ")
}

/// The part that is nearest to its limit, or furthest beyond.
fn nearest(design: &BarrierDesign) -> Option<String> {
    let nearest = Nearest::of(design)?;
    let how = if nearest.used > 1.0 + 1e-9 {
        "beyond its limit"
    } else {
        "nearest to its limit"
    };
    Some(format!(
        "{how}: {}, {} of what is allowed",
        words::nearest(&nearest, design.legs.len()),
        percent(nearest.used)
    ))
}

/// Who lifts the heaviest piece, and the water that gets past.
fn carried_and_leaked(answer: &BarrierAnswer, units: UnitSystem) -> String {
    let handling = &answer.handling;
    let heaviest = handling.heaviest.as_ref().and_then(|piece| {
        let (mass, count) = (piece.mass?, handling.people_for_heaviest?);
        Some(format!(
            "heaviest piece {}, {}; ",
            units.mass(mass),
            people(count)
        ))
    });
    format!(
        "{}{}",
        heaviest.unwrap_or_default(),
        leakage(&answer.inflow, units)
    )
}

/// The water that gets past, and which of it has no number.
fn leakage(inflow: &Inflow, units: UnitSystem) -> String {
    let ways: Vec<String> = inflow
        .parts
        .iter()
        .filter(|part| part.flow.value > 0.0)
        .map(|part| format!("{} {}", units.flow(part.flow), part.way))
        .collect();
    let counted = match ways.as_slice() {
        [] => None,
        [one] => Some(format!("about {one}")),
        more => Some(format!(
            "about {} ({})",
            units.flow(inflow.total()),
            list(more)
        )),
    };
    let unknown = not_known(&inflow.not_counted);
    match (counted, unknown) {
        (None, None) => "no water gets past it".to_owned(),
        (None, Some(unknown)) => unknown,
        (Some(flow), None) => format!("leaks {flow}"),
        (Some(flow), Some(unknown)) => format!("leaks {flow}; {unknown}"),
    }
}
