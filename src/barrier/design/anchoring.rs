//! The anchors under the base plates: demand always, capacity where it was stated enough.

use super::upright::UprightDesign;
use super::{BaseForces, DesignRules};
use crate::anchor::{
    AnchorCheck, Anchorage, BasePlateForces, PlateDemand, PlatePattern, Side, base_plate,
};
use crate::barrier::{AnchorPattern, DesignError};
use crate::load::FactorBasis;

/// The anchors of one base plate.
#[derive(Clone, Debug, PartialEq)]
pub struct PlateAnchors {
    /// The post that stands on it.
    pub post: &'static str,
    /// Factor on the load of the water: anchors in concrete are designed for factored loads.
    pub factor: f64,
    /// Where the factor stands.
    pub reference: String,
    /// Forces at the plate in the case that asks most, without the factor.
    pub forces: BaseForces,
    /// What the anchors have to carry, with the factor.
    pub demand: PlateDemand,
    /// Every way of failing that could be checked; `None` where nothing was stated of what
    /// the plate stands on.
    pub check: Option<AnchorCheck>,
}
