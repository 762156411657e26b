//! What came from services.

use crate::assess::MapRead;

/// A line for each map that a service gave: what it was read for, where it came from and when.
pub(in crate::report) fn fetched_lines(maps: &[MapRead]) -> Vec<String> {
    let fetched = maps.iter().filter_map(|map| {
        let fetched = map.fetched.as_ref()?;
        let layer = match &map.layer {
            Some(layer) => format!("layer {layer} of "),
            None => String::new(),
        };
        Some(format!("{}: {layer}{fetched}", map.read_for))
    });
    fetched.collect()
}
