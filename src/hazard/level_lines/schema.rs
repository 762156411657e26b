//! How a publisher's layer of lines is to be read, as data.

use std::collections::BTreeMap;

use super::LineKind;
use crate::hazard::schema::{numbers, owned};
use crate::quantity::{AnnualChance, Length, LengthUnit, parse_annual_chance};
use crate::statement::{Choice, Document, Stated, StatementError, Table};

/// What an attribute is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
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
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
#[derive(Clone, Debug)]
pub struct LineSchema {
    /// Short name.
    pub name: String,
    /// What it describes.
    pub title: String,
    /// Where that is written.
    pub source: String,
    /// Annual chance of the event that the levels belong to.
    pub annual_chance: AnnualChance,
    attributes: BTreeMap<LineRole, Vec<String>>,
    no_value: NoValue,
    range: Range,
}

#[derive(Clone, Debug)]
struct NoValue {
    texts: Vec<String>,
    numbers: Vec<f64>,
    no_single_level: Vec<f64>,
}

/// The levels that are accepted.
#[derive(Clone, Debug)]
pub(super) struct Range {
    pub(super) lowest: f64,
    pub(super) highest: f64,
    pub(super) unit: LengthUnit,
}

impl Choice for LineRole {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("level", Self::Level),
        ("level_datum", Self::LevelDatum),
        ("length_unit", Self::LengthUnit),
        ("watercourse", Self::Watercourse),
        ("label", Self::Label),
        ("station", Self::Station),
        ("identity", Self::Identity),
    ];
}

impl LineSchema {
    /// The schema of the National Flood Hazard Layer.
    ///
    /// # Errors
    /// [`StatementError`] where the embedded file is damaged, which a test rules out.
    pub fn nfhl(kind: LineKind) -> Result<Self, StatementError> {
        match kind {
            LineKind::CrossSections => Self::from_toml(
                "data/schemas/nfhl-sections.toml",
                include_str!("../../../data/schemas/nfhl-sections.toml"),
            ),
            LineKind::LevelLines => Self::from_toml(
                "data/schemas/nfhl-lines.toml",
                include_str!("../../../data/schemas/nfhl-lines.toml"),
            ),
        }
    }

    /// Reads a schema; `file` is the name that messages use.
    ///
    /// # Errors
    /// [`StatementError`] naming file, line, field, value and what would be accepted.
    pub fn from_toml(file: &str, text: &str) -> Result<Self, StatementError> {
        let document = Document::parse(file, text)?;
        let root = document.root();
        root.allow(&[
            "name",
            "title",
            "source",
            "annual_chance",
            "attributes",
            "no_value",
            "range",
        ])?;
        let table = |key, accepted: &str| {
            let table = root.table(key)?;
            table.ok_or_else(|| root.missing(key, accepted))
        };
        let chance = "of the event that the levels belong to, such as \"1%\" or \"1 in 100\"";
        let source = "where the meaning of the values is written";
        Ok(Self {
            name: root.required("name", "a short name")?.name()?,
            title: root.required("title", "what it describes")?.name()?,
            source: root.required("source", source)?.name()?,
            annual_chance: root
                .required("annual_chance", chance)?
                .read(parse_annual_chance)?,
            attributes: attributes(&table("attributes", "[attributes] with level")?)?,
            no_value: NoValue::read(&table("no_value", "[no_value] with texts and numbers")?)?,
            range: Range::read(&table("range", "[range] with lowest, highest and unit")?)?,
        })
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

fn attributes(table: &Table<'_, '_>) -> Result<BTreeMap<LineRole, Vec<String>>, StatementError> {
    table.allow(&LineRole::ALL.map(LineRole::word))?;
    let mut attributes = BTreeMap::new();
    for role in LineRole::ALL {
        let names = table.texts(role.word())?;
        let names = names
            .iter()
            .map(Stated::name)
            .collect::<Result<Vec<_>, _>>()?;
        if !names.is_empty() {
            attributes.insert(role, names);
        } else if role == LineRole::Level {
            return Err(table.missing("level", "the names of the attribute with the level"));
        }
    }
    Ok(attributes)
}

impl NoValue {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["texts", "numbers", "no_single_level"])?;
        Ok(Self {
            texts: owned(&table.texts("texts")?),
            numbers: numbers(&table.values("numbers")?)?,
            no_single_level: numbers(&table.values("no_single_level")?)?,
        })
    }
}

impl Range {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        let (lowest, highest, unit) = crate::hazard::schema::length_bounds(table)?;
        Ok(Self {
            lowest,
            highest,
            unit,
        })
    }

    pub(super) fn holds(&self, length: Length) -> bool {
        (self.unit.length(self.lowest)..=self.unit.length(self.highest)).contains(&length)
    }
}

fn is_among(numbers: &[f64], number: f64) -> bool {
    numbers.iter().any(|none| (number - none).abs() < 1e-6)
}
