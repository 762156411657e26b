//! The program as its user meets it: what is typed, what comes back, the exit status.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::type_complexity,
    clippy::naive_bytecount
)]
#![allow(clippy::disallowed_methods)] // fixtures are written with GDAL itself

#[path = "command/alder_lock.rs"]
mod alder_lock;
#[path = "command/bad_options.rs"]
mod bad_options;
#[path = "command/bad_quantities.rs"]
mod bad_quantities;
#[path = "command/bad_site_file.rs"]
mod bad_site_file;
#[path = "command/bad_terrain.rs"]
mod bad_terrain;
#[path = "command/bad_zones.rs"]
mod bad_zones;
#[path = "command/barrier.rs"]
mod barrier;
#[path = "command/barrier_figures.rs"]
mod barrier_figures;
#[path = "command/barrier_files.rs"]
mod barrier_files;
#[path = "command/barrier_large.rs"]
mod barrier_large;
#[path = "command/barrier_loads.rs"]
mod barrier_loads;
#[path = "command/barrier_of_site.rs"]
mod barrier_of_site;
#[path = "command/barrier_posts.rs"]
mod barrier_posts;
#[path = "command/barrier_shortfalls.rs"]
mod barrier_shortfalls;
#[path = "command/barrier_units.rs"]
mod barrier_units;
#[path = "command/barrier_verdicts.rs"]
mod barrier_verdicts;
#[path = "command/browser.rs"]
mod browser;
#[path = "command/catalog.rs"]
mod catalog;
#[path = "command/cluster.rs"]
mod cluster;
#[path = "command/datums.rs"]
mod datums;
#[path = "command/figures.rs"]
mod figures;
#[path = "command/hudson.rs"]
mod hudson;
#[path = "command/json_schema.rs"]
mod json_schema;
#[path = "command/level_sources.rs"]
mod level_sources;
#[path = "command/output_file.rs"]
mod output_file;
#[path = "command/pipe.rs"]
mod pipe;
#[path = "command/portfolio/mod.rs"]
mod portfolio;
#[path = "command/quick_form.rs"]
mod quick_form;
#[path = "command/report_page.rs"]
mod report_page;
#[path = "command/review.rs"]
mod review;
#[path = "command/said.rs"]
mod said;
#[path = "command/scratch.rs"]
mod scratch;
#[path = "command/services.rs"]
mod services;
#[allow(dead_code)] // each test binary uses a part
mod support;
#[path = "command/units.rs"]
mod units;
#[path = "command/zone_meanings.rs"]
mod zone_meanings;
