//! Once per process: drivers, and one error handler for all of them.

use std::sync::Once;

use gdal::DriverManager;
use gdal::config::{get_config_option, set_config_option, set_error_handler};

use super::messages;

static START: Once = Once::new();

/// Megabytes that GDAL may hold of decoded blocks, for all files and threads together.
///
/// Its own default is a twentieth of the machine's memory. But a raster's tiles follow the
/// blocks of its file, each is asked for once, and it is the terrain room that keeps them: what
/// GDAL keeps besides is held twice. It only has to hold what a tile is cut from: a few
/// strips, or one block that is too large for a tile.
const BLOCK_CACHE_MEGABYTES: &str = "8";

/// Registers GDAL's drivers and the process-wide error handler, at the first call only.
///
/// Everything in this room calls it, so that a library user need not. GDAL has one handler
/// per process: a host program that installs its own after this call takes over the
/// messages, and errors then carry less detail.
pub fn start() {
    START.call_once(|| {
        // GDAL reads it once; who runs the program may still say something else in the
        // environment.
        prefer("GDAL_CACHEMAX", BLOCK_CACHE_MEGABYTES);
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

/// Sets an option of GDAL that nobody has set.
fn prefer(option: &str, value: &str) {
    if get_config_option(option, "").is_ok_and(|set| !set.is_empty()) {
        return;
    }
    if let Err(error) = set_config_option(option, value) {
        tracing::warn!(%error, option, "GDAL keeps its default");
    }
}
