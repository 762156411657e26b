//! What no kit can be: properties that contradict each other or the dimensions beside them.
//!
//! Most of these are slips of a unit or of a column. A kit that passes is possible, not good.

mod part;

pub(super) use part::{plank, post};

use super::section::Section;
use crate::quantity::{Length, UnitSystem};
use crate::statement::{StatementError, Table};

/// A field that contradicts others.
#[derive(Debug)]
pub(super) struct Fault {
    field: &'static str,
    problem: String,
    accepted: String,
}

impl Fault {
    fn of(
        field: &'static str,
        problem: impl Into<String>,
        accepted: impl Into<String>,
    ) -> Result<(), Self> {
        Err(Self {
            field,
            problem: problem.into(),
            accepted: accepted.into(),
        })
    }

    /// The error about the field of `table`.
    pub(super) fn at(self, table: &Table<'_, '_>) -> StatementError {
        if let Ok(Some(stated)) = table.optional(self.field) {
            return stated.refuse(self.problem, self.accepted);
        }
        // A table within this one.
        let mut error = table.missing(self.field, &self.accepted);
        error.problem = self.problem;
        error
    }
}

/// What rounding of the stated values may make, 2 % (common practice, no source).
const ROOM: f64 = 1.02;

/// Greatest ratio of the plastic to the elastic modulus: 2.0 for a diamond, 2.34 for a triangle
/// (by integration); rolled and extruded shapes lie near 1.2, a solid bar at 1.5.
const GREATEST_SHAPE_FACTOR: f64 = 2.34;

/// A section within an extent of `depth` in the direction of the water.
pub(super) fn section(section: &Section, depth: Length) -> Result<(), Fault> {
    second_moment(section, depth)?;
    elastic_modulus(section, depth)?;
    if let Some(plastic) = section.plastic_modulus {
        let ratio = (plastic / section.elastic_modulus).value;
        if !(1.0 / ROOM..=GREATEST_SHAPE_FACTOR * ROOM).contains(&ratio) {
            return Fault::of(
                "plastic_modulus",
                "no section has that ratio of plastic to elastic modulus",
                format!("elastic_modulus to {GREATEST_SHAPE_FACTOR} times it"),
            );
        }
    }
    if section.shear_area > section.area {
        let most = both(|units| units.section_area(section.area));
        return Fault::of(
            "shear_area",
            "it is more than the whole area",
            format!("the area of the webs, at most {most}"),
        );
    }
    Ok(())
}

/// No metal lies farther than half the depth from the middle (Popoviciu's inequality).
fn second_moment(section: &Section, depth: Length) -> Result<(), Fault> {
    let most = section.area * depth * depth / 4.0;
    if section.second_moment > most * ROOM {
        let most = both(|units| units.second_moment(most));
        return Fault::of(
            "second_moment",
            "the area cannot lie that far from its axis within the depth of the part",
            format!("at most area · depth² / 4, {most}"),
        );
    }
    Ok(())
}

/// The farthest fibre lies between half the depth and all of it from the axis.
fn elastic_modulus(section: &Section, depth: Length) -> Result<(), Fault> {
    let least = section.second_moment / depth;
    let most = least * 2.0;
    if section.elastic_modulus > most * ROOM || section.elastic_modulus * ROOM < least {
        return Fault::of(
            "elastic_modulus",
            "it does not go with second_moment and the depth of the part",
            format!(
                "second_moment over the distance of the farthest fibre, {} to {}",
                both(|units| units.section_modulus(least)),
                both(|units| units.section_modulus(most))
            ),
        );
    }
    Ok(())
}

/// A quantity in both systems of units.
fn both(print: impl Fn(UnitSystem) -> String) -> String {
    format!("{} ({})", print(UnitSystem::Us), print(UnitSystem::Si))
}
