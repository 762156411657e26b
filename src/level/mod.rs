//! The flood level at a place: every source that has one, in order of authority.
//!
//! Each source stands in a file of its own and answers with a [`Candidate`] or a
//! [`Refusal`]. [`flood_level`] asks all of them; the one with the highest authority decides,
//! the others are kept and listed.

mod answer;
mod boundary;
mod candidate;
mod depth_over_grade;
mod depth_raster;
mod raster_answer;
mod raster_remark;
mod rounding;
mod source;
mod stated;
mod surface_raster;
mod zone_static;

pub use answer::{LevelAnswer, Question, Refusal, flood_level};
pub use boundary::{
    BanksDisagree, BoundaryAnswer, BoundaryError, BoundaryLevel, BoundaryRefusal, boundary_level,
    level_between_contours,
};
pub use candidate::{Candidate, FloodLevel};
pub use depth_over_grade::{DEPTH_WITHOUT_NUMBER, depth_over_grade};
pub use depth_raster::depth_level;
pub use raster_answer::RasterAnswer;
pub use raster_remark::RasterRemark;
pub use rounding::rounding_sd;
pub use source::LevelSource;
pub use surface_raster::surface_level;
