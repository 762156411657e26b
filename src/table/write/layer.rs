//! GeoPackage and FlatGeobuf, through GDAL.

use std::path::Path;

use super::rows::{Value, WorkRows};
use super::{ClassStyle, ColumnKind, Plan, style};
use crate::gis::{self, FieldKind, GisError, LayerFormat, LayerPlan, LayerShape};
use crate::table::{TableError, TableFormat};

pub(super) fn write(
    rows: &mut WorkRows<'_>,
    plan: &Plan<'_>,
    format: TableFormat,
    style: Option<&ClassStyle>,
    path: &Path,
) -> Result<(), TableError> {
    let fields: Vec<(&str, FieldKind)> = plan
        .columns
        .iter()
        .map(|column| {
            let kind = match column.kind {
                ColumnKind::Text => FieldKind::Text,
                ColumnKind::Number => FieldKind::Number,
                ColumnKind::Whole => FieldKind::Whole,
            };
            (column.name.as_str(), kind)
        })
        .collect();
    let layer = LayerPlan {
        format: match format {
            TableFormat::FlatGeobuf => LayerFormat::FlatGeobuf,
            _ => LayerFormat::GeoPackage,
        },
        name: plan.layer,
        fields: &fields,
        shape: LayerShape::Points,
        crs: plan.points.map(|points| points.crs.definition()),
        fetched: None,
    };
    let style = style.filter(|_| format == TableFormat::GeoPackage);
    let written = gis::write_layer::<TableError>(
        path,
        &layer,
        |draft| {
            rows.each(|row| {
                for column in 0..plan.columns.len() {
                    match row.value(column)? {
                        Value::Missing => Ok(()),
                        Value::Text(text) => draft.text(column, text),
                        Value::Number(number) => draft.number(column, number),
                        Value::Whole(number) => draft.whole(column, number),
                    }?;
                }
                if let Some((x, y)) = row.point()? {
                    draft.point(x, y)?;
                }
                Ok(draft.end_feature()?)
            })
        },
        |file| style.map_or(Ok(()), |style| style::add_style(file, plan.layer, style)),
    );
    // The message shall name the target, not the file on its way there.
    written.map(drop).map_err(|error| match error {
        TableError::Gis(GisError::NotWritten { detail, .. }) => plan.not_written(detail),
        TableError::Gis(error) => plan.not_written(error),
        other => other,
    })
}
