//! Reading sets of load factors, ours and the user's.

use super::{Combination, CombinationSet, Factors};
use crate::statement::{Citation, Confidence, Stated, StatementError, Table, Unreadable};

/// Load factors outside these bounds are slips.
const LEAST: f64 = 0.1;
const GREATEST: f64 = 10.0;

impl CombinationSet {
    /// Reads a set of our own catalogue.
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&[
            "id",
            "name",
            "note",
            "resistance",
            "source",
            "confidence",
            "coastal",
            "other",
            "combination",
        ])?;
        let combinations = table.tables("combination")?;
        Ok(Self {
            id: table.required("id", "a short name")?.name()?,
            name: table.required("name", "a name for people")?.name()?,
            note: optional_name(table, "note")?,
            citation: Citation::read(table)?,
            resistance: table.choice("resistance")?,
            coastal: Factors::read(table, "coastal")?,
            other: Factors::read(table, "other")?,
            combinations: combinations
                .iter()
                .map(Combination::read)
                .collect::<Result<_, _>>()?,
        })
    }

    /// Reads the `[combination]` of a site file: a set that the user writes, with `name`,
    /// `source` and `strength`, and optionally `allowable`, `resistance`, `id` and `note`.
    /// Its factors hold for every zone.
    ///
    /// # Errors
    /// [`StatementError`] naming the field at fault.
    ///
    /// ```
    /// use sillmark::load::{CombinationSet, FactorBasis, LoadZone};
    /// use sillmark::statement::Document;
    /// let text = "name = \"Town\"\nsource = \"Ordinance 7, 2025\"\nallowable = 1.2\nstrength = 1.6\n";
    /// let set = CombinationSet::read_stated(&Document::parse("site.toml", text)?.root())?;
    /// let factor = set.factor(LoadZone::Coastal, FactorBasis::Strength);
    /// assert_eq!(factor.map(|(factor, _)| factor), Some(1.6));
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn read_stated(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&[
            "id",
            "name",
            "note",
            "resistance",
            "source",
            "allowable",
            "strength",
        ])?;
        let citation = Citation {
            source: table
                .required("source", "the code or ordinance, clause and date")?
                .name()?,
            confidence: Confidence::Stated,
        };
        let allowable = table
            .optional("allowable")?
            .map(|stated| factor(&stated))
            .transpose()?;
        let factors = Factors {
            allowable,
            allowable_citation: allowable.map(|_| citation.clone()),
            strength: factor(&table.required("strength", ACCEPTED)?)?,
            strength_citation: citation.clone(),
        };
        Ok(Self {
            id: optional_name(table, "id")?.unwrap_or_else(|| "stated".to_owned()),
            name: table.required("name", "a name for people")?.name()?,
            note: optional_name(table, "note")?,
            citation,
            resistance: table.choice("resistance")?,
            coastal: factors.clone(),
            other: factors,
            combinations: Vec::new(),
        })
    }
}

impl Factors {
    fn read(set: &Table<'_, '_>, zone: &'static str) -> Result<Self, StatementError> {
        let table = set
            .table(zone)?
            .ok_or_else(|| set.missing(zone, "a table with allowable and strength"))?;
        table.allow(&["allowable", "strength"])?;
        let allowable = table
            .table("allowable")?
            .map(|each| cited(&each))
            .transpose()?;
        let strength = table
            .table("strength")?
            .ok_or_else(|| table.missing("strength", "a table with factor and source"))?;
        let (strength, strength_citation) = cited(&strength)?;
        let (allowable, allowable_citation) = allowable.unzip();
        Ok(Self {
            allowable,
            allowable_citation,
            strength,
            strength_citation,
        })
    }
}

impl Combination {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&[
            "id",
            "zone",
            "basis",
            "dead",
            "live",
            "snow",
            "wind",
            "flood",
            "source",
            "confidence",
        ])?;
        // A load that a combination does not hold has no factor in it.
        let part = |key| {
            let stated = table.optional(key)?;
            stated.map_or(Ok(0.0), |stated| factor(&stated))
        };
        Ok(Self {
            id: table.required("id", "a short name")?.name()?,
            zone: table.choice("zone")?,
            basis: table.required("basis", "what it is for")?.choose()?,
            dead: part("dead")?,
            live: part("live")?,
            snow: part("snow")?,
            wind: part("wind")?,
            flood: factor(&table.required("flood", ACCEPTED)?)?,
            citation: Citation::read(table)?,
        })
    }
}

/// A factor with its own source.
fn cited(table: &Table<'_, '_>) -> Result<(f64, Citation), StatementError> {
    table.allow(&["factor", "source", "confidence"])?;
    Ok((
        factor(&table.required("factor", ACCEPTED)?)?,
        Citation::read(table)?,
    ))
}

const ACCEPTED: &str = "a load factor from 0.1 to 10, such as 1.6";

fn factor(stated: &Stated<'_>) -> Result<f64, StatementError> {
    let refuse = |problem: &str| Unreadable {
        problem: problem.to_owned(),
        accepted: ACCEPTED.to_owned(),
    };
    stated.read(|text| match text.trim().parse::<f64>() {
        Err(_) => Err(refuse("it is not a number")),
        Ok(number) if (LEAST..=GREATEST).contains(&number) => Ok(number),
        Ok(_) => Err(refuse("no load factor is that small or that large")),
    })
}

fn optional_name(
    table: &Table<'_, '_>,
    key: &'static str,
) -> Result<Option<String>, StatementError> {
    table.optional(key)?.map(|stated| stated.name()).transpose()
}
