//! A section that is drawn as rectangles has the properties that it is stated with.

use super::field;
use super::section::Section;
use super::section_sums::{Rectangle, SectionSums, section_sums};
use crate::quantity::{Length, UnitSystem, parse_signed_length};
use crate::statement::{StatementError, Table};

/// What rounding and the radii of an extrusion may make between a stated value and the sum
/// (common practice, no source).
const TOLERANCE: f64 = 0.02;

/// Compares the stated properties with the sums over the `profile` of the table, if it has one.
pub(super) fn agrees(
    table: &Table<'_, '_>,
    section: &Section,
    depth: Length,
) -> Result<(), StatementError> {
    let profile = read(table)?;
    if profile.is_empty() {
        return Ok(());
    }
    let refuse = |problem: String| {
        let mut error = table.missing(
            "profile",
            "rectangles of metal side by side, hole = true for what is cut out of them, as deep as the part",
        );
        error.problem = problem;
        error
    };
    let sums = section_sums(&profile).map_err(|error| refuse(error.to_string()))?;
    if ((depth / sums.depth).value - 1.0).abs() > TOLERANCE {
        let deep = UnitSystem::Us.dimension(sums.depth);
        return Err(refuse(format!(
            "it is {deep} deep in the direction of the water and the part {}",
            UnitSystem::Us.dimension(depth)
        )));
    }
    for (field, stated, summed, text) in pairs(section, &sums) {
        if (stated / summed - 1.0).abs() > TOLERANCE {
            let accepted = format!("what the profile sums to, {text}, to 2 %");
            let value = table.required(field, &accepted)?;
            return Err(value.refuse("the rectangles of the profile disagree", accepted));
        }
    }
    Ok(())
}

/// What is compared: field, stated and summed value in SI units, and the sum in both systems.
fn pairs(section: &Section, sums: &SectionSums) -> Vec<(&'static str, f64, f64, String)> {
    let both = |print: &dyn Fn(UnitSystem) -> String| {
        format!("{} ({})", print(UnitSystem::Us), print(UnitSystem::Si))
    };
    let mut pairs = vec![
        (
            "area",
            section.area.value,
            sums.area.value,
            both(&|units| units.section_area(sums.area)),
        ),
        (
            "second_moment",
            section.second_moment.value,
            sums.second_moment.value,
            both(&|units| units.second_moment(sums.second_moment)),
        ),
        (
            "elastic_modulus",
            section.elastic_modulus.value,
            sums.elastic_modulus.value,
            both(&|units| units.section_modulus(sums.elastic_modulus)),
        ),
    ];
    if let Some(plastic) = section.plastic_modulus {
        pairs.push((
            "plastic_modulus",
            plastic.value,
            sums.plastic_modulus.value,
            both(&|units| units.section_modulus(sums.plastic_modulus)),
        ));
    }
    pairs
}

fn read(table: &Table<'_, '_>) -> Result<Vec<Rectangle>, StatementError> {
    table.tables("profile")?.iter().map(rectangle).collect()
}

fn rectangle(table: &Table<'_, '_>) -> Result<Rectangle, StatementError> {
    table.allow(&["x", "y", "width", "height", "hole"])?;
    let edge = |key, meaning: &str| {
        table
            .required(key, &format!("{meaning}, such as \"0 in\""))?
            .read(parse_signed_length)
    };
    Ok(Rectangle {
        x: edge("x", "the near edge in the direction of the water")?,
        y: edge("y", "the lower edge across that")?,
        width: field::dimension(table, "width", "the extent in the direction of the water")?,
        height: field::dimension(table, "height", "the extent across that")?,
        hole: match table.optional("hole")? {
            Some(stated) => stated.choose()?,
            None => false,
        },
    })
}
