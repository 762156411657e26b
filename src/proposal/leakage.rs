//! What a proposal says of leaking seals.

use crate::quantity::unit::{FlowPerLength, VolumeRate};
use crate::quantity::{parse_flow, parse_flow_per_length};
use crate::statement::{Stated, StatementError, Written};

/// Leakage, in either of the two ways that it is stated.
#[derive(Clone, Debug, PartialEq)]
pub enum ProposedLeakage {
    /// Through each length of seal.
    Rate(Written<FlowPerLength>),
    /// Through all seals together.
    Total(Written<VolumeRate>),
}

impl ProposedLeakage {
    pub(super) fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        if let Ok(rate) = Written::read(stated, parse_flow_per_length) {
            return Ok(Self::Rate(rate));
        }
        let total = Written::read(stated, parse_flow);
        total.map(Self::Total).map_err(|error| StatementError {
            accepted: "a flow per length of seal such as \"0.5 gal/h/ft\" or \"6 L/h/m\", or the flow through all seals such as \"40 gal/h\" or \"150 L/h\"".to_owned(),
            ..error
        })
    }

    /// As it was written.
    #[must_use]
    pub fn text(&self) -> &str {
        match self {
            Self::Rate(rate) => &rate.text,
            Self::Total(total) => &total.text,
        }
    }
}
