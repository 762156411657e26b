//! Where a row stands.

use super::{Columns, Coordinates};
use crate::crs::CrsError;
use crate::site::Location;
use crate::table::{Record, RecordFault};

/// Turns coordinates of the table into a place on the earth; without it they are degrees of
/// WGS 84.
pub type ToPlace<'a> = dyn Fn(f64, f64) -> Result<Location, CrsError> + 'a;

const NUMBER: &str = "a number, such as 9.25";

/// The place of a record.
///
/// # Errors
/// [`RecordFault`] with the line, the fields and what would be accepted.
pub fn row_place(
    record: &Record<'_>,
    columns: &Columns,
    to_place: Option<&ToPlace<'_>>,
) -> Result<Location, RecordFault> {
    let (names, texts, (x, y)) = match columns.coordinates {
        Coordinates::Columns(east, north) => {
            let names = if columns.degrees {
                ["longitude", "latitude"]
            } else {
                ["x", "y"]
            };
            let texts = [record.get(east), record.get(north)];
            let x = number(record, names[0], texts[0])?;
            (names, texts, (x, number(record, names[1], texts[1])?))
        }
        Coordinates::Point => {
            let point = record
                .point()
                .ok_or_else(|| fault(record, "geometry", "", "the row has no point", "a point"))?;
            (["geometry"; 2], [""; 2], point)
        }
    };
    let problem = match to_place {
        None => match Location::from_degrees(x, y) {
            Ok(location) => return Ok(location),
            Err(error) => error.to_string(),
        },
        Some(to_place) => match to_place(x, y) {
            Ok(location) => return Ok(location),
            Err(error) => error.to_string(),
        },
    };
    let value = match texts {
        ["", ""] => format!("{x} {y}"),
        [x, y] => format!("{} {}", shown(x), shown(y)),
    };
    let field = match names {
        ["geometry", _] => "geometry".to_owned(),
        [x, y] => format!("{x}, {y}"),
    };
    Err(RecordFault {
        line: record.line(),
        field,
        value,
        problem,
        accepted: "coordinates of a place in the table's system (option --crs), east first"
            .to_owned(),
    })
}

/// The start of a value: more of it does not help to find it.
pub(super) fn shown(text: &str) -> String {
    text.chars().take(100).collect()
}

pub(super) fn number(record: &Record<'_>, field: &str, text: &str) -> Result<f64, RecordFault> {
    let found: Option<f64> = text.parse().ok();
    found.filter(|number| number.is_finite()).ok_or_else(|| {
        let problem = match text {
            "" => "it is missing",
            _ => "it is not a number",
        };
        fault(record, field, text, problem, NUMBER)
    })
}

pub(super) fn fault(
    record: &Record<'_>,
    field: &str,
    value: &str,
    problem: &str,
    accepted: &str,
) -> RecordFault {
    RecordFault {
        line: record.line(),
        field: field.to_owned(),
        value: shown(value),
        problem: problem.to_owned(),
        accepted: accepted.to_owned(),
    }
}
