//! The short answer: what to cut, what carries it, what is nearest to its limit.

use super::anchor_words;
use super::words::{self, counted, list, people, percent, role};
use crate::barrier::{
    BarrierAnswer, BarrierDesign, EndPostDesign, Ends, Open, Piece, Upright, UprightDesign,
};
use crate::inflow::{Inflow, NotCounted, Reason};
use crate::quantity::UnitSystem;
use crate::report::nearest::{Nearest, worst_case};
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
    let mut lines = vec![pieces(answer, units)];
    lines.extend(posts(design, units));
    lines.extend(floor(design, units));
    lines.extend(nearest(design));
    let end_post = design.end_post.as_ref();
    lines.extend(end_post.and_then(|end| wall(end, units)));
    lines.push(leakage(&answer.inflow, units));
    lines
}

/// The planks, the spans, the mount, and the heaviest piece.
fn pieces(answer: &BarrierAnswer, units: UnitSystem) -> String {
    let design = &answer.design;
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
    let handling = &answer.handling;
    let heaviest = handling.heaviest.as_ref().and_then(|piece| {
        let (mass, count) = (piece.mass?, handling.people_for_heaviest?);
        Some(format!(
            "; heaviest piece {}, {}",
            units.mass(mass),
            people(count)
        ))
    });
    format!("{}{}", parts.join(", "), heaviest.unwrap_or_default())
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
            let shortest = lengths.fold(planks[0].length, |one, other| one.min(other));
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
fn posts(design: &BarrierDesign, units: UnitSystem) -> Option<String> {
    let between = design.count(Upright::Intermediate);
    let corners = design.count(Upright::Corner);
    let mut posts = Vec::new();
    if between > 0 {
        posts.push(format!(
            "{} ({})",
            counted(between, "intermediate post"),
            because(design)
        ));
    }
    if corners > 0 {
        posts.push(counted(corners, "corner post"));
    }
    let braced = design
        .uprights
        .iter()
        .filter_map(|post| post.brace)
        .max_by(|one, other| one.along.value.total_cmp(&other.along.value));
    let brace = braced.map(|brace| {
        let planned = if design.open.contains(&Open::BraceSide) {
            "planned with braces"
        } else {
            "braced"
        };
        let used = brace
            .used()
            .map(|used| format!(", {} of what the kit's maker allows", percent(used)));
        format!(
            "; {planned} on the {}: {} along a brace{}",
            Choice::word(brace.side),
            units.force(brace.along),
            used.unwrap_or_default()
        )
    });
    let posts = (!posts.is_empty()).then(|| list(&posts))?;
    Some(format!("{posts}{}", brace.unwrap_or_default()))
}

/// Why there are posts between, each reason once.
fn because(design: &BarrierDesign) -> String {
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
        others.insert(0, format!("without, {PLANKS}{}", list(&planks)));
    }
    if others.is_empty() {
        others.push("so that every post holds".to_owned());
    }
    others.join("; ")
}

/// What the most loaded base plate hands to the floor.
fn floor(design: &BarrierDesign, units: UnitSystem) -> Option<String> {
    let moment = |post: &&UprightDesign| {
        let moments = post.base.iter().map(|base| base.moment.value);
        moments.fold(0.0, f64::max)
    };
    let post = design
        .uprights
        .iter()
        .max_by(|one, other| moment(one).total_cmp(&moment(other)))?;
    let name = post.role.name();
    let plate = design.anchors.iter().find(|plate| plate.post == name);
    let worst = match plate {
        Some(plate) => plate.forces.case,
        None => worst_case(post.base.iter().map(|base| (base.case, base.moment.value)))?,
    };
    let base = post.base.iter().find(|base| base.case == worst)?;
    let anchors = plate.map(|plate| {
        let holds = anchor_words::outcome(plate.check.as_ref());
        format!(
            "; with the factor {} an anchor takes up to {} of tension and {} of shear{}",
            plate.factor,
            units.force(plate.demand.tension_on_anchor),
            units.force(plate.demand.shear_on_anchor),
            holds.map(|holds| format!(": {holds}")).unwrap_or_default()
        )
    });
    Some(format!(
        "at the foot of each {} post the floor takes {} and a moment of {} ({}){}",
        role(post.role),
        units.force(base.shear),
        units.moment(base.moment),
        base.case.word(),
        anchors.unwrap_or_default()
    ))
}

/// The part that is nearest to its limit, or furthest beyond.
fn nearest(design: &BarrierDesign) -> Option<String> {
    let nearest = Nearest::of(design)?;
    let used = percent(nearest.used);
    let (how, used) = if nearest.used > 1.0 + 1e-9 {
        ("beyond its limit", format!("at {used} of it"))
    } else {
        ("nearest to its limit", format!("used {used}"))
    };
    Some(format!(
        "{how}: {}, {used} ({})",
        words::nearest(&nearest, design.legs.len()),
        nearest.case.word()
    ))
}

/// What the wall at each end has to take.
fn wall(end: &EndPostDesign, units: UnitSystem) -> Option<String> {
    let case = worst_case(end.forces.iter().map(|each| (each.case, each.force.value)))?;
    let worst = end.forces.iter().find(|each| each.case == case)?;
    let whose = match end.ends {
        Some(Ends::Mounted(Mount::Inside)) => "each jamb takes",
        Some(Ends::Mounted(Mount::Outside)) => "the wall on each side takes",
        Some(Ends::AgainstWall) => "the wall at each end takes",
        None => "each side of the opening takes",
    };
    let bearing = worst.bearing.map(|bearing| {
        format!(
            "; the post presses on its face with at most {}",
            units.stress(bearing)
        )
    });
    let anchors = end.anchors.as_ref().map(|anchors| {
        let holds = anchor_words::outcome(anchors.check.as_ref());
        format!(
            ", at most {} of it on one of the {}{}",
            units.force(anchors.greatest_shear),
            counted(
                u32::try_from(anchors.heights.len()).unwrap_or(u32::MAX),
                "anchor"
            ),
            holds.map(|holds| format!(": {holds}")).unwrap_or_default()
        )
    });
    Some(format!(
        "{whose} {} ({}){}{}",
        units.force(worst.force),
        worst.case.word(),
        bearing.unwrap_or_default(),
        anchors.unwrap_or_default()
    ))
}

/// The water that gets past.
fn leakage(inflow: &Inflow, units: UnitSystem) -> String {
    let ways: Vec<String> = inflow
        .parts
        .iter()
        .filter(|part| part.flow.value > 0.0)
        .map(|part| format!("{} {}", units.flow(part.flow), part.way))
        .collect();
    let missing: Vec<String> = inflow
        .not_counted
        .iter()
        .map(|other| not_counted(other, units))
        .collect();
    let missing = missing.join("; ");
    let counted = match ways.as_slice() {
        [] => None,
        [one] => Some(format!("about {one}")),
        more => Some(format!(
            "about {} ({})",
            units.flow(inflow.total()),
            list(more)
        )),
    };
    match (counted, missing.is_empty()) {
        (None, true) => "no water gets past it with water at the design level".to_owned(),
        (None, false) => format!("leakage with water at the design level is not known: {missing}"),
        (Some(flow), true) => format!("leaks {flow} with water at the design level"),
        (Some(flow), false) => {
            format!("leaks {flow} and more with water at the design level; not counted: {missing}")
        }
    }
}

/// A way in without a number, and why.
pub(super) fn not_counted(other: &NotCounted, units: UnitSystem) -> String {
    match other.reason {
        Reason::NotStated(missing) => format!("{}, since {missing}", other.way),
        Reason::NotCovered {
            depth,
            tested_depth,
        } => format!(
            "{}, since the maker's statement is for {} of water and not for {}",
            other.way,
            units.height(tested_depth),
            units.height(depth)
        ),
    }
}
