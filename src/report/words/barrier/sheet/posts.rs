//! The free-standing posts, and the forces at their feet.

use crate::barrier::{BarrierDesign, UprightDesign};
use crate::quantity::UnitSystem;
use crate::report::outline::{Outline, Table};
use crate::report::words::barrier::words::{percent, role, water};
use crate::site::BraceSide;

pub(super) fn print(page: &mut Outline, design: &BarrierDesign, units: UnitSystem) {
    if design.uprights.is_empty() {
        return;
    }
    page.heading("Free-standing posts and the forces at the foot of one, without load factors");
    let mut table = Table::with_header(vec![
        "Post", "Count", "Width", "Water", "Shear", "Moment", "Uplift",
    ]);
    for post in &design.uprights {
        for (position, base) in post.base.iter().enumerate() {
            let mut row = if position == 0 {
                vec![
                    role(post.role).to_owned(),
                    post.count.to_string(),
                    units.dimension(post.tributary),
                ]
            } else {
                vec![String::new(); 3]
            };
            row.extend([
                water(base.case).to_owned(),
                units.force(base.shear),
                units.moment(base.moment),
                units.force(base.uplift),
            ]);
            table.add_row(row);
        }
    }
    table.figures(1..3);
    table.figures(4..7);
    page.table(table);
    page.paragraph(
        "\"width\" is the width of barrier whose water one post carries, at a corner the vector sum of both legs'; a post is fixed at its foot, and where it is braced the brace does not give way",
        "- ",
    );
    let base = design.uprights.iter().flat_map(|post| &post.base);
    if base.clone().any(|base| base.moment.value < 0.0) {
        page.paragraph(
            "a moment below zero pulls on the anchors at the dry side",
            "- ",
        );
    }
    if base.clone().any(|base| base.uplift.value < 0.0) {
        page.paragraph("an uplift below zero presses on the plate", "- ");
    }
    for post in &design.uprights {
        if let Some(line) = brace(post, units) {
            page.paragraph(&line, "- ");
        }
    }
}

fn brace(post: &UprightDesign, units: UnitSystem) -> Option<String> {
    let brace = post.brace?;
    let (side, along, foot) = match brace.side {
        BraceSide::Dry => ("dry side", "thrust", "down"),
        BraceSide::Water => ("water side", "pull", "up"),
    };
    let capacity = brace.capacity.zip(brace.used()).map(|(capacity, used)| {
        format!(
            ", with the load factor {} {} of the {} that the kit's maker allows",
            brace.factor,
            percent(used),
            units.force(capacity)
        )
    });
    Some(format!(
        "brace of the {} post, on the {side}, {} over the sill: takes {} from the post ({}), a {along} of {} along it{}, {} {foot} at its foot",
        role(post.role),
        units.height(brace.at),
        units.force(brace.horizontal),
        water(brace.case),
        units.force(brace.along),
        capacity.unwrap_or_default(),
        units.force(brace.vertical),
    ))
}
