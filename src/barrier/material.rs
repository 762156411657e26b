//! The metals that planks and posts are made of, with their characteristic strengths.

use std::fmt;

use crate::quantity::unit::{MassDensity, inch, millimeter};
use crate::quantity::{Length, Pressure, parse_density, parse_length, parse_stress};
use crate::statement::{Choice, Citation, Document, Stated, StatementError, Table};

/// The standard that a material's strengths belong to, and by whose rules they are used. The
/// same alloy has other strengths in another standard; they are never mixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MaterialStandard {
    /// Aluminum Design Manual 2020 (United States).
    Adm,
    /// EN 1999-1-1, aluminium (Europe).
    En1999,
    /// ANSI/AISC 360, structural steel (United States).
    Aisc360,
    /// EN 1993-1-1, structural steel (Europe).
    En1993,
}

impl Choice for MaterialStandard {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("ADM 2020", Self::Adm),
        ("EN 1999-1-1", Self::En1999),
        ("AISC 360", Self::Aisc360),
        ("EN 1993-1-1", Self::En1993),
    ];
}

/// A material by one standard.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Name in kit files, such as `6063-T6 (ADM)`.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// Whose strengths these are.
    pub standard: MaterialStandard,
    /// Characteristic tensile yield strength: `Fty` of the ADM, `fo` (0.2 % proof) of
    /// EN 1999, `Fy` or `fy` of steel.
    pub yield_strength: Pressure,
    /// Characteristic tensile ultimate strength.
    pub ultimate_strength: Pressure,
    /// Modulus of elasticity.
    pub modulus: Pressure,
    /// Density.
    pub density: MassDensity,
    /// Wall thicknesses that the strengths hold for.
    pub thickness: ThicknessRange,
    /// Strengths in the zone that welding has softened, where the standard's are known.
    pub welded: Option<WeldedStrength>,
    /// Whether the strengths above are those of the softened zone.
    pub at_weld: bool,
    /// Where the strengths stand.
    pub citation: Citation,
    /// Where the modulus stands.
    pub modulus_citation: Citation,
    /// Where the density stands.
    pub density_citation: Citation,
}

/// Wall thicknesses over one bound and up to another.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ThicknessRange {
    /// Thicker than this; `None` for no bound.
    pub over: Option<Length>,
    /// Up to this thickness; `None` for no bound.
    pub up_to: Option<Length>,
}

/// Strengths beside a weld.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WeldedStrength {
    /// `Ftyw` of the ADM, `fo,haz` of EN 1999.
    pub yield_strength: Pressure,
    /// `Ftuw` of the ADM, `fu,haz` of EN 1999.
    pub ultimate_strength: Pressure,
}

const MATERIALS: &str = include_str!("../../data/materials.toml");

/// All materials of `data/materials.toml`, in its order.
///
/// # Errors
/// [`StatementError`] if our own data file is broken; a test reads it.
///
/// ```
/// use sillmark::barrier::materials;
/// use sillmark::quantity::unit::pound_per_square_inch;
/// let known = materials()?;
/// let alloy = known.iter().find(|row| row.id == "6063-T6 (ADM)").unwrap();
/// assert!((alloy.yield_strength.get::<pound_per_square_inch>() - 25_000.0).abs() < 1e-6);
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
pub fn materials() -> Result<Vec<Material>, StatementError> {
    let document = Document::parse("data/materials.toml", MATERIALS)?;
    let root = document.root();
    root.allow(&["common", "material"])?;
    let common = root.tables("common")?;
    root.tables("material")?
        .iter()
        .map(|row| Material::read_shipped(row, &common))
        .collect()
}

impl Material {
    /// The row that `stated` names, of a kit's own materials or else of the shipped ones.
    ///
    /// # Errors
    /// [`StatementError`] listing the ids where there is none of that name.
    pub(super) fn named(stated: &Stated<'_>, own: &[Self]) -> Result<Self, StatementError> {
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

    /// The material with its strength beside a weld in the place of its own, if that is known.
    ///
    /// Using the softened strength for the whole section is on the safe side of a rule that
    /// reduces only the softened part of it.
    #[must_use]
    pub fn softened(&self) -> Option<Self> {
        let welded = self.welded?;
        Some(Self {
            yield_strength: welded.yield_strength,
            ultimate_strength: welded.ultimate_strength,
            at_weld: true,
            ..self.clone()
        })
    }

    /// A row of our own table; modulus and density stand in the `[[common]]` of its standard.
    fn read_shipped(row: &Table<'_, '_>, common: &[Table<'_, '_>]) -> Result<Self, StatementError> {
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
    pub(super) fn read_stated(table: &Table<'_, '_>) -> Result<Self, StatementError> {
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

impl ThicknessRange {
    /// Whether a wall of this thickness lies within.
    #[must_use]
    pub fn contains(&self, wall: Length) -> bool {
        self.over.is_none_or(|over| wall > over) && self.up_to.is_none_or(|up_to| wall <= up_to)
    }

    /// Whether any thickness will do.
    #[must_use]
    pub const fn is_unbounded(&self) -> bool {
        self.over.is_none() && self.up_to.is_none()
    }
}

impl fmt::Display for ThicknessRange {
    /// In both systems of units, for a message.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let both = |length: Length| {
            format!(
                "{:.3} in ({:.1} mm)",
                length.get::<inch>(),
                length.get::<millimeter>()
            )
        };
        match (self.over, self.up_to) {
            (None, None) => formatter.write_str("any thickness"),
            (Some(over), None) => write!(formatter, "over {}", both(over)),
            (None, Some(up_to)) => write!(formatter, "up to {}", both(up_to)),
            (Some(over), Some(up_to)) => {
                write!(formatter, "over {} up to {}", both(over), both(up_to))
            }
        }
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
