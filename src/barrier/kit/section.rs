//! The cross-section of a plank or a post.

use super::field::{optional_positive, positive};
use super::{check, profile};
use crate::barrier::Material;
use crate::quantity::unit::{Area, Moment, SecondMoment, SectionModulus};
use crate::quantity::{
    Length, Pressure, parse_area, parse_length, parse_moment, parse_second_moment,
    parse_section_modulus, parse_stress,
};
use crate::statement::{Choice, StatementError, Table};

/// A section about the axis that the water bends it about.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Area of the metal.
    pub area: Area,
    /// Second moment of area.
    pub second_moment: SecondMoment,
    /// Elastic modulus at the fibre that is farthest from the axis.
    pub elastic_modulus: SectionModulus,
    /// Plastic modulus, where it is stated.
    pub plastic_modulus: Option<SectionModulus>,
    /// Area that carries shear in the direction of the water: the webs.
    pub shear_area: Area,
    /// What the maker states of bending beyond the geometry.
    pub stated: StatedBending,
}

/// What a maker states of a section's bending strength that its geometry alone does not tell.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StatedBending {
    /// Class of the section by EN 1999-1-1 6.1.4 or EN 1993-1-1 5.5.
    pub class: Option<SectionClass>,
    /// Nominal stress at which a wall of it buckles (ADM F.3) or it turns sideways (F.4), on
    /// the elastic modulus.
    pub buckling_stress: Option<Pressure>,
    /// The maker's moment under loads without factors.
    pub allowable_moment: Option<Moment>,
    /// The maker's moment under loads with factors.
    pub design_moment: Option<Moment>,
}

/// How far a section bends before a wall of it buckles.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SectionClass {
    /// It turns plastic and stays so.
    Class1,
    /// It turns plastic once.
    Class2,
    /// It reaches yield at its outer fibre.
    Class3,
}

impl Choice for SectionClass {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("1", Self::Class1),
        ("2", Self::Class2),
        ("3", Self::Class3),
    ];
}

/// The section and the material of a part, as one table states them.
pub(super) struct SectionTable {
    pub section: Section,
    pub material: Material,
}

impl SectionTable {
    /// The fields that describe a section.
    pub(super) const KEYS: [&'static str; 13] = [
        "material",
        "welded",
        "wall_thickness",
        "area",
        "second_moment",
        "elastic_modulus",
        "plastic_modulus",
        "shear_area",
        "section_class",
        "buckling_stress",
        "allowable_moment",
        "design_moment",
        "profile",
    ];

    /// Reads them; `depth` is the part's extent in the direction of the water.
    pub(super) fn read(
        table: &Table<'_, '_>,
        own: &[Material],
        depth: Length,
    ) -> Result<Self, StatementError> {
        let section = Section::read(table)?;
        check::section(&section, depth).map_err(|fault| fault.at(table))?;
        profile::agrees(table, &section, depth)?;
        Ok(Self {
            material: material(table, own)?,
            section,
        })
    }
}

impl Section {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        let modulus = "a section modulus such as \"1.49 in3\" or \"24.4 cm3\"";
        Ok(Self {
            area: positive(
                table,
                "area",
                "the area of the metal, such as \"2.16 in2\" or \"1390 mm2\"",
                parse_area,
            )?,
            second_moment: positive(
                table,
                "second_moment",
                "the second moment of area about the axis that the water bends it about, such as \"1.49 in4\" or \"61.9 cm4\"",
                parse_second_moment,
            )?,
            elastic_modulus: positive(table, "elastic_modulus", modulus, parse_section_modulus)?,
            plastic_modulus: optional_positive(
                table,
                "plastic_modulus",
                modulus,
                parse_section_modulus,
            )?,
            shear_area: positive(
                table,
                "shear_area",
                "the area of the webs, such as \"0.66 in2\" or \"420 mm2\"",
                parse_area,
            )?,
            stated: StatedBending::read(table)?,
        })
    }
}

impl StatedBending {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        let moment = "a moment such as \"1500 ft-lb\" or \"2 kN·m\"";
        Ok(Self {
            class: class(table)?,
            buckling_stress: optional_positive(
                table,
                "buckling_stress",
                "a stress such as \"20 ksi\" or \"140 MPa\"",
                parse_stress,
            )?,
            allowable_moment: optional_positive(table, "allowable_moment", moment, parse_moment)?,
            design_moment: optional_positive(table, "design_moment", moment, parse_moment)?,
        })
    }
}

fn class(table: &Table<'_, '_>) -> Result<Option<SectionClass>, StatementError> {
    let Some(stated) = table.optional("section_class")? else {
        return Ok(None);
    };
    if stated.text().trim() == "4" {
        return Err(stated.refuse(
            "the effective section of a class 4 section is not computed here",
            "the properties of the effective section, with section_class = 3",
        ));
    }
    stated.choose().map(Some)
}

/// The material that the table names, softened where the part is welded.
fn material(table: &Table<'_, '_>, own: &[Material]) -> Result<Material, StatementError> {
    let named = table.required(
        "material",
        "the id of a material, such as \"6063-T6 (ADM)\"",
    )?;
    let material = Material::named(&named, own)?;
    check_thickness(table, &material)?;
    match table.optional("welded")? {
        Some(welded) if welded.choose()? => material.softened().ok_or_else(|| {
            welded.refuse(
                format!("the strength of {:?} beside a weld is not known", material.id),
                "welded = false, or a [[material]] of the kit's own with welded_yield_strength and welded_ultimate_strength",
            )
        }),
        _ => Ok(material),
    }
}

/// The strengths of an extrusion hold for walls of a thickness.
fn check_thickness(table: &Table<'_, '_>, material: &Material) -> Result<(), StatementError> {
    let range = material.thickness;
    let accepted = format!("the thickest wall of the section, within {range}");
    let Some(stated) = table.optional("wall_thickness")? else {
        return if range.is_unbounded() {
            Ok(())
        } else {
            Err(table.missing("wall_thickness", &accepted))
        };
    };
    let wall = stated.read(parse_length)?;
    if wall.value <= 0.0 || !range.contains(wall) {
        return Err(stated.refuse(
            format!("the strengths of {:?} do not hold for it", material.id),
            accepted,
        ));
    }
    Ok(())
}
