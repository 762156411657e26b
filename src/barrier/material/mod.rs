//! The metals that planks and posts are made of, with their characteristic strengths.

mod read;

use std::fmt;

use crate::quantity::unit::{MassDensity, inch, millimeter};
use crate::quantity::{Length, Pressure};
use crate::statement::{Choice, Citation, Document, StatementError};

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

const MATERIALS: &str = include_str!("../../../data/materials.toml");

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
