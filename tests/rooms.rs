//! The rooms of `src`, one folder each.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::float_cmp
)]
#![allow(clippy::disallowed_methods)] // fixtures are written with GDAL itself

mod anchor;
mod barrier;
mod beam;
mod collect;
mod crs;
mod design;
mod gis;
mod hazard;
mod inflow;
mod level;
mod load;
mod portfolio;
mod proposal;
mod quantity;
mod report;
mod review;
mod risk;
mod service;
mod site;
#[allow(dead_code)] // each of the two binaries uses a part
mod support;
mod surroundings;
mod table;
mod terrain;
mod verdict;
