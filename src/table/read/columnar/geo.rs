//! The column of points, from the metadata `geo` of a `GeoParquet` file (versions 1.0 and 1.1).

use std::path::Path;

use arrow_array::cast::AsArray;
use arrow_array::types::Float64Type;
use arrow_array::{Array, ArrayRef, BinaryArray, Float64Array};
use arrow_schema::DataType;
use parquet::arrow::arrow_reader::ArrowReaderMetadata;
use serde_json::Value;

use super::wkb;
use crate::crs::{CrsDefinition, HorizontalCrs};
use crate::table::TableError;

/// Where the points are and in which system.
pub(super) struct GeoColumn {
    pub(super) column: usize,
    /// `None` where the file says that it is not known.
    pub(super) crs: Option<HorizontalCrs>,
}

/// What may hold points.
const ACCEPTED: &str =
    "GeoParquet 1.0 or 1.1 with points in the primary column, its encoding \"WKB\" or \"point\"";

impl GeoColumn {
    /// The primary geometry column; `None` in a file without the metadata.
    pub(super) fn find(
        path: &Path,
        metadata: &ArrowReaderMetadata,
    ) -> Result<Option<Self>, TableError> {
        let pairs = metadata.metadata().file_metadata().key_value_metadata();
        let pair = pairs.and_then(|pairs| pairs.iter().find(|pair| pair.key == "geo"));
        let Some(text) = pair.and_then(|pair| pair.value.as_ref()) else {
            return Ok(None);
        };
        let refused =
            |found: String| TableError::refused(path, "metadata \"geo\"", found, ACCEPTED);
        let geo: Value = serde_json::from_str(text).map_err(|error| refused(error.to_string()))?;
        let name = geo["primary_column"].as_str().unwrap_or_default();
        let stated = &geo["columns"][name];
        let field = metadata.schema().column_with_name(name);
        let Some((column, field)) = field.filter(|_| stated.is_object()) else {
            return Err(refused(format!(
                "its primary column {name:?} is not in the file"
            )));
        };
        let encoding = stated["encoding"].as_str().unwrap_or_default();
        let fits = match field.data_type() {
            DataType::Binary => encoding == "WKB",
            DataType::Struct(parts) => {
                let names: Vec<&str> = parts.iter().map(|part| part.name().as_str()).collect();
                let numbers = parts
                    .iter()
                    .all(|part| *part.data_type() == DataType::Float64);
                encoding == "point" && numbers && names.starts_with(&["x", "y"])
            }
            _ => false,
        };
        if !fits {
            return Err(refused(format!(
                "column {name:?} has the encoding {encoding:?}"
            )));
        }
        let crs = match stated.get("crs") {
            None => Some("OGC:CRS84".to_owned()),
            Some(Value::Null) => None,
            Some(crs) => Some(crs.to_string()),
        };
        let crs = crs.map(|crs| CrsDefinition::from_text(&crs)).transpose();
        let crs = crs.map_err(|error| TableError::Crs {
            path: path.to_owned(),
            error,
        })?;
        Ok(Some(Self {
            column,
            crs: crs.map(|crs| crs.horizontal),
        }))
    }
}

/// The points of a batch.
pub(super) enum PointCells<'batch> {
    Binary(&'batch BinaryArray),
    Pair {
        whole: &'batch ArrayRef,
        x: &'batch Float64Array,
        y: &'batch Float64Array,
    },
}

impl<'batch> PointCells<'batch> {
    pub(super) fn new(array: &'batch ArrayRef) -> Self {
        match array.as_struct_opt() {
            Some(pair) => Self::Pair {
                whole: array,
                x: pair.column(0).as_primitive::<Float64Type>(),
                y: pair.column(1).as_primitive::<Float64Type>(),
            },
            None => Self::Binary(array.as_binary()),
        }
    }

    /// The point of a row, or what is there instead.
    pub(super) fn get(&self, row: usize) -> Result<Option<(f64, f64)>, String> {
        match self {
            Self::Binary(bytes) if bytes.is_null(row) => Ok(None),
            Self::Binary(bytes) => wkb::point(bytes.value(row)),
            Self::Pair { whole, x, y } => {
                if whole.is_null(row) || x.is_null(row) || y.is_null(row) {
                    return Ok(None);
                }
                wkb::checked(x.value(row), y.value(row))
            }
        }
    }
}
