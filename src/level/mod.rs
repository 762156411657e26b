//! The flood level at a place: every source that has one, in order of authority.
//!
//! Each source stands in a file of its own and answers with a [`Candidate`] or a
//! [`Refusal`]. [`map_levels`] reads the maps, each on its own datum; [`flood_level`] puts what
//! they say beside what the user and the zones state: the one with the highest authority
//! decides, the others are kept and listed.

mod answer;
mod boundary;
pub mod bracket;
mod candidate;
mod curve;
mod depth_over_grade;
mod depth_raster;
mod highest_grade;
mod level_lines;
mod maps;
mod raster_answer;
mod raster_remark;
mod rasters;
mod read;
mod rounding;
mod source;
mod stated;
mod surface_raster;
mod water;
mod zone_static;

pub use answer::{LevelAnswer, Question, Refusal, flood_level};
pub use boundary::{
    BanksDisagree, BoundaryAnswer, BoundaryError, BoundaryLevel, BoundaryRefusal, boundary_level,
    level_between_contours, shore_places,
};
pub use candidate::{Candidate, FloodLevel};
pub use curve::Curve;
pub use depth_over_grade::{DEPTH_WITHOUT_NUMBER, candidate_over, depth_over_grade};
pub use depth_raster::depth_level;
pub use highest_grade::{GradeReach, HighestGrade};
pub use level_lines::candidate_from_lines;
pub use maps::{EventRaster, LevelMaps};
pub use raster_answer::RasterAnswer;
pub use raster_remark::RasterRemark;
pub use read::{EdgeUse, LevelError, MapLevels, MapQuestion, Silence, map_levels};
pub use rounding::rounding_sd;
pub use source::LevelSource;
pub use surface_raster::surface_level;
