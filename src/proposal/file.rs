//! The proposal file.

use super::{Proposal, ProposedLeakage, ProposedOpening};
use crate::quantity::{parse_annual_chance, parse_duration, parse_elevation, parse_length};
use crate::statement::{Document, InSi, StatementError, Table, Unreadable, Written};

impl Proposal {
    /// Reads a proposal file; `file` is the name that messages use.
    ///
    /// # Errors
    /// [`StatementError`] naming file, line, field, value and what would be accepted.
    ///
    /// ```
    /// use sillmark::proposal::Proposal;
    /// let proposal = Proposal::from_toml("offer.toml", r#"
    /// flood_level = "9.2 ft NGVD29"
    /// freeboard = "1 ft"
    /// [[opening]]
    /// id = "front door"
    /// barrier_height = "2 ft 6 in"
    /// "#)?;
    /// assert_eq!(proposal.flood_level.unwrap().text, "9.2 ft NGVD29");
    /// let error = Proposal::from_toml("offer.toml", "flod_level = \"9 ft NAVD88\"").unwrap_err();
    /// assert!(error.to_string().contains("perhaps flood_level is meant"));
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn from_toml(file: &str, text: &str) -> Result<Self, StatementError> {
        let document = Document::parse(file, text)?;
        let root = document.root();
        root.allow_or_nearest(&[
            "name",
            "flood_level",
            "annual_chance",
            "freeboard",
            "design_level",
            "source",
            "occupancy",
            "compliance",
            "leakage",
            "warning",
            "fitting_time",
            "opening",
        ])?;
        let name = |key| root.optional(key)?.map(|stated| stated.name()).transpose();
        Ok(Self {
            name: name("name")?,
            file: file.to_owned(),
            flood_level: written(&root, "flood_level", parse_elevation)?,
            annual_chance: root
                .optional("annual_chance")?
                .map(|stated| stated.read(parse_annual_chance))
                .transpose()?,
            freeboard: written(&root, "freeboard", parse_length)?,
            design_level: written(&root, "design_level", parse_elevation)?,
            source: name("source")?,
            occupancy: root.choice("occupancy")?,
            compliance: root.choice("compliance")?,
            leakage: root
                .optional("leakage")?
                .map(|stated| ProposedLeakage::read(&stated))
                .transpose()?,
            warning: written(&root, "warning", parse_duration)?,
            fitting_time: written(&root, "fitting_time", parse_duration)?,
            openings: openings(&root)?,
        })
    }
}

fn openings(root: &Table<'_, '_>) -> Result<Vec<ProposedOpening>, StatementError> {
    let mut openings: Vec<ProposedOpening> = Vec::new();
    for table in root.tables("opening")? {
        let opening = ProposedOpening::read(&table)?;
        if opening.id.is_some() && openings.iter().any(|other| other.id == opening.id) {
            let id = table.required("id", "a name")?;
            return Err(id.refuse(
                "another opening has the same id",
                "a different id for each opening",
            ));
        }
        openings.push(opening);
    }
    Ok(openings)
}

/// The quantity of `key` with its text, if it is there.
pub(super) fn written<Value: InSi, Problem: Into<Unreadable>>(
    table: &Table<'_, '_>,
    key: &'static str,
    parse: impl Fn(&str) -> Result<Value, Problem>,
) -> Result<Option<Written<Value>>, StatementError> {
    table
        .optional(key)?
        .map(|stated| Written::read(&stated, parse))
        .transpose()
}

/// More planks or posts than this no barrier has.
const MOST: u32 = 1000;

/// The whole number of `key`, if it is there.
pub(super) fn count(
    table: &Table<'_, '_>,
    key: &'static str,
) -> Result<Option<u32>, StatementError> {
    let Some(stated) = table.optional(key)? else {
        return Ok(None);
    };
    let number = stated.text().trim().parse().ok();
    number
        .filter(|number| *number <= MOST)
        .map(Some)
        .ok_or_else(|| {
            stated.refuse(
                "it is not a count",
                format!("a whole number from 0 to {MOST}"),
            )
        })
}
