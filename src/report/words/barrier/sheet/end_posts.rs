//! The posts at the wall, and what the wall takes.

use crate::barrier::{BarrierDesign, EndAnchors, Ends};
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};
use crate::report::words::barrier::words::{list, water};
use crate::site::Mount;

pub(super) fn print(page: &mut Outline, design: &BarrierDesign, units: UnitSystem) {
    let Some(end) = &design.end_post else {
        return;
    };
    let place = match end.ends {
        Some(Ends::Mounted(Mount::Inside)) => "in the reveal",
        Some(Ends::Mounted(Mount::Outside)) => "on the face of the wall",
        Some(Ends::AgainstWall) => "with their backs to the wall",
        None => "mount not known",
    };
    page.heading(&format!(
        "End posts ({place}) and what one hands to the wall, without load factors"
    ));
    let bears = end.forces.iter().any(|forces| forces.bearing.is_some());
    let mut header = vec!["Water", "Force", "at", "Most on a height"];
    header.extend(bears.then_some("Pressure on the face"));
    let mut table = Table::with_header(header);
    for forces in &end.forces {
        let mut row = vec![
            water(forces.case).to_owned(),
            units.force(forces.force),
            units.height(forces.height),
            units.line_load(forces.greatest),
        ];
        row.extend(forces.bearing.map(|bearing| units.stress(bearing)));
        table.add_row(row);
    }
    table.figures(1..5);
    page.table(table);
    page.paragraph(
        &format!(
            "an end post carries the water of {}, half of the longest plank at the end of the barrier",
            units.dimension(end.tributary)
        ),
        "- ",
    );
    if let Some(anchors) = &end.anchors {
        page.paragraph(&shares(anchors, units), "- ");
    }
}

fn shares(anchors: &EndAnchors, units: UnitSystem) -> String {
    let heights: Vec<String> = anchors
        .heights
        .iter()
        .map(|height| units.dimension(*height))
        .collect();
    format!(
        "anchors {} over its foot; {} of shear on the one that carries most, each with the load nearer to it than to its neighbours (common practice, no source)",
        list(&heights),
        units.force(anchors.greatest_shear)
    )
}
