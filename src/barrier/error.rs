//! Why a barrier could not be designed.

use super::{FittingError, StrengthError};
use crate::anchor::AnchorError;
use crate::beam::BeamError;
use crate::load::{CombinationSet, LoadError, ResistanceBasis};
use crate::quantity::Impossible;
use crate::statement::{Choice, StatementError};

/// What the user has to mend before a barrier can be designed.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DesignError {
    /// The set of load factors goes with another kind of resistance than the material has.
    #[error(
        "the load factors {set:?} do not go with the material {material:?}; accepted: a set for {own}, such as {accepted}",
        own = own.word(), accepted = sets_for(*own)
    )]
    OtherResistance {
        /// The set.
        set: String,
        /// The material.
        material: String,
        /// The kind of resistance that the material's standard has.
        own: ResistanceBasis,
    },
    /// A load cannot be.
    #[error(transparent)]
    Load(#[from] LoadError),
    /// A member cannot be.
    #[error(transparent)]
    Beam(#[from] BeamError),
    /// The standard has no such strength.
    #[error(transparent)]
    Strength(#[from] StrengthError),
    /// An anchorage cannot be.
    #[error(transparent)]
    Anchor(#[from] AnchorError),
    /// An inflow cannot be.
    #[error(transparent)]
    Inflow(#[from] Impossible),
    /// The time for fitting cannot be.
    #[error(transparent)]
    Fitting(#[from] FittingError),
    /// Our own data file is broken.
    #[error(transparent)]
    Data(#[from] StatementError),
}

/// The shipped sets that go with a kind of resistance, for a message.
pub(super) fn sets_for(own: ResistanceBasis) -> String {
    let sets = CombinationSet::shipped().unwrap_or_default();
    let ids: Vec<String> = sets
        .into_iter()
        .filter(|set| set.resistance == Some(own))
        .map(|set| set.id)
        .collect();
    ids.join(", ")
}
