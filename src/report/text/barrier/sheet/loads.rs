//! The load of the water, part by part, for both cases side by side.

use super::notes::Notes;
use crate::barrier::{BarrierDesign, CaseLoad, LoadCase};
use crate::load::{Impact, LoadPart, PressureProfile, Resultant};
use crate::quantity::{Length, UnitSystem};
use crate::report::parts::parts;
use crate::report::text::barrier::words::water;
use crate::report::text::page::{Page, columns_to_the_right, plain_table};

/// The parts of a load that press at the same time.
const PARTS: [LoadPart; 4] = [
    LoadPart::StillWater,
    LoadPart::Flow,
    LoadPart::Soil,
    LoadPart::Wave,
];

pub(super) fn print(page: &mut Page, notes: &mut Notes, design: &BarrierDesign, units: UnitSystem) {
    let height = design.stack.height;
    page.paragraph(
        &format!(
            "Load of the water on a barrier of {}, on each unit of its width, without load factors; \"at\" is the height over the sill",
            units.height(height)
        ),
        "",
    );
    let mut table = plain_table();
    let mut header = vec!["Part".to_owned()];
    for load in &design.loads {
        header.extend([water(load.case).to_owned(), "at".to_owned()]);
    }
    header.push("Source".to_owned());
    let last = header.len() - 1;
    table.set_header(header);
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
    for (name, figure) in figures(units) {
        let mut row = vec![name.to_owned()];
        row.extend(design.loads.iter().flat_map(figure));
        table.add_row(row);
    }
    columns_to_the_right(&mut table, 1..last);
    page.table(&table);
    for load in &design.loads {
        more(page, notes, load, units);
    }
}

/// A figure of one case: its value, and the height it belongs to.
type Figure = Box<dyn Fn(&CaseLoad) -> [String; 2]>;

fn figures(units: UnitSystem) -> [(&'static str, Figure); 3] {
    [
        (
            "moment about the sill",
            Box::new(move |load| {
                let moment = load.on_barrier.resultant().moment;
                [units.moment_per_length(moment), String::new()]
            }),
        ),
        (
            "greatest pressure",
            Box::new(move |load| {
                let (pressure, at) = PressureProfile::greatest(&load.on_barrier);
                [units.pressure(pressure), units.height(at)]
            }),
        ),
        (
            "depth over the sill",
            Box::new(move |load| [units.height(load.depth), String::new()]),
        ),
    ]
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

/// Debris, and what is not in the load; once where both cases have the same.
fn more(page: &mut Page, notes: &mut Notes, load: &CaseLoad, units: UnitSystem) {
    if load.case == LoadCase::Top {
        return;
    }
    if let Some(impact) = load.water.impact {
        let marks = sources(notes, std::slice::from_ref(load), LoadPart::Debris);
        let force = match impact {
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
        };
        page.paragraph(
            &format!(
                "debris strikes on top of that, at the worst place at or below the surface: {force} {marks}"
            ),
            "- ",
        );
    }
    for absent in &load.water.not_included {
        page.paragraph(
            &format!("not in the load: {}, since {}", absent.part, absent.reason),
            "- ",
        );
    }
}
