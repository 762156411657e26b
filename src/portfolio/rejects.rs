//! Rejected rows as a table of their own.

use super::RowFault;
use crate::table::csv_text;

/// The first line of a table of rejected rows.
#[must_use]
pub const fn rejects_header() -> &'static str {
    "line,id,field,value,problem,accepted\n"
}

/// Rejected rows as lines of their table.
#[must_use]
pub fn reject_lines(rejects: &[RowFault]) -> Vec<u8> {
    let mut text = Vec::new();
    for RowFault { id, fault } in rejects {
        text.extend_from_slice(fault.line.to_string().as_bytes());
        for part in [
            id,
            &fault.field,
            &fault.value,
            &fault.problem,
            &fault.accepted,
        ] {
            text.push(b',');
            csv_text(&mut text, part);
        }
        text.push(b'\n');
    }
    text
}
