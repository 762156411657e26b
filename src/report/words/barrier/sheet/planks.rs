//! The planks: what each carries, and the spans that they are cut for.

use crate::barrier::{BarrierDesign, PlankLoad};
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};
use crate::report::words::barrier::words::{counted, water};

pub(super) fn print(page: &mut Outline, design: &BarrierDesign, units: UnitSystem) {
    page.heading("Planks, counted from the sill, with the load on each unit of their length");
    strips(page, design, units);
    if design.legs.is_empty() {
        return;
    }
    page.heading("Spans");
    spans(page, design, units);
    for (number, planned) in design.legs.iter().enumerate() {
        let count = u32::try_from(planned.leg.spans.len()).unwrap_or(u32::MAX);
        let because = match (count, planned.divided_because.as_slice()) {
            (0 | 1, _) => continue,
            (_, []) => "so that the posts hold".to_owned(),
            (_, reasons) => format!("with fewer, {}", reasons.join("; ")),
        };
        page.paragraph(
            &format!("leg {}: {} ({because})", number + 1, counted(count, "span")),
            "- ",
        );
    }
    if let Some(span) = design.longest_span {
        page.paragraph(
            &format!(
                "the longest span that planks hold under these loads, up to the kit's longest piece: {}",
                units.dimension(span)
            ),
            "- ",
        );
    }
    if let Some(depth) = design.greatest_depth {
        page.paragraph(
            &format!(
                "the deepest water over the sill that planks hold over the longest span here, up to the kit's greatest height: {}",
                units.height(depth)
            ),
            "- ",
        );
    }
}

fn strips(page: &mut Outline, design: &BarrierDesign, units: UnitSystem) {
    let stack = design.stack;
    let cover = stack.height / f64::from(stack.count);
    let mut header = vec!["Plank", "from", "to"];
    header.extend(design.loads.iter().map(|load| water(load.case)));
    let last = header.len();
    let mut table = Table::with_header(header);
    for plank in 1..=stack.count {
        let (from, to) = (cover * f64::from(plank - 1), cover * f64::from(plank));
        let mut row = vec![plank.to_string(), units.height(from), units.height(to)];
        let loads = design.loads.iter();
        row.extend(loads.map(|load| strip(load.on_plank(from, to), units)));
        table.add_row(row);
    }
    table.figures(0..last);
    page.table(table);
}

/// The load on one plank, with the blow of debris that strikes a patch.
fn strip(load: PlankLoad, units: UnitSystem) -> String {
    let blow = load
        .blow
        .map(|blow| format!(" + a blow of {}", units.force(blow.force)));
    format!(
        "{}{}",
        units.line_load(load.water),
        blow.unwrap_or_default()
    )
}

fn spans(page: &mut Outline, design: &BarrierDesign, units: UnitSystem) {
    let mut table = Table::with_header(vec![
        "Leg",
        "Length",
        "Span",
        "Clear",
        "Bends over",
        "Cut to",
    ]);
    for (number, planned) in design.legs.iter().enumerate() {
        let leg = &planned.leg;
        for (position, span) in leg.spans.iter().enumerate() {
            let first = position == 0;
            table.add_row(vec![
                if first {
                    (number + 1).to_string()
                } else {
                    String::new()
                },
                if first {
                    units.dimension(leg.length)
                } else {
                    String::new()
                },
                (position + 1).to_string(),
                units.dimension(span.clear),
                units.dimension(span.bearing),
                units.dimension(span.cut),
            ]);
        }
    }
    table.figures(0..6);
    page.table(table);
}
