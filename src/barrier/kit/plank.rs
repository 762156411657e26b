//! The plank.

use super::section::{Section, SectionTable};
use super::{check, field};
use crate::barrier::Material;
use crate::quantity::unit::{LinearMassDensity, centimeter, meter};
use crate::quantity::{Length, parse_length, parse_mass_per_length};
use crate::statement::{StatementError, Table};

/// A horizontal plank that spans from post to post.
#[derive(Clone, Debug, PartialEq)]
pub struct Plank {
    /// Height that one plank adds to the barrier.
    pub cover: Length,
    /// Its extent in the direction of the water.
    pub thickness: Length,
    /// The section, about the vertical axis that the water bends it about.
    pub section: Section,
    /// What it is made of; its softened strength where the plank is welded.
    pub material: Material,
    /// The longest piece.
    pub longest: Length,
    /// Mass of each length of it, with what is fixed to it.
    pub mass_per_length: LinearMassDensity,
    /// Height that the compressed bottom seal adds below the first plank; may be nothing.
    pub bottom_seal: Length,
}

impl Plank {
    pub(super) fn read(table: &Table<'_, '_>, own: &[Material]) -> Result<Self, StatementError> {
        let mut known = vec![
            "cover_height",
            "thickness",
            "longest",
            "mass_per_length",
            "bottom_seal",
        ];
        known.extend(SectionTable::KEYS);
        table.allow(&known)?;
        let cover = cover(table)?;
        let thickness = field::dimension(
            table,
            "thickness",
            "the plank's extent in the direction of the water",
        )?;
        let parts = SectionTable::read(table, own, thickness)?;
        let plank = Self {
            cover,
            thickness,
            section: parts.section,
            material: parts.material,
            longest: field::dimension(table, "longest", "the longest piece")?,
            mass_per_length: field::positive(
                table,
                "mass_per_length",
                "a mass per length such as \"2.7 lb/ft\" or \"4 kg/m\"",
                parse_mass_per_length,
            )?,
            bottom_seal: field::length(
                table,
                "bottom_seal",
                "what the compressed bottom seal adds below the first plank",
            )?,
        };
        check::plank(&plank).map_err(|fault| fault.at(table))?;
        Ok(plank)
    }
}

fn cover(table: &Table<'_, '_>) -> Result<Length, StatementError> {
    let stated = table.required(
        "cover_height",
        "the height one plank adds, such as \"6 in\"",
    )?;
    let cover = stated.read(parse_length)?;
    if !(Length::new::<centimeter>(1.0)..=Length::new::<meter>(1.0)).contains(&cover) {
        return Err(stated.refuse(
            "no plank is that high or that low",
            "a length from \"1 cm\" to \"1 m\"",
        ));
    }
    Ok(cover)
}
