//! The base: concrete and what is known of it, or masonry.

use super::super::fields::{Bounds, number, within};
use crate::anchor::{BaseMaterial, Concrete};
use crate::quantity::{parse_length, parse_stress};
use crate::statement::{Choice, StatementError, Table};

/// The fields that only concrete has.
pub(super) const CONCRETE: [&str; 6] = [
    "strength",
    "thickness",
    "lambda",
    "cracking",
    "edge_reinforcement",
    "supplementary",
];

const STRENGTH: Bounds = Bounds {
    range: 6.8e6..=1.38e8,
    problem: "no concrete is that weak or that strong",
    accepted: "the specified compressive strength, from 1000 psi (6.9 MPa) to 20000 psi (137.9 MPa), such as \"4000 psi\" or \"25 MPa\"",
};

const THICKNESS: Bounds = Bounds {
    range: 0.02..=10.0,
    problem: "no member is that thin or that thick",
    accepted: "the thickness of the concrete along the anchors, from 0.8 in (20 mm) to 32 ft (10 m), such as \"8 in\"",
};

/// ACI 318-19 19.2.4.
const LAMBDA: Bounds = Bounds {
    range: 0.75..=1.0,
    problem: "it is out of range",
    accepted: "a number from 0.75 for lightweight to 1 for normal-weight concrete",
};

#[derive(Clone, Copy, PartialEq)]
enum Material {
    Concrete,
    Masonry,
}

impl Choice for Material {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("concrete", Self::Concrete), ("masonry", Self::Masonry)];
}

pub(super) fn read(table: &Table<'_, '_>) -> Result<BaseMaterial, StatementError> {
    match table.choice("material")? {
        Some(Material::Concrete) => concrete(table).map(BaseMaterial::Concrete),
        Some(Material::Masonry) => {
            none_of_concrete(
                table,
                "masonry has no such value here: no capacity in it is calculated",
            )?;
            Ok(BaseMaterial::Masonry)
        }
        None => {
            none_of_concrete(table, "it is of concrete, and the material is not stated")?;
            Ok(BaseMaterial::Unstated)
        }
    }
}

/// What is not stated of concrete is what claims least, but for the weight, which is normal.
fn concrete(table: &Table<'_, '_>) -> Result<Concrete, StatementError> {
    let unstated = Concrete::unstated();
    Ok(Concrete {
        strength: within(table, "strength", &STRENGTH, parse_stress)?,
        thickness: within(table, "thickness", &THICKNESS, parse_length)?,
        lambda: number(table, "lambda", &LAMBDA)?.unwrap_or(unstated.lambda),
        cracking: table.choice("cracking")?.unwrap_or(unstated.cracking),
        edge_reinforcement: table
            .choice("edge_reinforcement")?
            .unwrap_or(unstated.edge_reinforcement),
        supplementary: table
            .choice("supplementary")?
            .unwrap_or(unstated.supplementary),
    })
}

/// A value of concrete beside another material must not be passed over.
fn none_of_concrete(table: &Table<'_, '_>, problem: &str) -> Result<(), StatementError> {
    for key in CONCRETE {
        if let Some(stated) = table.optional(key)? {
            let accepted = format!("{key} with material = \"concrete\"");
            return Err(stated.refuse(problem, accepted));
        }
    }
    Ok(())
}
