//! GeoPackage, GeoJSON and FlatGeobuf, through GDAL.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::row_of;
use super::rows::Rows;
use crate::crs::{CrsDefinition, HorizontalCrs};
use crate::gis::{FeatureCursor, GeometryProblem, Record};
use crate::table::block::{Block, Content};
use crate::table::header::column_names;
use crate::table::write::STYLE_TABLE;
use crate::table::{Position, RecordFault, TableError};

/// Reads the features of a layer as rows.
pub(super) struct FeatureTable {
    path: PathBuf,
    cursor: FeatureCursor,
    columns: Arc<[String]>,
    crs: Option<HorizontalCrs>,
}

impl FeatureTable {
    pub(super) fn open(
        path: &Path,
        driver: &'static str,
        layer: Option<&str>,
    ) -> Result<(Self, Arc<[String]>), TableError> {
        let cursor = FeatureCursor::open(path, driver, layer, &[STYLE_TABLE])?;
        let columns = column_names(path, cursor.attributes().iter().map(String::as_str))?;
        let definition = cursor.spatial_ref().map(CrsDefinition::from_spatial_ref);
        let crs = definition.transpose().map_err(|error| TableError::Crs {
            path: path.to_owned(),
            error,
        })?;
        let table = Self {
            path: path.to_owned(),
            cursor,
            columns: Arc::clone(&columns),
            crs: crs.map(|crs| crs.horizontal),
        };
        Ok((table, columns))
    }

    pub(super) const fn has_points(&self) -> bool {
        self.cursor.has_geometry()
    }

    pub(super) const fn crs(&self) -> Option<&HorizontalCrs> {
        self.crs.as_ref()
    }

    pub(super) const fn rows(&self) -> u64 {
        self.cursor.counted()
    }

    pub(super) const fn position(&self) -> Position {
        Position::Row {
            row: self.cursor.read(),
        }
    }

    pub(super) fn next_block(&mut self, limit: usize) -> Result<Option<Block>, TableError> {
        let start = self.position();
        let mut rows = Rows::new(self.columns.len());
        while rows.is_empty() || rows.bytes() < limit {
            let number = self.cursor.read() + 1;
            let width = self.columns.len();
            let read = self
                .cursor
                .next(|record| push(&mut rows, record, width, number))?;
            if read.is_none() {
                break;
            }
        }
        Ok((!rows.is_empty()).then(|| Block {
            columns: Arc::clone(&self.columns),
            start,
            end: self.position(),
            content: Content::Rows(rows),
        }))
    }

    pub(super) fn seek(&mut self, position: Position) -> Result<(), TableError> {
        let row = row_of(&self.path, position, self.rows())?;
        Ok(self.cursor.seek(row)?)
    }
}

fn push(rows: &mut Rows, record: &Record<'_>, width: usize, number: u64) {
    for column in 0..width {
        record.append(column, rows.text());
        rows.end_cell();
    }
    let point = record
        .point()
        .map_err(|problem| geometry_fault(number, &problem));
    rows.end_row(number, point);
}

fn geometry_fault(line: u64, problem: &GeometryProblem) -> RecordFault {
    let value = match problem {
        GeometryProblem::Kind { found, .. } | GeometryProblem::Curve { found } => found.clone(),
        GeometryProblem::NotFinite { x, y } => format!("{x}, {y}"),
        GeometryProblem::Unreadable { problem } => problem.clone(),
    };
    super::no_point(line, value)
}
