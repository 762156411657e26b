//! Where a layer was read from.

use std::path::PathBuf;

/// The file and layer that zones or lines were read from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LayerOrigin {
    /// The file.
    pub path: PathBuf,
    /// The layer's name.
    pub layer: String,
    /// What the layer says of its own date, in words, such as `table last changed 2013-08-22`;
    /// `None` where it says nothing. Features may state dates of their own.
    pub dated: Option<String>,
}

impl LayerOrigin {
    /// The file's name without its folders.
    #[must_use]
    pub fn file_name(&self) -> String {
        self.path.file_name().map_or_else(
            || self.path.display().to_string(),
            |name| name.to_string_lossy().into_owned(),
        )
    }
}
