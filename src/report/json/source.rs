//! What an answer was read from.

use schemars::JsonSchema;
use serde::Serialize;

use crate::assess::MapRead;

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonSource {
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
    /// When it was fetched, as HTTP writes a date; null where it was not.
    pub(super) fetched: Option<String>,
}

impl JsonSource {
    pub(super) fn of(map: &MapRead) -> Self {
        Self {
            read_for: map.read_for.clone(),
            file: map.file.clone(),
            layer: map.layer.clone(),
            dated: map.dated.clone(),
            address: map.fetched.as_ref().map(|fetched| fetched.from.clone()),
            fetched: map.fetched.as_ref().map(|fetched| fetched.on.clone()),
        }
    }
}
