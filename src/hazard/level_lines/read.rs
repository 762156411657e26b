//! Reading a layer of cross-sections or flood-level lines.

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

use geo::BoundingRect;

use super::interpret::Interpreter;
use super::{LevelLineMap, LineKind, LineRole, LineSchema};
use crate::gis::{AttributeValue, FeatureReader, Fetched, GisError, Record};
use crate::hazard::layer::{LayerSource, read_layer};
use crate::hazard::{HazardError, LayerContent, Part};
use crate::quantity::{LengthUnit, VerticalDatum};

/// What a user states about a layer of lines that does not say it itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LineStatement {
    /// Unit of levels that have none (`--lines-unit`, `--sections-unit`).
    pub unit: Option<LengthUnit>,
    /// Datum of levels that have none (`--lines-datum`, `--sections-datum`).
    pub datum: Option<VerticalDatum>,
    /// Coordinate reference system.
    pub crs: Option<String>,
    /// The attribute that holds the level, instead of the schema's.
    pub level_attribute: Option<String>,
    /// The attribute that names the watercourse, instead of the schema's.
    pub watercourse_attribute: Option<String>,
    /// The attribute that a reader knows the line by, instead of the schema's.
    pub label_attribute: Option<String>,
}

/// Reads a layer of the National Flood Hazard Layer, all its lines or those of a `part`
/// (a margin of [`LevelLineMap::SEARCH_LIMIT_METRES`] leaves the
/// answer at the place as it is).
///
/// # Errors
/// [`HazardError`] with the path and, where something is missing, what states it; a missing
/// attribute is named together with those that the layer has. A layer that could not be read
/// to its last feature is an error.
pub fn read_level_lines(
    kind: LineKind,
    path: &Path,
    layer: Option<&str>,
    statement: &LineStatement,
    part: Option<Part>,
) -> Result<LevelLineMap, HazardError> {
    let schema = LineSchema::nfhl(kind)?;
    read_level_lines_by(&schema, kind, path, layer, statement, part)
}

/// As [`read_level_lines`], by any schema.
///
/// # Errors
/// As [`read_level_lines`].
pub fn read_level_lines_by(
    schema: &LineSchema,
    kind: LineKind,
    path: &Path,
    layer: Option<&str>,
    statement: &LineStatement,
    part: Option<Part>,
) -> Result<LevelLineMap, HazardError> {
    let stated = [
        (LineRole::Level, &statement.level_attribute),
        (LineRole::Watercourse, &statement.watercourse_attribute),
        (LineRole::Label, &statement.label_attribute),
    ];
    let schema = stated
        .iter()
        .fold(schema.clone(), |schema, (role, name)| match name {
            Some(name) => schema.with_attribute(*role, name),
            None => schema,
        });
    let source = LayerSource {
        path,
        layer,
        crs: statement.crs.as_deref(),
        part,
        content: LayerContent::Lines(kind),
        schema: &schema.name,
        needed: vec![schema.names(LineRole::Level)],
    };
    let mut features = Vec::new();
    let (projector, origin) = read_layer(
        &source,
        |reader| {
            for name in stated.iter().filter_map(|(_, name)| name.as_ref()) {
                if reader.attribute(name).is_none() {
                    return Err(source.without_attribute(reader, name));
                }
            }
            Ok(Columns::new(&schema, reader))
        },
        |columns, name, record| {
            let feature = columns.identity(&schema, record);
            let shape = record.lines().map_err(|problem| GisError::Geometry {
                path: path.to_owned(),
                layer: name.to_owned(),
                feature: feature.clone(),
                problem,
            })?;
            let extent = shape.as_ref().and_then(BoundingRect::bounding_rect);
            let interpreter = Interpreter {
                schema: &schema,
                statement,
                kind,
                read: |role| columns.value(role, record),
                remarks: Vec::new(),
            };
            let mut line = interpreter.line(name, &feature);
            line.fetched.clone_from(&columns.fetched);
            features.push((line, shape));
            Ok(extent)
        },
    )?;
    Ok(LevelLineMap::new(kind, projector, origin, features))
}

/// Where in the layer each role stands, and where the layer comes from.
struct Columns {
    roles: BTreeMap<LineRole, usize>,
    fetched: Option<Arc<Fetched>>,
}

impl Columns {
    fn new(schema: &LineSchema, reader: &FeatureReader<'_>) -> Self {
        let roles = LineRole::ALL.into_iter().filter_map(|role| {
            let mut names = schema.names(role).iter();
            Some((role, names.find_map(|name| reader.attribute(name))?))
        });
        Self {
            roles: roles.collect(),
            fetched: reader.fetched().map(Arc::new),
        }
    }

    fn value(&self, role: LineRole, record: &Record<'_>) -> AttributeValue {
        self.roles
            .get(&role)
            .map_or(AttributeValue::Missing, |column| record.value(*column))
    }

    fn identity(&self, schema: &LineSchema, record: &Record<'_>) -> String {
        self.value(LineRole::Identity, record)
            .text()
            .filter(|text| !schema.is_no_text(text))
            .or_else(|| record.number().map(|number| number.to_string()))
            .unwrap_or_default()
    }
}
