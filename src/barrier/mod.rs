//! The barrier itself: the kit it is built from and what an opening needs of it.

mod fitting;
mod handling;
mod kit;
mod planks;

pub use fitting::{
    Fitting, FittingError, FittingMissing, InTime, twelve_hour_citation, twelve_hours,
};
pub use handling::{Handling, LiftLimit, Piece, handling};
pub use kit::Kit;
pub use planks::{PlankStack, planks_for};
