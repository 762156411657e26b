//! Rows that maps or method cannot answer.

use super::RunError;
use super::row::{OpeningRow, Row};
use crate::assess::AssessError;
use crate::table::RecordFault;

/// What is accepted of coordinates.
pub(super) const PLACE: &str = "coordinates that every map's system can express";

/// A fault of the row itself, or one that stops the run.
pub(super) fn of_row(row: &Row<&OpeningRow>, error: AssessError) -> Result<RecordFault, RunError> {
    match error {
        AssessError::Datum(error) => {
            let problem = format!(
                "it is on {}, but {} is on {}: {}",
                error.threshold_datum, error.what, error.datum, error.error
            );
            let accepted = "a height on a datum that grids (--grids) or a stated offset (--datum-offset) lead to";
            Ok(fault(row, "threshold", &problem, accepted))
        }
        AssessError::Crs(error) => Ok(fault(row, "coordinates", &error.to_string(), PLACE)),
        AssessError::Barrier { error, .. } | AssessError::Behind(error) => Ok(fault(
            row,
            "width",
            &error.to_string(),
            "an opening that a barrier fits",
        )),
        AssessError::Datums(error) => Ok(fault(
            row,
            "vertical_datum",
            &error.to_string(),
            "one datum for all heights",
        )),
        error @ (AssessError::Terrain(_) | AssessError::Level(_)) => Err(error.into()),
    }
}

/// A fault of a field of a row.
pub(super) fn fault(
    row: &Row<&OpeningRow>,
    field: &str,
    problem: &str,
    accepted: &str,
) -> RecordFault {
    RecordFault {
        line: row.line,
        field: field.to_owned(),
        value: row.shown(field),
        problem: problem.to_owned(),
        accepted: accepted.to_owned(),
    }
}
