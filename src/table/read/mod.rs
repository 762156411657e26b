//! Reading a table block by block.

use std::path::Path;
use std::sync::Arc;

use super::block::Block;
use super::{Position, RecordFault, TableError, TableFormat};
use crate::crs::HorizontalCrs;

mod columnar;
mod features;
pub(super) mod rows;
pub(super) mod text;

pub use text::LONGEST_RECORD;

/// A table that is being read.
pub struct TableReader {
    format: TableFormat,
    columns: Arc<[String]>,
    source: Source,
}

enum Source {
    Text(text::TextReader),
    Features(Box<features::FeatureTable>),
    Columnar(Box<columnar::ColumnarTable>),
}

impl TableReader {
    /// Opens a table. `layer` names one of a file that has several; a file with one needs
    /// none.
    ///
    /// # Errors
    /// [`TableError`]: no such file, another format, a header that does not tell the columns
    /// apart, several layers and none named.
    pub fn open(path: &Path, format: TableFormat, layer: Option<&str>) -> Result<Self, TableError> {
        let (source, columns) = match format {
            TableFormat::Csv => {
                no_layers(path, format, layer)?;
                let (reader, columns) = text::TextReader::open(path, None)?;
                (Source::Text(reader), columns)
            }
            TableFormat::Parquet => {
                no_layers(path, format, layer)?;
                let (reader, columns) = columnar::ColumnarTable::open(path)?;
                (Source::Columnar(Box::new(reader)), columns)
            }
            TableFormat::GeoPackage => features(path, "GPKG", layer)?,
            TableFormat::GeoJson => features(path, "GeoJSON", layer)?,
            TableFormat::FlatGeobuf => features(path, "FlatGeobuf", layer)?,
        };
        Ok(Self {
            format,
            columns,
            source,
        })
    }

    /// Reads CSV from standard input, which cannot be gone on from later.
    ///
    /// # Errors
    /// [`TableError`] as [`open`](Self::open).
    pub fn from_stdin() -> Result<Self, TableError> {
        let (reader, columns) = text::TextReader::from_stdin(None)?;
        Ok(Self {
            format: TableFormat::Csv,
            columns,
            source: Source::Text(reader),
        })
    }

    /// Reads CSV without a header line, whose columns are `names`: a file, or standard input
    /// where there is no path.
    ///
    /// # Errors
    /// [`TableError`] as [`open`](Self::open).
    pub fn without_header(path: Option<&Path>, names: &[String]) -> Result<Self, TableError> {
        let (reader, columns) = match path {
            Some(path) => text::TextReader::open(path, Some(names))?,
            None => text::TextReader::from_stdin(Some(names))?,
        };
        Ok(Self {
            format: TableFormat::Csv,
            columns,
            source: Source::Text(reader),
        })
    }

    /// The format that is read.
    #[must_use]
    pub const fn format(&self) -> TableFormat {
        self.format
    }

    /// The names of the columns in the order of the file; geometry is none of them.
    #[must_use]
    pub fn columns(&self) -> &[String] {
        &self.columns
    }

    /// The position of a column.
    #[must_use]
    pub fn column(&self, name: &str) -> Option<usize> {
        self.columns.iter().position(|column| column == name)
    }

    /// Whether rows have a point beside their columns.
    #[must_use]
    pub fn has_points(&self) -> bool {
        match &self.source {
            Source::Text(_) => false,
            Source::Features(reader) => reader.has_points(),
            Source::Columnar(reader) => reader.has_points(),
        }
    }

    /// The system of the points; `None` where there are none, or where the file does not say.
    #[must_use]
    pub fn point_crs(&self) -> Option<&HorizontalCrs> {
        match &self.source {
            Source::Text(_) => None,
            Source::Features(reader) => reader.crs(),
            Source::Columnar(reader) => reader.crs(),
        }
    }

    /// How many rows the file says it has.
    #[must_use]
    pub fn rows_hint(&self) -> Option<u64> {
        match &self.source {
            Source::Text(_) => None,
            Source::Features(reader) => Some(reader.rows()),
            Source::Columnar(reader) => Some(reader.rows()),
        }
    }

    /// How many bytes there are to read, for formats whose positions count them (CSV).
    #[must_use]
    pub fn bytes_hint(&self) -> Option<u64> {
        match &self.source {
            Source::Text(reader) => reader.bytes(),
            Source::Features(_) | Source::Columnar(_) => None,
        }
    }

    /// Where the next block begins.
    #[must_use]
    pub fn position(&self) -> Position {
        match &self.source {
            Source::Text(reader) => reader.position(),
            Source::Features(reader) => reader.position(),
            Source::Columnar(reader) => reader.position(),
        }
    }

    /// The next records, about `limit_bytes` of them, at least one; `None` after the last.
    ///
    /// # Errors
    /// [`TableError`] where reading fails: the table is then not read to its end.
    pub fn next_block(&mut self, limit_bytes: usize) -> Result<Option<Block>, TableError> {
        match &mut self.source {
            Source::Text(reader) => reader.next_block(limit_bytes),
            Source::Features(reader) => reader.next_block(limit_bytes),
            Source::Columnar(reader) => reader.next_block(limit_bytes),
        }
    }

    /// Goes on from where a block began or ended, in this run or an earlier one.
    ///
    /// # Errors
    /// [`TableError::Refused`] where no record of this table begins there;
    /// [`TableError::System`] where the file cannot be read from another place.
    pub fn seek(&mut self, position: Position) -> Result<(), TableError> {
        match &mut self.source {
            Source::Text(reader) => reader.seek(position),
            Source::Features(reader) => reader.seek(position),
            Source::Columnar(reader) => reader.seek(position),
        }
    }
}

fn features(
    path: &Path,
    driver: &'static str,
    layer: Option<&str>,
) -> Result<(Source, Arc<[String]>), TableError> {
    let (reader, columns) = features::FeatureTable::open(path, driver, layer)?;
    Ok((Source::Features(Box::new(reader)), columns))
}

/// The rows before a place in a table that is not CSV.
fn row_of(path: &Path, position: Position, rows: u64) -> Result<u64, TableError> {
    match position {
        Position::Row { row } if row <= rows => Ok(row),
        _ => Err(TableError::refused(
            path,
            "position",
            format!("{position:?} is none of this table of {rows} rows"),
            "a place between two records of this very file",
        )),
    }
}

/// A row whose geometry is not a point.
fn no_point(line: u64, found: String) -> RecordFault {
    RecordFault {
        line,
        field: "geometry".to_owned(),
        value: found,
        problem: "it is not a point".to_owned(),
        accepted: "a point, or no geometry".to_owned(),
    }
}

fn no_layers(path: &Path, format: TableFormat, layer: Option<&str>) -> Result<(), TableError> {
    layer.map_or(Ok(()), |layer| {
        Err(TableError::refused(
            path,
            format!("layer {layer:?}"),
            format!("{} has no layers", format.title()),
            "the file without a layer's name",
        ))
    })
}
