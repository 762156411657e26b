//! Bending of one straight member: reactions, moments, shears, deflections.
//!
//! A [`Beam`] is a straight member of constant flexural rigidity E·I, loaded across its axis
//! and bending elastically with small deflections (Euler-Bernoulli; no shear deformation, no
//! axial force). Its loads are piecewise linear and points, so the response is known exactly:
//! on each piece between two cuts the shear is a polynomial of degree 2, the moment of degree
//! 3, the deflection of degree 5. Extremes are found where they are, not at stations.
//!
//! # Signs
//!
//! | quantity | positive |
//! | --- | --- |
//! | load q, point load | in the direction of the water |
//! | deflection v | in the direction of the water |
//! | force of a support | against the water: the forces of the supports add up to the loads |
//! | moment of the fixed start | against the turning of the member by the water |
//! | shear V | forces of the supports before x, less the loads before x |
//! | moment M | tension on the dry side, as in a plank between two posts; a post fixed at its base has a negative moment there (tension on the wet side) |
//!
//! So V′ = −q, M′ = V and E·I·v″ = −M. An [`Extreme`] is a magnitude, never negative, with the
//! place where it occurs.
//!
//! Reference: the differential equations of a beam, as in J. M. Gere, *Mechanics of Materials*,
//! chapters 4, 8 and 9 (chapter numbers from memory).

mod check;
mod error;
mod extreme;
mod load;
mod member;
mod pieces;
mod polynomial;
mod response;
mod solve;
mod supports;

pub use error::BeamError;
pub use extreme::Extreme;
pub use load::{LinearLoad, PointLoad};
pub use member::Beam;
pub use response::{Reaction, Response};
pub use supports::Supports;
