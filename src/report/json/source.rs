//! What an answer was read from.

use schemars::JsonSchema;
use serde::Serialize;

use crate::assess::MapRead;

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(in crate::report) struct JsonSource {
    /// What it was read for, such as `flood zones`.
    pub(super) read_for: String,
    /// The file's name without its folders.
    pub(super) file: String,
    /// Null for a raster.
    pub(super) layer: Option<String>,
    /// What it says of its own date, in words; null where it says nothing.
    pub(super) dated: Option<String>,
    /// The address of the service that it was fetched from; null where it was none.
    pub(super) address: Option<String>,
    /// When it was fetched (RFC 3339); null where it was not.
    pub(super) fetched: Option<String>,
    /// What the service says of the right to use it; null where it says nothing.
    pub(super) licence: Option<String>,
    /// What was noticed on the way, in words; null where nothing was.
    pub(super) noted: Option<String>,
}

impl JsonSource {
    pub(in crate::report) fn of(map: &MapRead) -> Self {
        let fetched = map.fetched.as_ref();
        Self {
            read_for: map.read_for.clone(),
            file: map.file.clone(),
            layer: map.layer.clone(),
            dated: map.dated.clone(),
            address: fetched.map(|fetched| fetched.from.clone()),
            fetched: fetched.map(|fetched| fetched.on.clone()),
            licence: fetched.and_then(|fetched| fetched.licence.clone()),
            noted: fetched.and_then(|fetched| fetched.noted.clone()),
        }
    }
}
