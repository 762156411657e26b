//! How a publisher's layer of lines is to be read, as data.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::LineKind;
use crate::hazard::SchemaError;
use crate::quantity::{AnnualChance, Length, LengthUnit};

/// What an attribute is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LineRole {
    /// Water-surface elevation. Required.
    Level,
    /// Its vertical datum.
    LevelDatum,
    /// Its unit.
    LengthUnit,
    /// The name of the river or stream.
    Watercourse,
    /// What a reader calls the line, such as the letter of a section.
    Label,
    /// Distance along the watercourse.
    Station,
    /// The feature's own identifier.
    Identity,
}

impl LineRole {
    /// Every role.
    pub const ALL: [Self; 7] = [
        Self::Level,
        Self::LevelDatum,
        Self::LengthUnit,
        Self::Watercourse,
        Self::Label,
        Self::Station,
        Self::Identity,
    ];
}

/// How a layer of cross-sections or flood-level lines is to be read.
///
/// The keys of the file are explained at the top of `data/schemas/nfhl-sections.toml`.
///
/// ```
/// use sillmark::hazard::{LineKind, LineRole, LineSchema};
/// let schema = LineSchema::nfhl(LineKind::CrossSections)?;
/// assert_eq!(schema.names(LineRole::Level), ["WSEL_REG"]);
/// assert!(schema.is_no_single_level(-8888.0) && schema.is_no_number(-9999.0));
/// # Ok::<(), sillmark::hazard::SchemaError>(())
/// ```
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LineSchema {
    /// Short name.
    pub name: String,
    /// What it describes.
    pub title: String,
    /// Where that is written.
    pub source: String,
    /// Annual chance of the event that the levels belong to, as a fraction.
    pub annual_chance: f64,
    attributes: BTreeMap<LineRole, Vec<String>>,
    no_value: NoValue,
    range: Range,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct NoValue {
    texts: Vec<String>,
    numbers: Vec<f64>,
    #[serde(default)]
    no_single_level: Vec<f64>,
}

/// The levels that are accepted.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Range {
    pub(super) lowest: f64,
    pub(super) highest: f64,
    #[serde(deserialize_with = "length_unit")]
    pub(super) unit: LengthUnit,
}

fn length_unit<'de, D: serde::Deserializer<'de>>(reader: D) -> Result<LengthUnit, D::Error> {
    String::deserialize(reader)?
        .parse()
        .map_err(serde::de::Error::custom)
}

impl LineSchema {
    /// The schema of the National Flood Hazard Layer.
    ///
    /// # Errors
    /// [`SchemaError`] where the embedded file is damaged, which a test rules out.
    pub fn nfhl(kind: LineKind) -> Result<Self, SchemaError> {
        match kind {
            LineKind::CrossSections => Self::from_toml(
                "nfhl-sections",
                include_str!("../../../data/schemas/nfhl-sections.toml"),
            ),
            LineKind::LevelLines => Self::from_toml(
                "nfhl-lines",
                include_str!("../../../data/schemas/nfhl-lines.toml"),
            ),
        }
    }

    /// Reads a schema; `name` is for messages.
    ///
    /// # Errors
    /// [`SchemaError::Shape`] with line and field.
    pub fn from_toml(name: &str, text: &str) -> Result<Self, SchemaError> {
        let shape = |message: String| SchemaError::Shape {
            name: name.to_owned(),
            message,
        };
        let schema: Self = toml::from_str(text).map_err(|error| shape(error.to_string()))?;
        if schema.names(LineRole::Level).is_empty() {
            return Err(shape("[attributes] has no `level`".to_owned()));
        }
        if AnnualChance::new(schema.annual_chance).is_none() {
            let chance = schema.annual_chance;
            return Err(shape(format!(
                "annual_chance {chance} is not a chance; accepted: above 0 and below 1"
            )));
        }
        Ok(schema)
    }

    /// The same schema with another attribute for a role, as a user states it.
    #[must_use]
    pub fn with_attribute(mut self, role: LineRole, name: &str) -> Self {
        self.attributes.insert(role, vec![name.to_owned()]);
        self
    }

    /// The attribute names of a role; empty where the publisher has none.
    #[must_use]
    pub fn names(&self, role: LineRole) -> &[String] {
        self.attributes.get(&role).map_or(&[], Vec::as_slice)
    }

    /// Whether a text stands for none.
    #[must_use]
    pub fn is_no_text(&self, text: &str) -> bool {
        let text = text.trim();
        let texts = &self.no_value.texts;
        text.is_empty() || texts.iter().any(|none| none.eq_ignore_ascii_case(text))
    }

    /// Whether a number stands for none.
    #[must_use]
    pub fn is_no_number(&self, number: f64) -> bool {
        !number.is_finite() || is_among(&self.no_value.numbers, number)
    }

    /// Whether a number says that the line has no single level.
    #[must_use]
    pub fn is_no_single_level(&self, number: f64) -> bool {
        is_among(&self.no_value.no_single_level, number)
    }

    pub(super) fn range(&self) -> &Range {
        &self.range
    }
}

impl Range {
    pub(super) fn holds(&self, length: Length) -> bool {
        (self.unit.length(self.lowest)..=self.unit.length(self.highest)).contains(&length)
    }
}

fn is_among(numbers: &[f64], number: f64) -> bool {
    numbers.iter().any(|none| (number - none).abs() < 1e-6)
}
