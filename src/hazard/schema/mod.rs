//! How a publisher's layer is to be read, as data.

mod choice;
mod constants;
mod range;
mod read;
mod role;
mod row;

use std::collections::{BTreeMap, BTreeSet};

pub use choice::SchemaChoice;
pub(super) use constants::Constants;
pub(super) use range::{Range, VelocityUnit, length_bounds};
pub(super) use read::{numbers, owned};
pub use role::Role;
pub use row::{LevelRule, ZoneRow};

use crate::quantity::AnnualChance;
use crate::statement::Choice;
use row::same;

/// How a layer of flood zones is to be read.
///
/// The file's keys are explained at the top of `data/schemas/nfhl.toml`.
///
/// ```
/// use sillmark::hazard::{Schema, ZoneClass};
/// let schema = Schema::from_toml("our-maps.toml", r#"
/// name = "our-maps"
/// source = "the county's data sheet of 2024"
/// annual_chance = "1 in 100"
/// [attributes]
/// zone = ["GEFAHR"]
/// level = ["HW100_M"]
/// [constants]
/// level_datum = "DHHN2016"
/// length_unit = "m"
/// [[zone]]
/// codes = ["hoch"]
/// class = "detailed"
/// [[zone]]
/// codes = ["gering"]
/// class = "rare"
/// annual_chance = "0.1%"
/// "#)?;
/// assert_eq!(schema.row("Hoch", "").map(|row| row.class), Some(ZoneClass::Detailed));
/// assert!(schema.row("mittel", "").is_none()); // unknown, never dry
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
#[derive(Clone, Debug)]
pub struct Schema {
    /// Short name.
    pub name: String,
    /// What it describes.
    pub title: String,
    /// Where that is written.
    pub source: String,
    /// Annual chance of the flood that the map is about.
    pub annual_chance: AnnualChance,
    attributes: BTreeMap<Role, Vec<String>>,
    /// Roles that the publisher does not always fill: a layer may lack them.
    optional: BTreeSet<Role>,
    pub(super) constants: Constants,
    no_value: NoValue,
    range: BTreeMap<Role, Range>,
    velocity_units: Vec<(VelocityUnit, Vec<String>)>,
    inside_flag: Flag,
    zones: Vec<ZoneRow>,
}

#[derive(Clone, Debug, Default)]
struct NoValue {
    texts: Vec<String>,
    numbers: Vec<f64>,
    zero: Vec<Role>,
}

#[derive(Clone, Debug, Default)]
struct Flag {
    yes: Vec<String>,
    no: Vec<String>,
}

impl Schema {
    /// The attribute names of a role; empty where the publisher has none.
    #[must_use]
    pub fn names(&self, role: Role) -> &[String] {
        self.attributes.get(&role).map_or(&[], Vec::as_slice)
    }

    /// The roles that a layer has to have an attribute for: a misspelt name must not look
    /// like a layer without levels.
    pub fn needed(&self) -> impl Iterator<Item = Role> {
        let named = self.attributes.keys().copied();
        named.filter(|role| !self.optional.contains(role))
    }

    /// The first row that fits a code and subtype.
    #[must_use]
    pub fn row(&self, code: &str, subtype: &str) -> Option<&ZoneRow> {
        self.zones.iter().find(|row| row.fits(code, subtype))
    }

    /// Whether a text stands for none.
    #[must_use]
    pub fn is_no_text(&self, text: &str) -> bool {
        text.trim().is_empty() || self.no_value.texts.iter().any(|none| same(none, text))
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
        let says = |words: &[String]| words.iter().any(|word| same(word, text));
        if says(&self.inside_flag.yes) {
            Some(true)
        } else if says(&self.inside_flag.no) {
            Some(false)
        } else {
            None
        }
    }

    /// The unit that a velocity unit is written for.
    pub(super) fn velocity_unit(&self, text: &str) -> Option<VelocityUnit> {
        let mut by_word = VelocityUnit::CHOICES.iter();
        let by_word = by_word.find(|(word, _)| same(word, text));
        let mut spelt = self.velocity_units.iter();
        let spelt = spelt.find(|(_, spellings)| spellings.iter().any(|one| same(one, text)));
        by_word
            .map(|(_, unit)| *unit)
            .or_else(|| spelt.map(|(unit, _)| *unit))
    }
}
