//! Writing a table in any format, from the CSV file that a run writes first.

mod columnar;
mod geojson;
mod layer;
mod rows;
mod style;
mod text;

use std::path::Path;

use self::rows::WorkRows;
pub(super) use self::style::TABLE as STYLE_TABLE;
pub use self::style::{ClassStyle, StyleClass, add_style};
pub use self::text::{csv_label, csv_text};
use super::landing::Landing;
use super::{TableError, TableFormat};
use crate::crs::HorizontalCrs;

/// A column of the table that is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutColumn {
    /// Its name, as in the header of the work file.
    pub name: String,
    /// What its values are.
    pub kind: ColumnKind,
}

/// What the values of a column are. A missing value is empty in CSV and null elsewhere,
/// never zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColumnKind {
    /// Text.
    Text,
    /// A number, in double precision.
    Number,
    /// A whole number of 64 bits.
    Whole,
}

/// Which columns hold the point of a row.
#[derive(Clone, Debug, PartialEq)]
pub struct Points {
    /// The position of the column of x, east or longitude.
    pub x: usize,
    /// The position of the column of y, north or latitude.
    pub y: usize,
    /// The system that they are in.
    pub crs: HorizontalCrs,
}

/// Writes the rows of a CSV file as a table of another format.
///
/// `work` must have exactly these columns, in this order. Rows without x and y have no
/// geometry. The target appears whole or not at all: it is written under another name beside
/// it, closed, counted, synced to the disk and renamed. The same rows give the same bytes; a
/// `GeoPackage` therefore says that it was last changed at the start of 1970, unless GDAL's
/// `OGR_CURRENT_DATE` says otherwise.
///
/// GeoJSON is in WGS 84 (RFC 7946, section 4): points in another system are transformed, to
/// nine decimals of a degree. FlatGeobuf is written without its spatial index, which would
/// put the rows in another order.
///
/// # Errors
/// [`TableError`]; the target is then as it was before.
pub fn convert(
    work: &Path,
    columns: &[OutColumn],
    points: Option<&Points>,
    target: &Path,
    format: TableFormat,
    layer: &str,
    style: Option<&ClassStyle>,
) -> Result<(), TableError> {
    let landing = Landing::new(work, target)?;
    let plan = Plan {
        columns,
        points,
        layer,
        target,
    };
    let mut rows = WorkRows::open(work, columns, points)?;
    match format {
        TableFormat::Csv => landing.copy(work)?,
        TableFormat::GeoPackage | TableFormat::FlatGeobuf => {
            layer::write(&mut rows, &plan, format, style, landing.path())?;
        }
        TableFormat::GeoJson => geojson::write(&mut rows, &plan, landing.path())?,
        TableFormat::Parquet => columnar::write(&mut rows, &plan, landing.path())?,
    }
    landing.land()
}

/// What is to be written, whatever the format.
struct Plan<'plan> {
    columns: &'plan [OutColumn],
    points: Option<&'plan Points>,
    layer: &'plan str,
    /// For messages.
    target: &'plan Path,
}

impl Plan<'_> {
    fn not_written(&self, reason: impl std::fmt::Display) -> TableError {
        TableError::NotWritten {
            path: self.target.to_owned(),
            reason: reason.to_string(),
        }
    }
}
