//! Against the outside world: real data and independent libraries.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
#![allow(clippy::disallowed_methods)] // fixtures are written with GDAL itself

#[path = "validation/anchors/mod.rs"]
mod anchors;
#[path = "validation/annual_chance.rs"]
mod annual_chance;
#[path = "validation/beams/mod.rs"]
mod beams;
#[path = "validation/boundary.rs"]
mod boundary;
#[path = "validation/chances.rs"]
mod chances;
#[path = "validation/datums/mod.rs"]
mod datums;
#[path = "validation/demonstration.rs"]
mod demonstration;
#[path = "validation/houston.rs"]
mod houston;
#[path = "validation/hudson.rs"]
mod hudson;
#[path = "validation/inflow.rs"]
mod inflow;
#[path = "validation/kit_sections.rs"]
mod kit_sections;
#[path = "validation/loads.rs"]
mod loads;
#[path = "validation/materials.rs"]
mod materials;
#[path = "validation/peer.rs"]
mod peer;
#[path = "validation/portfolio_bench.rs"]
mod portfolio_bench;
#[path = "validation/rasters.rs"]
mod rasters;
#[path = "validation/review.rs"]
mod review;
#[allow(dead_code)] // each of the two binaries uses a part
#[path = "review/fixture.rs"]
mod review_fixture;
#[path = "surroundings/fixture.rs"]
mod site_fixture;
#[path = "validation/site_layers.rs"]
mod site_layers;
#[allow(dead_code)] // each of the two binaries uses a part
mod support;
#[path = "validation/table.rs"]
mod table;
#[path = "validation/vernonia.rs"]
mod vernonia;
#[path = "validation/worked_examples.rs"]
mod worked_examples;
