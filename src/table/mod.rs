//! Rows of a table in and out, whatever the format: CSV, GeoPackage, GeoJSON, FlatGeobuf,
//! Parquet.
//!
//! This room knows columns, rows and points; it does not know what they mean.
//!
//! *In.* A [`TableReader`] cuts the table into [`Block`]s of whole records, fast and on one
//! thread. A block can be sent to another thread and parsed there, record by record. A record
//! that cannot be read is a [`RecordFault`] with its line; the records after it are still
//! read. Every block knows its [`Position`], from which a reader goes on later.
//!
//! ```
//! use std::io::Write;
//! use sillmark::table::{TableFormat, TableReader};
//!
//! let folder = tempfile::tempdir()?;
//! let path = folder.path().join("sites.csv");
//! std::fs::write(&path, "id,sill\n7,8.1 ft\n8\n")?;
//!
//! let mut reader = TableReader::open(&path, TableFormat::Csv, None)?;
//! assert_eq!(reader.columns(), ["id", "sill"]);
//! while let Some(block) = reader.next_block(64 * 1024)? {
//!     let mut records = block.records();
//!     let first = records.next().unwrap()?;
//!     assert_eq!((first.line(), first.get(1)), (2, "8.1 ft"));
//!     let fault = records.next().unwrap().unwrap_err();
//!     assert_eq!(fault.line, 3);
//!     assert_eq!(fault.problem, "it has 1 value, the header names 2 columns");
//! }
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! *Out.* A run writes its rows as CSV, with [`csv_text`]. [`sort_ranked`]
//! sorts that file, however long, and [`convert`] writes it in any format. Both put a file
//! under its name only when it is whole.

mod block;
mod error;
mod fault;
mod format;
mod header;
mod landing;
mod position;
mod read;
mod sort;
mod trimmed;
mod write;

pub use block::{Block, Record, Records};
pub use error::TableError;
pub use fault::RecordFault;
pub use format::TableFormat;
pub use position::Position;
pub use read::{LONGEST_RECORD, TableReader};
pub use sort::sort_ranked;
pub use write::{
    ClassStyle, ColumnKind, OutColumn, Points, StyleClass, add_style, convert, csv_label, csv_text,
};
