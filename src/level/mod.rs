//! The flood level at a place: every source that has one, in order of authority.
//!
//! Each source stands in a file of its own and answers with a [`Candidate`] or a
//! [`Refusal`]. [`flood_level`] asks all of them; the one with the highest authority decides,
//! the others are kept and listed.

mod answer;
pub mod bracket;
mod candidate;
mod depth_over_grade;
mod highest_grade;
mod level_lines;
mod rounding;
mod source;
mod stated;
mod zone_static;

pub use answer::{LevelAnswer, Question, Refusal, Silence, flood_level};
pub use candidate::{Candidate, FloodLevel};
pub use depth_over_grade::{DEPTH_WITHOUT_NUMBER, candidate_over, depth_over_grade};
pub use highest_grade::{GradeReach, HighestGrade};
pub use level_lines::candidate_from_lines;
pub use rounding::rounding_sd;
pub use source::LevelSource;
