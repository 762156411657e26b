//! sillmark

// `uom::unit!` calls further macros of its crate by their bare names.
#[macro_use]
extern crate uom;

pub mod barrier;
pub mod design;
pub mod load;
pub mod quantity;
pub mod risk;
pub mod site;
pub mod statement;
pub mod verdict;

pub mod assess;
pub mod crs;
pub mod gis;
pub mod hazard;
pub mod level;
pub mod report;
pub mod terrain;
