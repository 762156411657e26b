//! One row of the table of zones.

use super::super::{CodePattern, ZoneClass};
use super::Role;
use crate::quantity::{AnnualChance, Elevation, Length, LengthUnit, UnitSystem, parse_elevation};
use crate::quantity::{parse_annual_chance, parse_length};
use crate::statement::{Choice, Stated, StatementError, Table};

/// What the zones of some codes mean.
#[derive(Clone, Debug)]
pub struct ZoneRow {
    /// `None` where any code fits, and none at all.
    codes: Option<Vec<CodePattern>>,
    subtypes: Option<Vec<String>>,
    subtype_contains: Option<String>,
    /// What the zone means.
    pub class: ZoneClass,
    /// Annual chance of the flood that the zone is the extent of, where it is not the
    /// schema's own.
    pub annual_chance: Option<AnnualChance>,
    /// Whether it has a level.
    pub level: LevelRule,
    /// The level that all zones of the row have, with the unit that it is rounded in.
    pub(in crate::hazard) constant_level: Option<(Elevation, LengthUnit)>,
    /// The depth that all zones of the row have.
    pub(in crate::hazard) constant_depth: Option<Length>,
    /// What the layer's own flag has to say, where it matters.
    pub inside: Option<bool>,
    /// The code of today, where the row's are of an older edition.
    pub legacy: Option<String>,
}

/// Whether zones of a row have a level.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LevelRule {
    /// In the feature or in another layer of the same map.
    Expected,
    /// Perhaps.
    #[default]
    Possible,
    /// By its definition not.
    None,
}

impl Choice for LevelRule {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("expected", Self::Expected),
        ("possible", Self::Possible),
        ("none", Self::None),
    ];
}

/// Whether two texts are the same but for outer spaces and case.
pub(super) fn same(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

impl ZoneRow {
    pub(super) fn read(
        table: &Table<'_, '_>,
        has: impl Fn(Role) -> bool,
    ) -> Result<Self, StatementError> {
        table.allow(&[
            "codes",
            "any",
            "subtypes",
            "subtype_contains",
            "class",
            "annual_chance",
            "level",
            "constant_level",
            "constant_depth",
            "inside",
            "legacy",
        ])?;
        let needs = |stated: &Stated<'_>, role: Role| {
            if has(role) {
                return Ok(());
            }
            let word = role.word();
            Err(stated.refuse(
                format!("[attributes] names no {word} to compare it with"),
                format!("{word} = [\"NAME\"] in [attributes], or a row without this field"),
            ))
        };
        let subtypes = table.texts("subtypes")?;
        let subtype_contains = table.optional("subtype_contains")?;
        for stated in subtypes.iter().chain(&subtype_contains) {
            needs(stated, Role::Subtype)?;
        }
        let inside = table.optional("inside")?;
        if let Some(stated) = &inside {
            needs(stated, Role::InsideFlag)?;
        }
        let level = table.optional("level")?;
        let level = level.map(|stated| stated.choose()).transpose()?;
        let constant_level = table.optional("constant_level")?;
        if let Some(stated) = constant_level
            .as_ref()
            .filter(|_| level == Some(LevelRule::None))
        {
            return Err(stated.refuse("the row says level = \"none\"", "one of the two"));
        }
        let chance = table.optional("annual_chance")?;
        let depth = table.optional("constant_depth")?;
        let legacy = table.optional("legacy")?;
        Ok(Self {
            codes: codes(table, |stated| needs(stated, Role::Zone))?,
            subtypes: table
                .whole("subtypes")
                .map(|_| subtypes.iter().map(|one| one.text().to_owned()).collect()),
            subtype_contains: subtype_contains.map(|stated| stated.name()).transpose()?,
            class: table.required("class", "what the zone means")?.choose()?,
            annual_chance: chance
                .map(|stated| stated.read(parse_annual_chance))
                .transpose()?,
            level: level.unwrap_or_default(),
            constant_level: constant_level.as_ref().map(constant).transpose()?,
            constant_depth: depth.map(|stated| stated.read(parse_length)).transpose()?,
            inside: inside.map(|stated| stated.choose()).transpose()?,
            legacy: legacy.map(|stated| stated.name()).transpose()?,
        })
    }

    pub(super) fn fits(&self, code: &str, subtype: &str) -> bool {
        self.fits_code(code)
            && self
                .subtypes
                .as_ref()
                .is_none_or(|subtypes| subtypes.iter().any(|one| same(one, subtype)))
            && self
                .subtype_contains
                .as_ref()
                .is_none_or(|words| subtype.to_lowercase().contains(&words.to_lowercase()))
    }

    fn fits_code(&self, code: &str) -> bool {
        let codes = self.codes.as_ref();
        codes.is_none_or(|codes| codes.iter().any(|pattern| pattern.fits(code)))
    }

    /// The first code of `other` that this row, standing before it, takes whatever the
    /// subtype; empty where it takes all codes.
    pub(super) fn hides<'other>(&self, other: &'other Self) -> Option<&'other str> {
        if self.subtypes.is_some() || self.subtype_contains.is_some() {
            return None;
        }
        match (&self.codes, &other.codes) {
            (None, _) => Some(""),
            (Some(_), None) => None,
            (Some(_), Some(codes)) => codes.iter().find_map(|pattern| match pattern {
                CodePattern::One(code) => self.fits_code(code).then_some(code.as_str()),
                CodePattern::Series { .. } => None,
            }),
        }
    }
}

/// `codes` or `any = true`: a forgotten `codes` must not make every zone fit.
fn codes(
    table: &Table<'_, '_>,
    needs_zone: impl Fn(&Stated<'_>) -> Result<(), StatementError>,
) -> Result<Option<Vec<CodePattern>>, StatementError> {
    let accepted = "codes = [\"A\", \"B\"], or any = true for every zone whatever its code";
    let codes = table.values("codes")?;
    let any = table.optional("any")?;
    match (codes.is_empty(), &any) {
        (false, None) => codes
            .iter()
            .map(|stated| {
                needs_zone(stated)?;
                CodePattern::try_from(stated.text().to_owned())
                    .map_err(|problem| stated.refuse(problem, CodePattern::ACCEPTED))
            })
            .collect::<Result<_, _>>()
            .map(Some),
        (false, Some(any)) => Err(any.refuse("the row has codes too", accepted)),
        (true, Some(any)) if any.choose()? => Ok(None),
        (true, Some(any)) => Err(any.refuse("the row fits no zone", accepted)),
        (true, None) => Err(table.missing("codes", accepted)),
    }
}

/// A level with the unit that it is rounded in.
pub(super) fn constant(stated: &Stated<'_>) -> Result<(Elevation, LengthUnit), StatementError> {
    let unit = match UnitSystem::of_text(stated.text()) {
        UnitSystem::Us => LengthUnit::Foot,
        UnitSystem::Si => LengthUnit::Metre,
    };
    Ok((stated.read(parse_elevation)?, unit))
}
