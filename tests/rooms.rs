//! The rooms that read files, each against files written for it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
#![allow(clippy::disallowed_methods)] // fixtures are written with GDAL itself

mod crs;
mod gis;
mod hazard;
#[allow(dead_code)] // each of the two binaries uses a part
mod support;
mod terrain;
