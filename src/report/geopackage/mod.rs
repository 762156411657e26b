//! The site as a `GeoPackage`: points, zones and lines.

mod lines;
mod points;
mod zones;

use std::path::Path;

use crate::assess::Assessment;
use crate::gis::{
    FieldKind, Fill, GisError, LayerDraft, LayerFormat, LayerPlan, LayerShape, write_layers,
};
use crate::surroundings::Surroundings;
use crate::table::add_style;

use super::palette::verdict_style;

/// The system of all layers: WGS 84, longitude first.
const CRS: &str = "EPSG:4326";

/// The layer of points, which has a style.
const POINTS: &str = "points";

/// Writes the site as a new `GeoPackage` of three layers in WGS 84 (EPSG:4326):
///
/// - `points`: the site, then a row an opening where it stands, with the columns of a portfolio's
///   result, and a style that draws a colour for each verdict;
/// - `zones`: those that hold the site or an opening, cut off at the square of the surroundings;
/// - `lines`: the whole lines that a flood level was read from.
///
/// Lengths are metres, forces newtons, as the names of their columns say. Layers that have
/// nothing to hold are there and empty. The same assessment gives the same bytes, which
/// therefore say that the file was last changed at the start of 1970, unless GDAL's
/// `OGR_CURRENT_DATE` says otherwise.
///
/// # Errors
/// [`GisError`] where it cannot be written; what is at `path` is then to be removed.
pub fn write_site_layers(
    path: &Path,
    assessment: &Assessment<'_>,
    surroundings: &Surroundings,
) -> Result<(), GisError> {
    let points = points::rows(assessment);
    let point_fields = points::fields();
    let fields: Vec<(&str, FieldKind)> = point_fields
        .iter()
        .map(|(name, kind)| (name.as_str(), *kind))
        .collect();
    let plan = |name, fields, shape| LayerPlan {
        format: LayerFormat::GeoPackage,
        name,
        fields,
        shape,
        crs: Some(CRS),
        fetched: None,
    };
    let layers: Vec<(LayerPlan<'_>, Fill<'_, GisError>)> = vec![
        (
            plan(POINTS, &fields, LayerShape::Points),
            Box::new(|draft| points.iter().try_for_each(|row| row.write(draft, &fields))),
        ),
        (
            plan("zones", &zones::FIELDS, LayerShape::Areas),
            Box::new(|draft| zones::write(draft, surroundings)),
        ),
        (
            plan("lines", &lines::FIELDS, LayerShape::Lines),
            Box::new(|draft| lines::write(draft, surroundings)),
        ),
    ];
    write_layers(path, layers, |file| {
        add_style(file, POINTS, &verdict_style())
    })
    .map(drop)
}

/// A value of an attribute.
enum Value {
    Text(String),
    Number(f64),
    Whole(i64),
}

impl Value {
    fn set(&self, draft: &mut LayerDraft<'_>, field: usize) -> Result<(), GisError> {
        match self {
            Self::Text(text) => draft.text(field, text),
            Self::Number(number) => draft.number(field, *number),
            Self::Whole(number) => draft.whole(field, *number),
        }
    }
}

/// Sets what is known of a feature, in the order of the fields.
fn set_all(draft: &mut LayerDraft<'_>, values: &[Option<Value>]) -> Result<(), GisError> {
    let known = values.iter().enumerate();
    known
        .filter_map(|(field, value)| Some((field, value.as_ref()?)))
        .try_for_each(|(field, value)| value.set(draft, field))
}

fn text(text: &str) -> Option<Value> {
    (!text.is_empty()).then(|| Value::Text(text.to_owned()))
}
