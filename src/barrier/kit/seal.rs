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
}

impl Seal {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["leakage", "tested_depth"])?;
        Ok(Self {
            leakage: table
                .optional("leakage")?
                .map(|stated| stated.read(parse_flow_per_length))
                .transpose()?,
            tested_depth: field::optional_positive(
                table,
                "tested_depth",
                "the depth of water at which the leakage was measured, such as \"3 ft\"",
                parse_length,
            )?,
        })
    }
}
