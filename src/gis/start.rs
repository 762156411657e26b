//! Once per process: drivers, and one error handler for all of them.

use std::sync::Once;

use gdal::DriverManager;
use gdal::config::set_error_handler;

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
    });
}
