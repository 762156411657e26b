//! The edge of a flood zone, read on the terrain: where the edge meets the ground is where
//! the water stood.
//!
//! It is the contour interpolation of FEMA 265 (Managing Floodplain Development in
//! Approximate Zone A Areas, pages V-3 to V-5), done on a terrain model instead of printed
//! contours. The steps are in [`boundary_level`].

mod contour_rule;
mod edge;
mod fit;
mod level;
mod refusal;
mod scatter;
mod shore;
mod shore_places;
mod statistics;
mod symmetric;

pub use contour_rule::{BanksDisagree, level_between_contours};
pub use level::{BoundaryAnswer, BoundaryLevel, boundary_level};
pub use refusal::{BoundaryError, BoundaryRefusal};
pub(super) use shore::floods;
pub use shore_places::shore_places;
