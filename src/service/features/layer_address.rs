//! The address of a layer.

use crate::service::Address;
use crate::statement::{Stated, StatementError};

/// A service and, where the address does not lead to a layer itself, the layer's name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LayerAddress {
    /// The service, or the layer itself.
    pub address: Address,
    /// The layer's name.
    pub layer: Option<String>,
}

impl LayerAddress {
    /// Reads `ADDRESS[#LAYER]`. A colon serves as well behind an address that ends in
    /// `FeatureServer` or `MapServer`.
    ///
    /// # Errors
    /// As [`Address::read`].
    pub fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        let address = Address::read(stated)?;
        todo!("{address}")
    }
}
