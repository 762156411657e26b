//! How tight the seals are.

use super::field;
use crate::quantity::unit::FlowPerLength;
use crate::quantity::{Length, parse_flow_per_length, parse_length};
use crate::statement::{StatementError, Table};

/// What the maker states of the seals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seal {
    /// What leaks through each length of seal; `None` where nobody says, which is not tight.
    pub leakage: Option<FlowPerLength>,
    /// Depth of the water at which that was measured.
    pub tested_depth: Option<Length>,
    /// Whether the lengths that the leakage is for count the joints between planks too.
    pub counts_plank_joints: bool,
}

impl Seal {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["leakage", "tested_depth", "counts_plank_joints"])?;
        let leakage = table
            .optional("leakage")?
            .map(|stated| stated.read(parse_flow_per_length))
            .transpose()?;
        let joints = table.optional("counts_plank_joints")?;
        Ok(Self {
            counts_plank_joints: match (leakage, joints) {
                (_, Some(stated)) => stated.choose()?,
                (None, None) => false,
                (Some(_), None) => {
                    return Err(table.missing(
                        "counts_plank_joints",
                        "true if the leakage is for each length of seal and of joint between planks, false if it is for the seals at sill and posts alone",
                    ));
                }
            },
            leakage,
            tested_depth: field::optional_positive(
                table,
                "tested_depth",
                "the depth of water at which the leakage was measured, such as \"3 ft\"",
                parse_length,
            )?,
        })
    }
}
