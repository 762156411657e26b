//! sillmark

// `uom::unit!` calls further macros of its crate by their bare names.
#[macro_use]
extern crate uom;

pub mod crs;
pub mod gis;
pub mod hazard;
pub mod quantity;
pub mod site;
pub mod terrain;
