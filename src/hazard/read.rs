//! Reading a layer of zones.

use std::path::Path;

use gdal::Dataset;
use geo::{BoundingRect, Rect};

use super::schema::{Role, Schema};
use super::{HazardError, ZoneMap, interpret};
use crate::crs::{CrsDefinition, CrsError, HorizontalCrs, LocalFrame, Projector};
use crate::gis::{self, AttributeValue, FeatureReader, GisError, Record};
use crate::quantity::{Length, LengthUnit, VerticalDatum};
use crate::site::Location;

/// What a user states about a layer that does not say it itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ZoneStatement {
    /// Unit of levels and depths that have none (`--zones-unit`).
    pub unit: Option<LengthUnit>,
    /// Datum of levels that have none (`--zones-datum`).
    pub datum: Option<VerticalDatum>,
    /// Coordinate reference system (`--zones-crs`).
    pub crs: Option<String>,
}

/// A part of a layer: what lies within a margin of a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Around {
    /// The middle.
    pub location: Location,
    /// How far around it, as the side of a box.
    pub margin: Length,
}

/// Reads the zones of a National Flood Hazard Layer, all or those `around` a place.
///
/// The layer is the named one, or the only one, or the only one with the attributes that the
/// schema needs.
///
/// # Errors
/// [`HazardError`] with the path and, where something is missing, what states it. A layer
/// that could not be read to its last feature is an error.
pub fn read_zones(
    path: &Path,
    layer: Option<&str>,
    statement: &ZoneStatement,
    around: Option<Around>,
) -> Result<ZoneMap, HazardError> {
    read_zones_by(&Schema::nfhl()?, path, layer, statement, around)
}

/// As [`read_zones`], by any schema.
///
/// Where a schema says a unit or datum for every zone (`[constants]` of its file), the
/// statement may say the same or nothing; what a feature itself says goes before both.
///
/// # Errors
/// As [`read_zones`].
pub fn read_zones_by(
    schema: &Schema,
    path: &Path,
    layer: Option<&str>,
    statement: &ZoneStatement,
    around: Option<Around>,
) -> Result<ZoneMap, HazardError> {
    check_statement(schema, statement)?;
    let dataset = gis::open_vector(path)?;
    let reader = choose_layer(schema, &dataset, path, layer)?;
    let name = reader.name().to_owned();
    let crs = crs_of(&reader, &dataset, path, statement)?;
    if let Some(extent) = reader.extent() {
        check_degrees(&crs, extent, path, &name)?;
    }
    let refused = |source: CrsError| HazardError::Crs {
        path: path.to_owned(),
        layer: name.clone(),
        source,
    };
    let projector = Projector::new(crs).map_err(refused)?;
    let reader = match around {
        None => reader,
        Some(Around { location, margin }) => {
            let frame = LocalFrame::new(&projector, location).map_err(refused)?;
            reader.within(frame.box_around(margin))
        }
    };
    let columns = Columns::new(schema, &reader);
    let mut features = Vec::new();
    reader.read(|record| {
        let feature = columns.identity(schema, record);
        let area = record.polygons().map_err(|problem| GisError::Geometry {
            path: path.to_owned(),
            layer: name.clone(),
            feature: feature.clone(),
            problem,
        })?;
        if let Some(extent) = area.as_ref().and_then(BoundingRect::bounding_rect) {
            check_degrees(projector.target(), extent, path, &name)?;
        }
        let zone = interpret(schema, statement, &name, &feature, |role| {
            columns.value(role, record)
        });
        features.push((zone, area));
        Ok::<(), HazardError>(())
    })?;
    Ok(ZoneMap::new(projector, features))
}

/// What holds for every zone by the schema, and by an option, has to be the same.
fn check_statement(schema: &Schema, statement: &ZoneStatement) -> Result<(), HazardError> {
    let contradiction = |option, by_schema: String, stated: String| {
        if by_schema == stated {
            return Ok(());
        }
        Err(HazardError::SchemaContradiction {
            schema: schema.name.clone(),
            by_schema,
            option,
            stated,
        })
    };
    if let (Some(unit), Some(stated)) = (schema.constants.length_unit, statement.unit) {
        contradiction("--zones-unit", unit.to_string(), stated.to_string())?;
    }
    if let (Some(datum), Some(stated)) = (schema.constants.level_datum, statement.datum) {
        contradiction("--zones-datum", datum.to_string(), stated.to_string())?;
    }
    Ok(())
}

fn choose_layer<'dataset>(
    schema: &Schema,
    dataset: &'dataset Dataset,
    path: &Path,
    layer: Option<&str>,
) -> Result<FeatureReader<'dataset>, HazardError> {
    let names = FeatureReader::layers(dataset);
    let open = |name: &str| FeatureReader::new(dataset, path, name);
    let lacking = |reader: &FeatureReader<'_>| {
        let has = |role: &Role| {
            let mut names = schema.names(*role).iter();
            names.any(|name| reader.attribute(name).is_some())
        };
        schema.needed().find(|role| !has(role))
    };
    let reader = match (layer, names.as_slice()) {
        (Some(layer), _) => open(layer)?,
        (None, []) => {
            return Err(HazardError::NoLayers {
                path: path.to_owned(),
            });
        }
        (None, [only]) => open(only)?,
        (None, several) => {
            let mut fitting = Vec::new();
            for name in several {
                let reader = open(name)?;
                if lacking(&reader).is_none() {
                    fitting.push(reader);
                }
            }
            match (fitting.pop(), fitting.is_empty()) {
                (Some(reader), true) => reader,
                _ => {
                    return Err(HazardError::WhichLayer {
                        path: path.to_owned(),
                        layers: names,
                    });
                }
            }
        }
    };
    match lacking(&reader) {
        None => Ok(reader),
        Some(role) => Err(HazardError::NoAttribute {
            path: path.to_owned(),
            layer: reader.name().to_owned(),
            needed: schema.names(role).join(" or "),
            schema: schema.name.clone(),
            attributes: reader.attributes().to_vec(),
        }),
    }
}

fn crs_of(
    reader: &FeatureReader<'_>,
    dataset: &Dataset,
    path: &Path,
    statement: &ZoneStatement,
) -> Result<HorizontalCrs, HazardError> {
    let layer = reader.name().to_owned();
    let refused = |source: CrsError| HazardError::Crs {
        path: path.to_owned(),
        layer: layer.clone(),
        source,
    };
    let stated = statement.crs.as_deref().map(CrsDefinition::from_text);
    let stated = stated.transpose().map_err(refused)?;
    let file = reader.spatial_ref();
    let file = file.map(|file| CrsDefinition::from_spatial_ref(&file));
    match (file, stated) {
        (None, None) => Err(HazardError::NoCrs {
            path: path.to_owned(),
            layer,
        }),
        (Some(file), None) => Ok(file.map_err(refused)?.horizontal),
        (None | Some(Err(_)), Some(stated)) => Ok(stated.horizontal),
        (Some(Ok(file)), Some(stated)) => {
            let (file, stated) = (file.horizontal, stated.horizontal);
            // For a GeoJSON that names no system GDAL says WGS 84, and does not say that it
            // has supplied it.
            let supplied =
                dataset.driver().short_name() == "GeoJSON" && file.definition() == "EPSG:4326";
            if supplied || file.definition() == stated.definition() || file.name() == stated.name()
            {
                Ok(stated)
            } else {
                Err(HazardError::CrsContradiction {
                    path: path.to_owned(),
                    layer,
                    file: file.name().to_owned(),
                    stated: stated.name().to_owned(),
                })
            }
        }
    }
}

/// Degrees beyond a full turn or the poles are not degrees.
fn check_degrees(
    crs: &HorizontalCrs,
    extent: Rect<f64>,
    path: &Path,
    layer: &str,
) -> Result<(), HazardError> {
    if !crs.is_geographic() {
        return Ok(());
    }
    let (low, high) = (extent.min(), extent.max());
    for (axis, bound, values) in [
        ("longitude", 360.0, [low.x, high.x]),
        ("latitude", 90.0, [low.y, high.y]),
    ] {
        // Rounding may put the pole itself a hair beyond the pole.
        if let Some(value) = values.into_iter().find(|value| value.abs() > bound + 1e-9) {
            return Err(HazardError::NotDegrees {
                path: path.to_owned(),
                layer: layer.to_owned(),
                axis,
                value,
                bound,
                crs: crs.name().to_owned(),
            });
        }
    }
    Ok(())
}

/// Where in the layer each role stands.
struct Columns(std::collections::BTreeMap<Role, usize>);

impl Columns {
    fn new(schema: &Schema, reader: &FeatureReader<'_>) -> Self {
        let roles = Role::ALL.into_iter().filter_map(|role| {
            let mut names = schema.names(role).iter();
            Some((role, names.find_map(|name| reader.attribute(name))?))
        });
        Self(roles.collect())
    }

    fn value(&self, role: Role, record: &Record<'_>) -> AttributeValue {
        self.0
            .get(&role)
            .map_or(AttributeValue::Missing, |column| record.value(*column))
    }

    fn identity(&self, schema: &Schema, record: &Record<'_>) -> String {
        self.value(Role::Identity, record)
            .text()
            .filter(|text| !schema.is_no_text(text))
            .or_else(|| record.number().map(|number| number.to_string()))
            .unwrap_or_default()
    }
}
