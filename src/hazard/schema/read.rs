//! Reading a schema from its file.

use std::collections::{BTreeMap, BTreeSet};

use super::{Constants, Flag, NoValue, Role, Schema, VelocityUnit, ZoneRow, range};
use crate::quantity::{AnnualChance, parse_annual_chance};
use crate::statement::{Choice, Document, Stated, StatementError, Table};

impl Schema {
    /// The schema of the National Flood Hazard Layer of the United States.
    ///
    /// # Errors
    /// [`StatementError`] if our own data file is broken; a test reads it.
    pub fn nfhl() -> Result<Self, StatementError> {
        let text = include_str!("../../../data/schemas/nfhl.toml");
        Self::from_toml("data/schemas/nfhl.toml", text)
    }

    /// The schema of England's Flood Zones 2 and 3.
    ///
    /// # Errors
    /// As [`Schema::nfhl`].
    pub fn england() -> Result<Self, StatementError> {
        let text = include_str!("../../../data/schemas/england.toml");
        Self::from_toml("data/schemas/england.toml", text)
    }

    /// The schema of a layer whose every polygon is flooded with one annual chance, whatever
    /// its attributes.
    ///
    /// # Errors
    /// As [`Schema::nfhl`].
    pub fn extent(chance: AnnualChance) -> Result<Self, StatementError> {
        let text = include_str!("../../../data/schemas/extent.toml");
        let schema = Self::from_toml("data/schemas/extent.toml", text)?;
        Ok(Self {
            annual_chance: chance,
            title: format!("{}: {chance} annual chance", schema.title),
            ..schema
        })
    }

    /// Every schema that ships with the project, for a catalogue; the extent with the chance
    /// of its file, for which the user states their own.
    ///
    /// # Errors
    /// As [`Schema::nfhl`].
    pub fn shipped() -> Result<Vec<Self>, StatementError> {
        let extent = include_str!("../../../data/schemas/extent.toml");
        Ok(vec![
            Self::nfhl()?,
            Self::england()?,
            Self::from_toml("data/schemas/extent.toml", extent)?,
        ])
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
            "constants",
            "no_value",
            "range",
            "velocity_units",
            "inside_flag",
            "zone",
        ])?;
        let name = root.required("name", "a short name")?.name()?;
        let title = root.optional("title")?;
        let title = title.map(|stated| stated.name()).transpose()?;
        let attributes = root.table("attributes")?;
        let (attributes, optional) = match &attributes {
            Some(table) => read_attributes(table)?,
            None => Default::default(),
        };
        let zones = read_zones(&root, &attributes)?;
        Ok(Self {
            title: title.unwrap_or_else(|| name.clone()),
            name,
            source: root
                .required("source", "where the meaning of the values is written")?
                .name()?,
            annual_chance: root
                .required(
                    "annual_chance",
                    "of the flood that the map is about, such as \"1%\" or \"1 in 100\"",
                )?
                .read(parse_annual_chance)?,
            attributes,
            optional,
            constants: Constants::read(&root)?,
            no_value: NoValue::read(&root)?,
            range: range::ranges(&root)?,
            velocity_units: read_velocity_units(&root)?,
            inside_flag: Flag::read(&root)?,
            zones,
        })
    }
}

type Attributes = BTreeMap<Role, Vec<String>>;

fn read_attributes(table: &Table<'_, '_>) -> Result<(Attributes, BTreeSet<Role>), StatementError> {
    let mut fields: Vec<&str> = Role::ALL.into_iter().map(Role::word).collect();
    fields.push("optional");
    table.allow(&fields)?;
    let mut attributes = Attributes::new();
    for role in Role::ALL {
        let names = table.texts(role.word())?;
        let names = names.iter().map(Stated::name);
        let names = names.collect::<Result<Vec<_>, _>>()?;
        if let Some(whole) = table.whole(role.word()) {
            if names.is_empty() {
                return Err(whole.refuse("it names no attribute", "[\"NAME\"]"));
            }
            attributes.insert(role, names);
        }
    }
    let mut optional = BTreeSet::new();
    for stated in table.texts("optional")? {
        let role = stated.choose()?;
        if !attributes.contains_key(&role) {
            return Err(stated.refuse(
                "[attributes] names no attribute for it",
                "roles that have one",
            ));
        }
        optional.insert(role);
    }
    Ok((attributes, optional))
}

fn read_zones(
    root: &Table<'_, '_>,
    attributes: &Attributes,
) -> Result<Vec<ZoneRow>, StatementError> {
    let mut rows: Vec<ZoneRow> = Vec::new();
    for table in root.tables("zone")? {
        let row = ZoneRow::read(&table, |role| attributes.contains_key(&role))?;
        if let Some(code) = rows.iter().find_map(|before| before.hides(&row)) {
            return Err(StatementError {
                place: table.place(),
                field: "zone.codes".to_owned(),
                value: (!code.is_empty()).then(|| code.to_owned()),
                problem: "an earlier row takes it already, and the first that fits decides"
                    .to_owned(),
                accepted: "the narrower row first, or each code once".to_owned(),
            });
        }
        rows.push(row);
    }
    if rows.is_empty() {
        return Err(root.missing("zone", "at least one [[zone]] with codes and class"));
    }
    Ok(rows)
}

fn read_velocity_units(
    root: &Table<'_, '_>,
) -> Result<Vec<(VelocityUnit, Vec<String>)>, StatementError> {
    let Some(table) = root.table("velocity_units")? else {
        return Ok(Vec::new());
    };
    let words: Vec<&str> = VelocityUnit::CHOICES
        .iter()
        .map(|(word, _)| *word)
        .collect();
    table.allow(&words)?;
    let units = VelocityUnit::CHOICES.iter();
    units
        .map(|(word, unit)| Ok((*unit, owned(&table.texts(word)?))))
        .collect()
}

pub(in crate::hazard) fn owned(stated: &[Stated<'_>]) -> Vec<String> {
    stated.iter().map(|one| one.text().to_owned()).collect()
}

/// Listed numbers.
pub(in crate::hazard) fn numbers(stated: &[Stated<'_>]) -> Result<Vec<f64>, StatementError> {
    stated.iter().map(range::number).collect()
}

impl NoValue {
    fn read(root: &Table<'_, '_>) -> Result<Self, StatementError> {
        let Some(table) = root.table("no_value")? else {
            return Ok(Self::default());
        };
        table.allow(&["texts", "numbers", "zero"])?;
        Ok(Self {
            texts: owned(&table.texts("texts")?),
            numbers: numbers(&table.values("numbers")?)?,
            zero: table
                .texts("zero")?
                .iter()
                .map(Stated::choose)
                .collect::<Result<_, _>>()?,
        })
    }
}

impl Flag {
    fn read(root: &Table<'_, '_>) -> Result<Self, StatementError> {
        let Some(table) = root.table("inside_flag")? else {
            return Ok(Self::default());
        };
        table.allow(&["yes", "no"])?;
        Ok(Self {
            yes: owned(&table.texts("yes")?),
            no: owned(&table.texts("no")?),
        })
    }
}
