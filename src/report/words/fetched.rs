//! What came from services.

use crate::assess::MapRead;

/// A line for each map that a service gave: what it was read for, where it came from and when, by
/// which licence, and what was noticed on the way.
pub(in crate::report) fn fetched_lines(maps: &[MapRead]) -> Vec<String> {
    let fetched = maps.iter().filter_map(|map| {
        let fetched = map.fetched.as_ref()?;
        let layer = match &map.layer {
            Some(layer) => format!("layer {layer} of "),
            None => String::new(),
        };
        let licence = fetched.licence.as_ref();
        let licence = licence.map(|licence| format!("; licence: {licence}"));
        let noted = fetched.noted.as_ref();
        let noted = noted.map(|noted| format!("; noted: {noted}"));
        Some(format!(
            "{}: {layer}{fetched}{}{}",
            map.read_for,
            licence.unwrap_or_default(),
            noted.unwrap_or_default()
        ))
    });
    fetched.collect()
}
