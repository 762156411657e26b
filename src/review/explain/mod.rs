//! What may explain a difference: each file tries one kind of slip, and all that fit are told.
//!
//! A slip is told only where what it would change is more than the tolerance: a shift that
//! nobody could see in the figures explains nothing.

mod datum;
mod freeboard;
mod ground;
mod units;

pub(super) use datum::datum_slips;
pub(super) use freeboard::{Freeboards, freeboard_slips};
pub(super) use ground::{Step, ground_slips};
pub(super) use units::{other_unit, unit_slips};
