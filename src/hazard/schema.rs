//! How a publisher's layer is to be read, as data.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::{CodePattern, ZoneClass};
use crate::quantity::LengthUnit;

/// What an attribute is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// The zone's code. Required.
    Zone,
    /// What tells zones of one code apart.
    Subtype,
    /// The feature's own identifier.
    Identity,
    /// Water-surface elevation.
    Level,
    /// Its vertical datum.
    LevelDatum,
    /// Depth above the ground.
    Depth,
    /// Unit of level and depth.
    LengthUnit,
    /// Speed of the water.
    Velocity,
    /// Its unit.
    VelocityUnit,
    /// Whether the feature is inside the mapped event, by the layer's own word.
    InsideFlag,
}

impl Role {
    /// Every role.
    pub const ALL: [Self; 10] = [
        Self::Zone,
        Self::Subtype,
        Self::Identity,
        Self::Level,
        Self::LevelDatum,
        Self::Depth,
        Self::LengthUnit,
        Self::Velocity,
        Self::VelocityUnit,
        Self::InsideFlag,
    ];
}

/// How a layer of flood zones is to be read.
///
/// ```
/// use sillmark::hazard::{Schema, ZoneClass};
/// let row = Schema::nfhl()?.row("AE", "FLOODWAY").map(|row| row.class);
/// assert_eq!(row, Some(ZoneClass::Floodway));
/// # Ok::<(), sillmark::hazard::SchemaError>(())
/// ```
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Schema {
    /// Short name.
    pub name: String,
    /// What it describes.
    pub title: String,
    /// Where that is written.
    pub source: String,
    /// Annual chance of the event that levels and depths belong to, as a fraction.
    pub annual_chance: f64,
    attributes: BTreeMap<Role, Vec<String>>,
    no_value: NoValue,
    #[serde(default)]
    range: BTreeMap<Role, Range>,
    #[serde(default)]
    velocity_units: BTreeMap<String, Vec<String>>,
    #[serde(default)]
    inside_flag: Flag,
    zone: Vec<ZoneRow>,
}

/// One row of the table of zones.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ZoneRow {
    codes: Vec<CodePattern>,
    #[serde(default)]
    subtypes: Option<Vec<String>>,
    #[serde(default)]
    subtype_contains: Option<String>,
    /// What the zone means.
    pub class: ZoneClass,
    /// Whether it has a level.
    #[serde(default)]
    pub level: LevelRule,
    /// What the layer's own flag has to say, where it matters.
    #[serde(default)]
    pub inside: Option<bool>,
    /// The code of today, where the row's are of an older edition.
    #[serde(default)]
    pub legacy: Option<String>,
}

/// Whether zones of a row have a level.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LevelRule {
    /// In the feature or in another layer of the same map.
    Expected,
    /// Perhaps.
    #[default]
    Possible,
    /// By its definition not.
    None,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct NoValue {
    texts: Vec<String>,
    numbers: Vec<f64>,
    #[serde(default)]
    zero: Vec<Role>,
}

/// The numbers that are accepted for a role.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Range {
    pub(super) lowest: f64,
    pub(super) highest: f64,
    pub(super) unit: String,
}

#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Flag {
    yes: Vec<String>,
    no: Vec<String>,
}

/// A schema that cannot be read.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SchemaError {
    /// Not TOML, or not of this shape.
    #[error("{name}: {message}")]
    Shape {
        /// The schema, or its file.
        name: String,
        /// Line, field and what was expected.
        message: String,
    },
    /// No attribute for the zone's code.
    #[error("{name}: [attributes] has no `zone`")]
    NoZone {
        /// The schema, or its file.
        name: String,
    },
    /// A unit that is not known here.
    #[error("{name}: unit {unit:?} of {place} is not known; accepted: {accepted}")]
    Unit {
        /// The schema, or its file.
        name: String,
        /// The unit as it is written.
        unit: String,
        /// The table it stands in.
        place: String,
        /// What would be accepted.
        accepted: &'static str,
    },
}

/// The velocity units that a schema may name.
const VELOCITY_UNITS: [&str; 2] = ["ft/s", "m/s"];

impl Schema {
    /// The schema of the National Flood Hazard Layer.
    ///
    /// # Errors
    /// [`SchemaError`] where the embedded file is damaged, which a test rules out.
    pub fn nfhl() -> Result<Self, SchemaError> {
        Self::from_toml("nfhl", include_str!("../../data/schemas/nfhl.toml"))
    }

    /// Reads a schema; `name` is for messages.
    ///
    /// # Errors
    /// [`SchemaError`] with line and field.
    pub fn from_toml(name: &str, text: &str) -> Result<Self, SchemaError> {
        let schema: Self = toml::from_str(text).map_err(|error| SchemaError::Shape {
            name: name.to_owned(),
            message: error.to_string(),
        })?;
        if schema.names(Role::Zone).is_empty() {
            return Err(SchemaError::NoZone {
                name: name.to_owned(),
            });
        }
        schema.check_units(name)?;
        Ok(schema)
    }

    fn check_units(&self, name: &str) -> Result<(), SchemaError> {
        let unknown = |unit: &str, place: String, accepted| SchemaError::Unit {
            name: name.to_owned(),
            unit: unit.to_owned(),
            place,
            accepted,
        };
        for (role, range) in &self.range {
            let place = || format!("[range] {role:?}");
            let unit = range.unit.as_str();
            if *role == Role::Velocity {
                if !VELOCITY_UNITS.contains(&unit) {
                    return Err(unknown(unit, place(), "ft/s, m/s"));
                }
            } else if unit.parse::<LengthUnit>().is_err() {
                return Err(unknown(unit, place(), LengthUnit::ACCEPTED));
            }
        }
        match self
            .velocity_units
            .keys()
            .find(|unit| !VELOCITY_UNITS.contains(&unit.as_str()))
        {
            Some(unit) => Err(unknown(unit, "[velocity_units]".to_owned(), "ft/s, m/s")),
            None => Ok(()),
        }
    }

    /// The attribute names of a role; empty where the publisher has none.
    #[must_use]
    pub fn names(&self, role: Role) -> &[String] {
        self.attributes.get(&role).map_or(&[], Vec::as_slice)
    }

    /// The first row that fits a code and subtype.
    #[must_use]
    pub fn row(&self, code: &str, subtype: &str) -> Option<&ZoneRow> {
        self.zone.iter().find(|row| row.fits(code, subtype))
    }

    /// Whether a text stands for none.
    #[must_use]
    pub fn is_no_text(&self, text: &str) -> bool {
        let text = text.trim();
        let texts = &self.no_value.texts;
        text.is_empty() || texts.iter().any(|none| none.eq_ignore_ascii_case(text))
    }

    /// Whether a number stands for none in a role.
    #[must_use]
    pub fn is_no_number(&self, role: Role, number: f64) -> bool {
        let is = |none: f64| (number - none).abs() < 1e-6;
        !number.is_finite()
            || self.no_value.numbers.iter().copied().any(is)
            || (self.no_value.zero.contains(&role) && is(0.0))
    }

    pub(super) fn range(&self, role: Role) -> Option<&Range> {
        self.range.get(&role)
    }

    /// What the layer's own flag says; `None` where it says nothing that is known.
    pub(super) fn flag(&self, text: &str) -> Option<bool> {
        let says = |words: &[String]| words.iter().any(|word| word.eq_ignore_ascii_case(text));
        if says(&self.inside_flag.yes) {
            Some(true)
        } else if says(&self.inside_flag.no) {
            Some(false)
        } else {
            None
        }
    }

    /// The unit, `ft/s` or `m/s`, that a velocity unit is written for.
    pub(super) fn velocity_unit(&self, text: &str) -> Option<&str> {
        self.velocity_units
            .iter()
            .find(|(_, spellings)| {
                let mut spellings = spellings.iter();
                spellings.any(|spelling| spelling.eq_ignore_ascii_case(text.trim()))
            })
            .map(|(unit, _)| unit.as_str())
    }
}

impl ZoneRow {
    fn fits(&self, code: &str, subtype: &str) -> bool {
        let subtype = subtype.trim().to_ascii_uppercase();
        self.codes.iter().any(|pattern| pattern.fits(code))
            && self.subtypes.as_ref().is_none_or(|subtypes| {
                subtypes
                    .iter()
                    .any(|one| one.eq_ignore_ascii_case(&subtype))
            })
            && self
                .subtype_contains
                .as_ref()
                .is_none_or(|words| subtype.contains(&words.to_ascii_uppercase()))
    }
}
