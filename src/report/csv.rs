//! The assessment as a table: a row an opening.

use crate::assess::{Assessment, OpeningAssessment};
use crate::portfolio::{ResultShape, answer_columns, push_opening};
use crate::quantity::push_fixed;
use crate::table::csv_label;

/// What stands in a row.
pub(super) const SHAPE: ResultShape = ResultShape {
    building: false,
    opening: true,
    degrees: true,
    sill: true,
    barrier: true,
};

/// Decimals of degrees: a centimetre.
const DEGREES: usize = 7;

/// The assessment as CSV (RFC 4180) with a header, a row an opening, in metres and newtons; the
/// columns are those of a portfolio's result.
///
/// A text that a spreadsheet would take for a formula begins with an apostrophe.
#[must_use]
pub fn csv(assessment: &Assessment<'_>) -> String {
    let columns = answer_columns(SHAPE);
    let names: Vec<&str> = columns.iter().map(|column| column.name.as_str()).collect();
    let mut table = names.join(",").into_bytes();
    table.push(b'\n');
    for opening in &assessment.openings {
        lead(&mut table, assessment, opening);
        push_opening(&mut table, assessment, opening, SHAPE);
    }
    String::from_utf8_lossy(&table).into_owned()
}

/// The site as id, the opening, and where it stands.
fn lead(line: &mut Vec<u8>, assessment: &Assessment<'_>, opening: &OpeningAssessment<'_>) {
    for text in [&assessment.site.name, &opening.opening.id] {
        csv_label(line, text);
        line.push(b',');
    }
    let place = opening.place.as_deref().unwrap_or(&assessment.place);
    for degrees in [place.location.longitude(), place.location.latitude()] {
        push_fixed(line, degrees, DEGREES);
        line.push(b',');
    }
}
