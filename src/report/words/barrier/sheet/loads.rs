//! The load of the water, part by part, for both cases side by side.

use super::notes::Notes;
use crate::barrier::{BarrierDesign, CaseLoad};
use crate::load::{Impact, LoadPart, Resultant};
use crate::quantity::{Length, UnitSystem};
use crate::report::outline::{Outline, Table};
use crate::report::parts::parts;
use crate::report::words::barrier::words::{list, water};

/// The parts of a load that press at the same time.
const PARTS: [LoadPart; 4] = [
    LoadPart::StillWater,
    LoadPart::Flow,
    LoadPart::Soil,
    LoadPart::Wave,
];

pub(super) fn print(
    page: &mut Outline,
    notes: &mut Notes,
    design: &BarrierDesign,
    units: UnitSystem,
) {
    let height = design.stack.height;
    page.paragraph(
        &format!(
            "Load of the water on a barrier of {}, on each unit of its width, without load factors; \"at\" is the height over the sill",
            units.height(height)
        ),
        "",
    );
    let mut header = vec!["Part".to_owned()];
    for load in &design.loads {
        header.extend([water(load.case).to_owned(), "at".to_owned()]);
    }
    header.push("Source".to_owned());
    let last = header.len() - 1;
    let mut table = Table::with_header(header);
    let mut depths = vec!["depth over the sill".to_owned()];
    for load in &design.loads {
        depths.extend([units.height(load.depth), String::new()]);
    }
    table.add_row(depths);
    for part in PARTS {
        let found: Vec<Option<Resultant>> = design
            .loads
            .iter()
            .map(|load| of_part(load, part, height))
            .collect();
        if found.iter().any(Option::is_some) {
            let mut row = vec![part.to_string()];
            row.extend(found.into_iter().flat_map(|found| cells(found, units)));
            row.push(sources(notes, &design.loads, part));
            table.add_row(row);
        }
    }
    let mut row = vec!["together".to_owned()];
    let totals = design.loads.iter().map(|load| load.on_barrier.resultant());
    row.extend(totals.flat_map(|total| cells(Some(total), units)));
    table.add_row(row);
    figures(&mut table, &design.loads, units);
    table.figures(1..last);
    page.table(table);
    let mut said: Vec<String> = Vec::new();
    for load in &design.loads {
        for line in more(notes, load, units) {
            if !said.contains(&line) {
                page.paragraph(&line, "- ");
                said.push(line);
            }
        }
    }
}

/// What belongs to the load as a whole.
fn figures(table: &mut Table, loads: &[CaseLoad], units: UnitSystem) {
    let mut moments = vec!["moment about the sill".to_owned()];
    let mut pressures = vec!["greatest pressure".to_owned()];
    for load in loads {
        let moment = load.on_barrier.resultant().moment;
        moments.extend([units.moment_per_length(moment), String::new()]);
        let (pressure, at) = load.on_barrier.greatest();
        pressures.extend([units.pressure(pressure), units.height(at)]);
    }
    table.add_row(moments);
    table.add_row(pressures);
}

fn of_part(load: &CaseLoad, part: LoadPart, height: Length) -> Option<Resultant> {
    parts(load, height)
        .find(|(found, _)| *found == part)
        .map(|(_, resultant)| resultant)
}

fn cells(resultant: Option<Resultant>, units: UnitSystem) -> [String; 2] {
    match resultant {
        Some(found) => [units.line_load(found.force), units.height(found.height)],
        None => ["-".to_owned(), String::new()],
    }
}

fn sources(notes: &mut Notes, loads: &[CaseLoad], part: LoadPart) -> String {
    let references = loads.iter().flat_map(|load| &load.water.references);
    let of_part = references.filter(|reference| {
        let extra = part == LoadPart::StillWater && reference.part == LoadPart::ExtraDepth;
        reference.part == part || extra
    });
    notes.marks(of_part.map(|reference| reference.citation.to_string()))
}

/// Crests, debris, and what is not in the load.
fn more(notes: &mut Notes, load: &CaseLoad, units: UnitSystem) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(crest) = load.water.crest() {
        lines.push(format!(
            "{}: the crests of the waves reach {} over the sill",
            water(load.case),
            units.height(crest)
        ));
    }
    if let Some(impact) = load.water.impact {
        let marks = sources(notes, std::slice::from_ref(load), LoadPart::Debris);
        lines.push(format!(
            "debris strikes on top of that, at the worst place at or below the surface: {} {marks}",
            force_of(impact, units)
        ));
    }
    let absent = load.water.not_included.iter();
    let absent: Vec<String> = absent
        .map(|absent| format!("{} ({})", absent.part, absent.reason))
        .collect();
    if !absent.is_empty() {
        lines.push(format!("not in the load: {}", list(&absent)));
    }
    lines
}

fn force_of(impact: Impact, units: UnitSystem) -> String {
    match impact {
        Impact::Patch {
            force,
            width,
            height,
        } => format!(
            "{} on a patch {} wide and {} high",
            units.force(force),
            units.dimension(width),
            units.dimension(height)
        ),
        Impact::Strip { force, height } => format!(
            "{} along a strip {} high",
            units.line_load(force),
            units.dimension(height)
        ),
    }
}
