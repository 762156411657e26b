//! Reading a layer of zones.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use super::layer::{LayerSource, read_layer};
use super::schema::{Role, Schema};
use super::shared::SharedZones;
use super::{HazardError, LayerContent, Part, ZoneArea, ZoneMap, interpret};
use crate::gis::{AttributeValue, FeatureReader, Fetched, GisError, Record};
use crate::quantity::{LengthUnit, VerticalDatum};

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

/// Reads the zones of a National Flood Hazard Layer, all or those of a `part`.
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
    part: Option<Part>,
) -> Result<ZoneMap, HazardError> {
    read_zones_by(&Schema::nfhl()?, path, layer, statement, part)
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
    part: Option<Part>,
) -> Result<ZoneMap, HazardError> {
    check_statement(schema, statement)?;
    let source = LayerSource {
        path,
        layer,
        crs: statement.crs.as_deref(),
        part,
        content: LayerContent::Zones,
        schema: &schema.name,
        needed: schema.needed().map(|role| schema.names(role)).collect(),
    };
    let (mut zones, mut without_area) = (Vec::new(), 0);
    let (projector, origin) = read_layer(
        &source,
        |reader| Ok(Columns::new(schema, reader)),
        |columns, name, record| {
            let feature = columns.identity(schema, record);
            let area = record.polygons().map_err(|problem| GisError::Geometry {
                path: path.to_owned(),
                layer: name.to_owned(),
                feature: feature.clone(),
                problem,
            })?;
            let Some(area) = area.as_ref().and_then(ZoneArea::new) else {
                without_area += 1;
                return Ok(None);
            };
            let mut zone = interpret(schema, statement, name, &feature, |role| {
                columns.value(role, record)
            });
            zone.fetched.clone_from(&columns.fetched);
            let extent = area.bounds();
            zones.push((zone, area));
            Ok(Some(extent))
        },
    )?;
    let shared = SharedZones::new(projector.target().clone(), origin, zones, without_area);
    Ok(ZoneMap::new(projector, Arc::new(shared)))
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

/// Where in the layer each role stands, and where the layer comes from.
struct Columns {
    roles: BTreeMap<Role, usize>,
    fetched: Option<Arc<Fetched>>,
}

impl Columns {
    fn new(schema: &Schema, reader: &FeatureReader<'_>) -> Self {
        let roles = Role::ALL.into_iter().filter_map(|role| {
            let mut names = schema.names(role).iter();
            Some((role, names.find_map(|name| reader.attribute(name))?))
        });
        Self {
            roles: roles.collect(),
            fetched: reader.fetched().map(Arc::new),
        }
    }

    fn value(&self, role: Role, record: &Record<'_>) -> AttributeValue {
        self.roles
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
