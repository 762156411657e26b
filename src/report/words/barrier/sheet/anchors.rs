//! Anchors: the demand, every way of failing, and what its strength is made of.

use super::notes::Notes;
use crate::anchor::{AnchorCheck, Factor, FactorValue, ModeCheck};
use crate::barrier::{BarrierDesign, PlateAnchors};
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};
use crate::report::words::barrier::anchor_words::{mode, needs, outcome};
use crate::report::words::barrier::open::why_open;
use crate::report::words::barrier::words::{percent, water};
use crate::statement::Confidence;

pub(super) fn print(
    page: &mut Outline,
    notes: &mut Notes,
    design: &BarrierDesign,
    units: UnitSystem,
) {
    for plate in &design.anchors {
        page.heading(&format!("Anchors of the {}", plate.post));
        page.paragraph(&demand(plate, notes, units), "- ");
        match &plate.check {
            Some(check) => print_check(page, check, units),
            None => not_known(page, design, plate.post),
        }
    }
    let end = design.end_post.as_ref();
    if let Some(anchors) = end.and_then(|end| end.anchors.as_ref()) {
        page.heading("Anchors of the end post");
        page.paragraph(
            &format!(
                "their load counts {} times for the check (ACI 318-19 chapter 17)",
                anchors.factor
            ),
            "- ",
        );
        match &anchors.check {
            Some(check) => print_check(page, check, units),
            None => not_known(page, design, "end post"),
        }
    }
}

/// Why there is no check.
fn not_known(page: &mut Outline, design: &BarrierDesign, post: &str) {
    let why = why_open(design, post);
    if !why.is_empty() {
        page.paragraph(&format!("what they hold is not known: {why}"), "- ");
    }
}

fn demand(plate: &PlateAnchors, notes: &mut Notes, units: UnitSystem) -> String {
    let demand = &plate.demand;
    let arm = demand.lever_arm.map(|arm| {
        format!(
            ", with {} between the rows in tension and compression",
            units.dimension(arm)
        )
    });
    format!(
        "with the factor {} {}, water at the {}: {} of tension on the row at the {}, {} on each of its anchors, {} of shear on each anchor of the plate{}",
        plate.factor,
        notes.mark(&plate.reference),
        water(plate.forces.case),
        units.force(demand.tension_on_row),
        if plate.forces.moment.value < 0.0 {
            "dry side"
        } else {
            "water side"
        },
        units.force(demand.tension_on_anchor),
        units.force(demand.shear_on_anchor),
        arm.unwrap_or_default()
    )
}

fn print_check(page: &mut Outline, check: &AnchorCheck, units: UnitSystem) {
    let directions = [&check.tension, &check.shear];
    let checked: Vec<&ModeCheck> = directions
        .iter()
        .flat_map(|direction| &direction.checked)
        .collect();
    if !checked.is_empty() {
        page.table(modes(&checked, units));
    }
    if let Some(together) = &check.interaction {
        page.paragraph(
            &format!(
                "tension and shear together: used {} (ACI 318-19 17.8)",
                percent(together.utilisation())
            ),
            "- ",
        );
    }
    if let Some(outcome) = outcome(Some(check)) {
        page.paragraph(&outcome, "- ");
    }
    for found in &checked {
        let strength = &found.strength;
        let factors: Vec<String> = std::iter::once(strength.phi_factor())
            .chain(strength.factors())
            .map(|each| factor(each, units))
            .collect();
        page.paragraph(
            &format!("{}: {}", mode(found.mode), factors.join(", ")),
            "- ",
        );
    }
    for direction in directions {
        for unchecked in &direction.unchecked {
            page.paragraph(
                &format!(
                    "{} is not checked; state {}",
                    mode(unchecked.mode),
                    needs(&unchecked.state)
                ),
                "- ",
            );
        }
    }
    for remark in &check.remarks {
        page.paragraph(&remark.to_string(), "- ");
    }
}

fn modes(checked: &[&ModeCheck], units: UnitSystem) -> Table {
    let mut table = Table::with_header(vec![
        "Fails by",
        "Carries",
        "Nominal",
        "φ",
        "Can carry",
        "Used",
    ]);
    for check in checked {
        let strength = &check.strength;
        table.add_row(vec![
            mode(check.mode),
            units.force(check.demand),
            units.force(strength.nominal()),
            trimmed(strength.phi()),
            units.force(strength.design()),
            percent(check.utilisation()),
        ]);
    }
    table.figures(1..6);
    table
}

/// A factor of a strength with its clause of ACI 318-19, and how it was come by.
fn factor(factor: &Factor, units: UnitSystem) -> String {
    let value = match factor.value {
        FactorValue::Number(number) => trimmed(number),
        FactorValue::Length(length) => units.dimension(length),
        FactorValue::Area(area) => units.section_area(area),
        FactorValue::Force(force) => units.force(force),
        FactorValue::Pressure(stress) => units.stress(stress),
    };
    let confidence = match factor.confidence {
        Confidence::Seen => String::new(),
        other => format!(", {other}"),
    };
    format!("{} {value} ({}{confidence})", factor.symbol, factor.clause)
}

/// A number to a thousandth, without zeros at its end.
fn trimmed(number: f64) -> String {
    let text = format!("{number:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
