//! How the figures of a barrier came about.

use super::{Trail, Value};
use crate::barrier::{
    Amount, BarrierAnswer, BarrierDesign, CaseLoad, Check, EndPostDesign, Kit, LoadCase,
    PlateAnchors, UprightDesign,
};
use crate::load::LoadPart;
use crate::quantity::UnitSystem;
use crate::statement::Choice;

/// Every figure of a barrier.
pub(super) fn barrier_trail(
    trail: &mut Trail,
    answer: &BarrierAnswer,
    kit: &Kit,
    whose: &str,
    units: UnitSystem,
) {
    if !trail.is_kept() {
        return;
    }
    let mut own = Trail::default();
    for load in &answer.design.loads {
        load_trail(&mut own, load, whose);
    }
    layout_trail(&mut own, &answer.design, kit, whose);
    for check in answer.design.checks() {
        check_trail(&mut own, check, whose, units);
    }
    if let Some(end) = &answer.design.end_post {
        end_trail(&mut own, end, whose);
    }
    for post in &answer.design.uprights {
        upright_trail(&mut own, post, whose);
    }
    for anchors in &answer.design.anchors {
        anchor_trail(&mut own, anchors, whose);
    }
    service_trail(&mut own, answer, whose);
    trail.add_barrier(own);
}

fn load_trail(trail: &mut Trail, load: &CaseLoad, whose: &str) {
    let case = load.case.word();
    let water = &load.water;
    for (part, profile) in [
        (LoadPart::StillWater, &water.still),
        (LoadPart::Flow, &water.flow),
        (LoadPart::Soil, &water.soil),
        (LoadPart::Wave, &water.wave),
    ] {
        if profile.is_empty() {
            continue;
        }
        let references: Vec<String> = water
            .references
            .iter()
            .filter(|reference| reference.part == part)
            .map(|reference| reference.citation.to_string())
            .collect();
        trail.add(
            format!("force of {part} from the ground up{whose}, {case}"),
            Value::LineLoad(profile.resultant().force),
            "pressure summed over the height",
            references.join("; "),
        );
    }
    if let Some(wave) = &water.breaking_wave {
        let code = wave.code_resultant();
        for (quantity, value, how) in [
            (
                "force of the breaking wave on the whole wall",
                Value::LineLoad(code.force),
                "1.1·Cp·γ·d² + 2.4·γ·d²",
            ),
            (
                "height over the sill at which it acts",
                Value::Length(code.height),
                "at the stillwater surface; the pressures of the parts have their resultant lower",
            ),
        ] {
            trail.add(
                format!("{quantity}{whose}, {case}"),
                value,
                how,
                "FEMA P-55 (2011) vol. II Eq. 8.6a, ASCE 7 5.4.4.2",
            );
        }
    }
    trail.add(
        format!("force on the barrier{whose}, {case}"),
        Value::LineLoad(load.on_barrier.resultant().force),
        "all parts together, between sill and top of the barrier",
        "",
    );
    // At the top of the barrier the same parts are missing.
    if load.case != LoadCase::DesignLevel {
        return;
    }
    for absent in &water.not_included {
        trail.add(
            format!("force of {}{whose}", absent.part),
            Value::Unknown,
            format!("not in the load: {}", absent.reason),
            "",
        );
    }
}

fn layout_trail(trail: &mut Trail, design: &BarrierDesign, kit: &Kit, whose: &str) {
    for (number, planned) in design.legs.iter().enumerate() {
        let leg = if design.legs.len() == 1 {
            String::new()
        } else {
            format!(", leg {}", number + 1)
        };
        let because = if planned.divided_because.is_empty() {
            "one span".to_owned()
        } else {
            format!("divided because {}", planned.divided_because.join("; "))
        };
        trail.add(
            format!("spans{whose}{leg}"),
            Value::Count(u32::try_from(planned.leg.spans.len()).unwrap_or(u32::MAX)),
            because,
            kit.citation.to_string(),
        );
        trail.add(
            format!("longest plank{whose}{leg}"),
            Value::Length(planned.leg.longest_cut()),
            "clear width + what reaches into both pockets",
            kit.citation.to_string(),
        );
        trail.add(
            format!("span that planks bend over{whose}{leg}"),
            Value::Length(planned.leg.longest_bearing()),
            "from the middle of one bearing to that of the other",
            "",
        );
    }
    if let Some(span) = design.longest_span {
        trail.add(
            format!("longest span of the planks{whose}"),
            Value::Length(span),
            "the span at which the first check is used up, no more than the kit's longest piece",
            "",
        );
    }
    if let Some(depth) = design.greatest_depth {
        trail.add(
            format!("deepest water before the planks{whose}"),
            Value::Length(depth),
            "the depth at which the first check of the longest span is used up, no more than the kit's greatest height",
            "",
        );
    }
}

fn check_trail(trail: &mut Trail, check: &Check, whose: &str, units: UnitSystem) {
    trail.add(
        format!(
            "{} of {}{whose}, {}",
            check.what,
            check.part,
            check.case.word()
        ),
        match check.demand {
            Amount::Moment(moment) => Value::BendingMoment(moment),
            Amount::Force(force) => Value::Force(force),
            Amount::Deflection(length) => Value::Deflection(length),
        },
        format!(
            "it takes {}, used {:.0} %",
            check.capacity.text(units),
            100.0 * check.ratio()
        ),
        check.reference.clone(),
    );
}

fn end_trail(trail: &mut Trail, end: &EndPostDesign, whose: &str) {
    for forces in &end.forces {
        trail.add(
            format!("force on each jamb{whose}, {}", forces.case.word()),
            Value::Force(forces.force),
            "half of the longest plank at the end of the barrier × force on the barrier",
            "",
        );
        if let Some(bearing) = forces.bearing {
            trail.add(
                format!(
                    "pressure of the post on the face{whose}, {}",
                    forces.case.word()
                ),
                Value::Pressure(bearing),
                "greatest force on a unit of height / width of the post",
                "",
            );
        }
    }
    if let Some(anchors) = &end.anchors {
        trail.add(
            format!("shear on an anchor of the end post{whose}"),
            Value::Force(anchors.greatest_shear),
            format!(
                "the greatest of {} anchors, each the force nearer to it than to its neighbours, without load factor",
                anchors.heights.len()
            ),
            "common practice, no source",
        );
    }
}

fn upright_trail(trail: &mut Trail, post: &UprightDesign, whose: &str) {
    let name = post.role.name();
    trail.add(
        format!("width whose water the {name} carries{whose}"),
        Value::Length(post.tributary),
        "half of the clear width on either side + the post; at a corner the vector sum",
        "",
    );
    let held = if post.brace.is_some() {
        "fixed at its foot and held by the brace, which does not give way; without load factor"
    } else {
        "cantilever from its base plate, without load factor"
    };
    for base in &post.base {
        let case = base.case.word();
        let mut add = |what: &str, value| {
            trail.add(
                format!("{what} at the base plate of the {name}{whose}, {case}"),
                value,
                held,
                "elastic bending of one member",
            );
        };
        add("moment", Value::BendingMoment(base.moment));
        add("shear", Value::Force(base.shear));
        if base.uplift.value.abs() > 0.0 {
            add("uplift", Value::Force(base.uplift));
        }
    }
    if let Some(brace) = post.brace {
        trail.add(
            format!("force along the brace of the {name}{whose}"),
            Value::Force(brace.along),
            "horizontal force at the brace / cosine of its slope, without load factor",
            "",
        );
    }
}

fn anchor_trail(trail: &mut Trail, anchors: &PlateAnchors, whose: &str) {
    for (what, value) in [
        ("tension", anchors.demand.tension_on_anchor),
        ("shear", anchors.demand.shear_on_anchor),
    ] {
        trail.add(
            format!("{what} on an anchor of the {}{whose}", anchors.post),
            Value::Force(value),
            "moment / distance of the outer rows + half the uplift, shared evenly; shear shared evenly",
            anchors.reference.clone(),
        );
    }
    let Some(check) = &anchors.check else { return };
    for mode in check.tension.checked.iter().chain(&check.shear.checked) {
        trail.add(
            format!(
                "{} of the anchors of the {}{whose}",
                mode.mode, anchors.post
            ),
            Value::Force(mode.strength.design()),
            format!(
                "φ {} × nominal strength; used {:.0} %",
                mode.strength.phi(),
                100.0 * mode.utilisation()
            ),
            "ACI 318-19 chapter 17",
        );
    }
}

fn service_trail(trail: &mut Trail, answer: &BarrierAnswer, whose: &str) {
    for part in &answer.inflow.parts {
        trail.add(
            format!("inflow{whose}, {}", part.way),
            Value::Flow(part.flow),
            part.method,
            part.citation.to_string(),
        );
    }
    for absent in &answer.inflow.not_counted {
        trail.add(
            format!("inflow{whose}, {}", absent.way),
            Value::Unknown,
            absent.reason.to_string(),
            "",
        );
    }
    if let Some(heaviest) = &answer.handling.heaviest
        && let Some(mass) = heaviest.mass
    {
        trail.add(
            format!("heaviest piece{whose}"),
            Value::Mass(mass),
            "length × mass per length of the kit",
            answer.handling.limit.citation.to_string(),
        );
    }
}
