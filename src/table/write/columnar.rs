//! Parquet; with points as `GeoParquet` 1.1.0, in well-known binary.

use std::fs::File;
use std::path::Path;
use std::sync::Arc;

use arrow_array::builder::{BinaryBuilder, Float64Builder, Int64Builder, StringBuilder};
use arrow_array::{ArrayRef, RecordBatch};
use arrow_schema::{DataType, Field, Schema};
use parquet::arrow::ArrowWriter;
use parquet::arrow::arrow_reader::ParquetRecordBatchReaderBuilder;
use parquet::arrow::arrow_writer::ArrowWriterOptions;
use parquet::basic::Compression;
use parquet::file::metadata::KeyValue;
use parquet::file::properties::{EnabledStatistics, WriterProperties};
use parquet::schema::types::ColumnPath;
use serde_json::json;

use super::geojson::is_wgs84;
use super::rows::{Row, Value, WorkRows};
use super::{ColumnKind, Plan};
use crate::table::TableError;

/// Rows and bytes that are gathered before they are encoded.
const BATCH_ROWS: usize = 8192;
const BATCH_BYTES: usize = 8 << 20;

/// Rows and bytes of a row group, which is held until it is full.
const GROUP_ROWS: usize = 128 * 1024;
const GROUP_BYTES: usize = 64 << 20;

pub(super) fn write(
    rows: &mut WorkRows<'_>,
    plan: &Plan<'_>,
    path: &Path,
) -> Result<(), TableError> {
    let geometry = plan.points.map(|_| geometry_name(plan));
    let mut table = Gathered::new(plan, geometry.as_deref());
    let file = File::create(path).map_err(TableError::system(plan.target, "writing"))?;
    let options = ArrowWriterOptions::new()
        .with_properties(properties(geometry.as_deref()))
        .with_skip_arrow_metadata(true);
    let failed = |error| plan.not_written(error);
    let schema = Arc::clone(&table.schema);
    let mut writer = ArrowWriter::try_new_with_options(file, schema, options).map_err(failed)?;
    let mut written = 0_i64;
    rows.each(|row| {
        table.push(row)?;
        written += 1;
        if table.is_full() {
            writer.write(&table.take(plan)?).map_err(failed)?;
        }
        Ok(())
    })?;
    writer.write(&table.take(plan)?).map_err(failed)?;
    if let Some(name) = geometry {
        let geo = geo_metadata(plan, &name, table.bounds)?;
        writer.append_key_value_metadata(KeyValue::new("geo".to_owned(), geo));
    }
    writer.close().map_err(failed)?;
    check(plan, path, written)
}

/// Reads the finished file's footer.
fn check(plan: &Plan<'_>, path: &Path, written: i64) -> Result<(), TableError> {
    let file = File::open(path).map_err(TableError::system(plan.target, "reading back"))?;
    let reader = ParquetRecordBatchReaderBuilder::try_new(file);
    let reader = reader.map_err(|error| plan.not_written(error))?;
    let counted = reader.metadata().file_metadata().num_rows();
    if counted == written {
        Ok(())
    } else {
        let found = format!("{counted} of {written} rows are in the file");
        Err(plan.not_written(found))
    }
}

fn properties(geometry: Option<&str>) -> WriterProperties {
    let properties = WriterProperties::builder()
        .set_compression(Compression::SNAPPY)
        .set_max_row_group_row_count(Some(GROUP_ROWS))
        .set_max_row_group_bytes(Some(GROUP_BYTES));
    // The least and greatest of encoded points mean nothing.
    match geometry {
        Some(name) => properties.set_column_statistics_enabled(
            ColumnPath::from(name.to_owned()),
            EnabledStatistics::None,
        ),
        None => properties,
    }
    .build()
}

fn geometry_name(plan: &Plan<'_>) -> String {
    let mut name = "geometry".to_owned();
    while plan.columns.iter().any(|column| column.name == name) {
        name.push('_');
    }
    name
}

/// The value of `geo` in the file's metadata (`GeoParquet` 1.1.0). A system left out is
/// OGC:CRS84.
fn geo_metadata(
    plan: &Plan<'_>,
    name: &str,
    bounds: Option<[f64; 4]>,
) -> Result<String, TableError> {
    let mut column = json!({"encoding": "WKB", "geometry_types": ["Point"]});
    if let Some(crs) = plan
        .points
        .map(|points| &points.crs)
        .filter(|crs| !is_wgs84(crs))
    {
        column["crs"] = crs.to_projjson().map_err(|error| TableError::Crs {
            path: plan.target.to_owned(),
            error,
        })?;
    }
    if let Some(bounds) = bounds {
        column["bbox"] = json!(bounds);
    }
    let geo = json!({"version": "1.1.0", "primary_column": name, "columns": {name: column}});
    Ok(geo.to_string())
}

/// Values that are not yet encoded, column by column.
struct Gathered {
    schema: Arc<Schema>,
    columns: Vec<Column>,
    points: Option<BinaryBuilder>,
    bounds: Option<[f64; 4]>,
    rows: usize,
    bytes: usize,
}

enum Column {
    Text(StringBuilder),
    Number(Float64Builder),
    Whole(Int64Builder),
}

impl Gathered {
    fn new(plan: &Plan<'_>, geometry: Option<&str>) -> Self {
        let mut fields = Vec::new();
        let mut columns = Vec::new();
        for column in plan.columns {
            let (kind, builder) = match column.kind {
                ColumnKind::Text => (DataType::Utf8, Column::Text(StringBuilder::new())),
                ColumnKind::Number => (DataType::Float64, Column::Number(Float64Builder::new())),
                ColumnKind::Whole => (DataType::Int64, Column::Whole(Int64Builder::new())),
            };
            fields.push(Field::new(&column.name, kind, true));
            columns.push(builder);
        }
        if let Some(name) = geometry {
            fields.push(Field::new(name, DataType::Binary, true));
        }
        Self {
            schema: Arc::new(Schema::new(fields)),
            columns,
            points: geometry.map(|_| BinaryBuilder::new()),
            bounds: None,
            rows: 0,
            bytes: 0,
        }
    }

    fn push(&mut self, row: &Row<'_>) -> Result<(), TableError> {
        for (index, column) in self.columns.iter_mut().enumerate() {
            match (column, row.value(index)?) {
                (Column::Text(texts), Value::Text(text)) => {
                    self.bytes += text.len();
                    texts.append_value(text);
                }
                (Column::Number(numbers), Value::Number(number)) => numbers.append_value(number),
                (Column::Whole(numbers), Value::Whole(number)) => numbers.append_value(number),
                (Column::Text(texts), _) => texts.append_null(),
                (Column::Number(numbers), _) => numbers.append_null(),
                (Column::Whole(numbers), _) => numbers.append_null(),
            }
        }
        if let Some(points) = &mut self.points {
            match row.point()? {
                Some((x, y)) => {
                    points.append_value(point_as_wkb(x, y));
                    self.bounds = Some(grown(self.bounds, x, y));
                }
                None => points.append_null(),
            }
        }
        self.rows += 1;
        Ok(())
    }

    const fn is_full(&self) -> bool {
        self.rows >= BATCH_ROWS || self.bytes >= BATCH_BYTES
    }

    fn take(&mut self, plan: &Plan<'_>) -> Result<RecordBatch, TableError> {
        (self.rows, self.bytes) = (0, 0);
        let mut arrays: Vec<ArrayRef> = Vec::new();
        for column in &mut self.columns {
            arrays.push(match column {
                Column::Text(texts) => Arc::new(texts.finish()),
                Column::Number(numbers) => Arc::new(numbers.finish()),
                Column::Whole(numbers) => Arc::new(numbers.finish()),
            });
        }
        if let Some(points) = &mut self.points {
            arrays.push(Arc::new(points.finish()));
        }
        RecordBatch::try_new(Arc::clone(&self.schema), arrays)
            .map_err(|error| plan.not_written(error))
    }
}

/// A point in well-known binary, little-endian (OGC 06-103r4, clause 8.2).
fn point_as_wkb(x: f64, y: f64) -> [u8; 21] {
    let mut bytes = [0; 21];
    bytes[..5].copy_from_slice(&[1, 1, 0, 0, 0]);
    bytes[5..13].copy_from_slice(&x.to_le_bytes());
    bytes[13..].copy_from_slice(&y.to_le_bytes());
    bytes
}

fn grown(bounds: Option<[f64; 4]>, x: f64, y: f64) -> [f64; 4] {
    let [west, south, east, north] = bounds.unwrap_or([x, y, x, y]);
    [west.min(x), south.min(y), east.max(x), north.max(y)]
}
