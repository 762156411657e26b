//! Once per process: drivers, and one error handler for all of them.

use std::sync::Once;

use gdal::DriverManager;
use gdal::config::{set_config_option, set_error_handler};

use super::messages;

static START: Once = Once::new();

/// Registers GDAL's drivers and the process-wide error handler, at the first call only.
///
/// Everything in this room calls it, so that a library user need not. GDAL has one handler
/// per process: a host program that installs its own after this call takes over the
/// messages, and errors then carry less detail.
pub fn start() {
    START.call_once(|| {
        DriverManager::register_all();
        set_error_handler(messages::hear);
        // The spatial index of a file geodatabase is not to be trusted: GDAL 3.12.1 finds no
        // feature at all by the one it wrote itself, without an error. Without the index it
        // compares the boxes of all rows.
        if let Err(error) = set_config_option("OPENFILEGDB_USE_SPATIAL_INDEX", "NO") {
            tracing::error!(%error, "a spatial index that may hide features stays in use");
        }
    });
}
