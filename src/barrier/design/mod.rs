//! From water and kit to a barrier: planks, spans, posts, brace, anchors and pieces.
//!
//! [`design_barrier`] takes these steps:
//!
//! 1. whole planks that reach the height;
//! 2. the load of the water at the design level and at the top of the barrier;
//! 3. the mount, and from it where the end posts stand;
//! 4. each leg divided into the fewest spans whose planks pass every check;
//! 5. free-standing posts as cantilevers; braced where waves act or they fail alone; more
//!    spans where they, or their braces, fail too;
//! 6. what end posts hand over to the wall, and base plates to their anchors;
//! 7. the pieces to cut.
//!
//! What does not work out is a [`Shortfall`](super::Shortfall); what is still to be measured
//! or stated is [`Open`](super::Open). Neither is an error.

mod anchoring;
mod barrier_design;
mod beyond;
mod closer;
mod corner_plate;
mod cut_list;
mod end_choice;
mod ends;
mod findings;
mod finish;
mod frame;
mod post_forces;
mod reach;
mod rules;
mod spans;
mod standing;
mod task;
mod upright;
mod water;

pub use anchoring::PlateAnchors;
pub use barrier_design::{BarrierDesign, design_barrier};
pub use ends::{EndAnchors, EndForces, EndPostDesign, Ends};
pub use post_forces::{BaseForces, BraceForces};
pub use spans::PlannedLeg;
pub use task::{BarrierTask, DesignRules};
pub use upright::{Upright, UprightDesign};
pub use water::CaseLoad;
