//! A place between two records.

use serde::{Deserialize, Serialize};

/// Where a block begins or ends, to be kept and gone on from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Position {
    /// A place in a CSV file: the start of a record.
    Text {
        /// Bytes before it.
        byte: u64,
        /// Its line, counted from 1; the header is line 1.
        line: u64,
    },
    /// A place in any other format.
    Row {
        /// Rows before it.
        row: u64,
    },
}
