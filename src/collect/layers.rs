//! Served layers into one file.

use std::path::Path;

use geo::Geometry;

use super::fields::{self, Field};
use super::{CollectError, digest, placed, shapes};
use crate::crs::CrsDefinition;
use crate::gis::{self, Fetched, FieldKind, Fill, LayerDraft, LayerFormat, LayerPlan, LayerShape};
use crate::hazard::LayerContent;
use crate::service::{DegreeBox, ServedFeature, ServedLayer};
use crate::statement::printable;

/// A layer that a service gave, and what it is for.
#[derive(Clone, Debug)]
pub struct ArrivedLayer<'names> {
    /// What it is to be read for.
    pub read_for: LayerContent,
    /// Names of attributes: of each list it has one.
    pub needed: Vec<&'names [String]>,
    /// Where it was asked for.
    pub boxes: Vec<DegreeBox>,
    /// What came.
    pub served: ServedLayer,
}

/// A layer in the file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenLayer {
    /// Its name in the file.
    pub name: String,
    /// What it is to be read for.
    pub read_for: LayerContent,
    /// How many features it has.
    pub features: u64,
    /// Where it came from and when, with its licence and what was noticed on the way.
    pub fetched: Fetched,
    /// SHA-256 of its features, in hexadecimal: the same whenever they were fetched.
    pub content: String,
}

/// Writes layers to a new `GeoPackage`, each with the place and time that it came from.
///
/// Geometry stays in the system that it came in, east before north as in all files of this
/// format, whatever order it came in. A number stays a number where all of its attribute are.
///
/// # Errors
/// [`CollectError`] for a system that is not known, features that lie elsewhere than they were
/// asked for, a zone that is no area or a line of known
/// level that is no line, and a file that cannot be written; what is at `path` is then not the
/// result.
pub fn write_layers(
    layers: Vec<ArrivedLayer<'_>>,
    path: &Path,
) -> Result<Vec<WrittenLayer>, CollectError> {
    let mut drafts: Vec<Draft> = Vec::with_capacity(layers.len());
    for layer in layers {
        let taken = |name: &str| {
            drafts
                .iter()
                .any(|draft| draft.name.eq_ignore_ascii_case(name))
        };
        let name = free_name(&layer.served.name, taken);
        drafts.push(Draft::new(layer, name)?);
    }
    let fields: Vec<Vec<(&str, FieldKind)>> = drafts.iter().map(Draft::columns).collect();
    let plans = drafts.iter().zip(&fields).map(|(draft, fields)| {
        let plan = LayerPlan {
            format: LayerFormat::GeoPackage,
            name: &draft.name,
            fields,
            shape: draft.shape(),
            crs: Some(&draft.crs),
            fetched: Some(&draft.fetched),
        };
        let fill: Fill<'_, CollectError> = Box::new(|layer| draft.fill(layer));
        (plan, fill)
    });
    let written = gis::write_layers(path, plans.collect(), |_| Ok(()))?;
    let told = drafts.iter().zip(written);
    Ok(told.map(|(draft, features)| draft.told(features)).collect())
}

/// A layer before it is written.
struct Draft {
    name: String,
    read_for: LayerContent,
    fields: Vec<Field>,
    crs: String,
    fetched: Fetched,
    served: ServedLayer,
}

impl Draft {
    fn new(layer: ArrivedLayer<'_>, name: String) -> Result<Self, CollectError> {
        let ArrivedLayer {
            read_for,
            needed,
            boxes,
            mut served,
        } = layer;
        let crs = CrsDefinition::from_text(&served.crs).map_err(|source| CollectError::Crs {
            address: served.address.clone(),
            layer: served.name.clone(),
            source,
        })?;
        let crs = crs.horizontal;
        placed::east_first(&mut served, &crs, &boxes)?;
        // The same system, and the name that files know it by.
        let definition = match crs.definition() {
            "OGC:CRS84" => "EPSG:4326",
            other => other,
        };
        Ok(Self {
            name,
            read_for,
            fields: fields::of(&served, &needed),
            crs: definition.to_owned(),
            fetched: Fetched {
                from: served.address.clone(),
                on: gis::in_rfc3339(&served.fetched),
                licence: served.licence.as_deref().map(printable),
                noted: (!served.remarks.is_empty()).then(|| printable(&served.remarks.join("; "))),
            },
            served,
        })
    }

    fn columns(&self) -> Vec<(&str, FieldKind)> {
        let fields = self.fields.iter();
        fields
            .map(|field| (field.name.as_str(), field.kind))
            .collect()
    }

    const fn shape(&self) -> LayerShape {
        match self.read_for {
            LayerContent::Zones => LayerShape::Areas,
            LayerContent::Lines(_) => LayerShape::Lines,
        }
    }

    fn fill(&self, layer: &mut LayerDraft<'_>) -> Result<(), CollectError> {
        for feature in &self.served.features {
            for (position, field) in self.fields.iter().enumerate() {
                if let Some(value) = feature.attributes.get(&field.served) {
                    fields::set(layer, position, field.kind, value)?;
                }
            }
            if let Some(geometry) = &feature.geometry {
                self.set_shape(layer, feature, geometry)?;
            }
            layer.end_feature()?;
        }
        Ok(())
    }

    fn set_shape(
        &self,
        layer: &mut LayerDraft<'_>,
        feature: &ServedFeature,
        geometry: &Geometry<f64>,
    ) -> Result<(), CollectError> {
        let shape = geometry.clone();
        let refused = |accepted| CollectError::Shape {
            address: self.served.address.clone(),
            layer: self.served.name.clone(),
            feature: feature.id.clone(),
            found: shapes::name(geometry),
            accepted,
        };
        match self.shape() {
            LayerShape::Areas => {
                let areas = shapes::areas(shape).ok_or_else(|| refused("polygons"))?;
                layer.areas(&areas)?;
            }
            LayerShape::Lines | LayerShape::Points => {
                let lines = shapes::lines(shape).ok_or_else(|| refused("lines"))?;
                layer.lines(&lines)?;
            }
        }
        Ok(())
    }

    fn told(&self, features: u64) -> WrittenLayer {
        WrittenLayer {
            name: self.name.clone(),
            read_for: self.read_for,
            features,
            fetched: self.fetched.clone(),
            content: digest::of(&self.served),
        }
    }
}

/// A name that no layer before has; one without quotation marks, so that it can be typed.
fn free_name(wanted: &str, taken: impl Fn(&str) -> bool) -> String {
    let plain = printable(wanted).replace(['"', '\''], " ");
    let plain = plain.trim();
    let mut name = if plain.is_empty() { "layer" } else { plain }.to_owned();
    let base = name.clone();
    let mut number = 1;
    while taken(&name) {
        number += 1;
        name = format!("{base} {number}");
    }
    name
}
