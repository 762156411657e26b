//! Reading materials: the rows of the shipped table and those that a kit states.

use super::{Material, MaterialStandard, ThicknessRange, WeldedStrength, materials};
use crate::quantity::unit::MassDensity;
use crate::quantity::{Length, Pressure, parse_density, parse_length, parse_stress};
use crate::statement::{Citation, Stated, StatementError, Table};

impl Material {
    /// The row that `stated` names, of a kit's own materials or else of the shipped ones.
    ///
    /// # Errors
    /// [`StatementError`] listing the ids where there is none of that name.
    pub(in crate::barrier) fn named(
        stated: &Stated<'_>,
        own: &[Self],
    ) -> Result<Self, StatementError> {
        let id = stated.text().trim();
        let shipped = materials()?;
        let known = || own.iter().chain(&shipped);
        known()
            .find(|material| material.id.eq_ignore_ascii_case(id))
            .cloned()
            .ok_or_else(|| {
                let ids: Vec<&str> = known().map(|material| material.id.as_str()).collect();
                stated.refuse(
                    "it is no material of data/materials.toml or of the kit's own [[material]]",
                    ids.join("; "),
                )
            })
    }

    /// The `[[material]]` tables of a kit, each with an id of its own.
    ///
    /// # Errors
    /// [`StatementError`] of the first that is incomplete, impossible, or named like another.
    pub(in crate::barrier) fn read_own(root: &Table<'_, '_>) -> Result<Vec<Self>, StatementError> {
        let mut own: Vec<Self> = Vec::new();
        let shipped = materials()?;
        for table in root.tables("material")? {
            let material = Self::read_stated(&table)?;
            let mut others = own.iter().chain(&shipped);
            if others.any(|other| other.id.eq_ignore_ascii_case(&material.id)) {
                return Err(table.required("id", "a short name")?.refuse(
                    "another material has that id",
                    "an id that neither data/materials.toml nor this kit has yet",
                ));
            }
            own.push(material);
        }
        Ok(own)
    }

    /// A row of our own table; modulus and density stand in the `[[common]]` of its standard.
    pub(super) fn read_shipped(
        row: &Table<'_, '_>,
        common: &[Table<'_, '_>],
    ) -> Result<Self, StatementError> {
        let standard: MaterialStandard = standard(row)?;
        for values in common {
            if self::standard(values)? != standard {
                continue;
            }
            let of =
                |key, names: &str| values.table(key)?.ok_or_else(|| values.missing(key, names));
            let modulus = of("modulus", "value, source, confidence")?;
            let density = of("density", "value, source, confidence")?;
            return Self::read(row, standard, |_| {
                Ok(Elastic {
                    modulus: modulus.required("value", "a modulus")?.read(parse_stress)?,
                    modulus_citation: Citation::read(&modulus)?,
                    density: density
                        .required("value", "a density")?
                        .read(parse_density)?,
                    density_citation: Citation::read(&density)?,
                })
            });
        }
        Err(row.missing("standard", "a standard with its [[common]] values"))
    }

    /// A material that a kit states for itself: modulus and density with it.
    fn read_stated(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        Self::read(table, standard(table)?, |citation| {
            Ok(Elastic {
                modulus: table
                    .required("modulus", "a modulus such as \"10100 ksi\"")?
                    .read(parse_stress)?,
                modulus_citation: citation.clone(),
                density: table
                    .required("density", "a density such as \"2700 kg/m3\"")?
                    .read(parse_density)?,
                density_citation: citation.clone(),
            })
        })
    }

    fn read(
        table: &Table<'_, '_>,
        standard: MaterialStandard,
        elastic: impl FnOnce(&Citation) -> Result<Elastic, StatementError>,
    ) -> Result<Self, StatementError> {
        table.allow(&[
            "id",
            "name",
            "standard",
            "yield_strength",
            "ultimate_strength",
            "welded_yield_strength",
            "welded_ultimate_strength",
            "thickness_over",
            "thickness_up_to",
            "modulus",
            "density",
            "source",
            "confidence",
        ])?;
        let citation = Citation::read(table)?;
        let Elastic {
            modulus,
            modulus_citation,
            density,
            density_citation,
        } = elastic(&citation)?;
        Ok(Self {
            id: table.required("id", "a short name")?.name()?,
            name: table.required("name", "a name for people")?.name()?,
            standard,
            yield_strength: strength(table, "yield_strength")?,
            ultimate_strength: ultimate(table, "yield_strength", "ultimate_strength")?,
            modulus,
            density,
            thickness: ThicknessRange {
                over: optional_length(table, "thickness_over")?,
                up_to: optional_length(table, "thickness_up_to")?,
            },
            welded: welded(table)?,
            at_weld: false,
            citation,
            modulus_citation,
            density_citation,
        })
    }
}

/// What does not depend on the temper.
struct Elastic {
    modulus: Pressure,
    modulus_citation: Citation,
    density: MassDensity,
    density_citation: Citation,
}

fn standard(table: &Table<'_, '_>) -> Result<MaterialStandard, StatementError> {
    table
        .required("standard", "the standard whose strengths these are")?
        .choose()
}

fn strength(table: &Table<'_, '_>, key: &'static str) -> Result<Pressure, StatementError> {
    let stated = table.required(key, "a strength such as \"25 ksi\" or \"170 MPa\"")?;
    let strength = stated.read(parse_stress)?;
    if strength.value <= 0.0 {
        return Err(stated.refuse(
            "a strength is more than nothing",
            "a strength such as \"25 ksi\"",
        ));
    }
    Ok(strength)
}

/// The ultimate strength, which cannot lie below the yield strength.
fn ultimate(
    table: &Table<'_, '_>,
    lower: &'static str,
    key: &'static str,
) -> Result<Pressure, StatementError> {
    let ultimate = strength(table, key)?;
    if ultimate < strength(table, lower)? {
        return Err(table
            .required(key, "a strength")?
            .refuse(format!("it is below {lower}"), format!("at least {lower}")));
    }
    Ok(ultimate)
}

fn welded(table: &Table<'_, '_>) -> Result<Option<WeldedStrength>, StatementError> {
    const KEYS: [&str; 2] = ["welded_yield_strength", "welded_ultimate_strength"];
    if table.whole(KEYS[0]).is_none() && table.whole(KEYS[1]).is_none() {
        return Ok(None);
    }
    Ok(Some(WeldedStrength {
        yield_strength: strength(table, KEYS[0])?,
        ultimate_strength: ultimate(table, KEYS[0], KEYS[1])?,
    }))
}

fn optional_length(
    table: &Table<'_, '_>,
    key: &'static str,
) -> Result<Option<Length>, StatementError> {
    table
        .optional(key)?
        .map(|stated| stated.read(parse_length))
        .transpose()
}
