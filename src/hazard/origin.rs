//! Where a layer was read from.

use std::path::PathBuf;

use crate::gis::Fetched;

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
    /// The service that the layer was fetched from; `None` where it was none.
    pub fetched: Option<Fetched>,
}

impl LayerOrigin {
    /// What the layer is known by: the service that it was fetched from and when, else its file.
    #[must_use]
    pub fn title(&self) -> String {
        match &self.fetched {
            Some(fetched) => fetched.to_string(),
            None => self.file_name(),
        }
    }

    /// The file's name without its folders.
    #[must_use]
    pub fn file_name(&self) -> String {
        self.path.file_name().map_or_else(
            || self.path.display().to_string(),
            |name| name.to_string_lossy().into_owned(),
        )
    }
}
