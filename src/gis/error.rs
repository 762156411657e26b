//! What can go wrong between a path and its cells or features.

use std::path::PathBuf;

use super::GeometryProblem;

/// A file that could not be opened or read, or not read whole.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum GisError {
    /// No file or folder of that name, or one that may not be read.
    #[error("{}: cannot be read: {reason}; accepted: {accepted}", path.display())]
    Missing {
        /// The path as it was given.
        path: PathBuf,
        /// What the operating system says.
        reason: String,
        /// What would be accepted.
        accepted: String,
    },
    /// One of GDAL's virtual file systems, which reach into archives and the network.
    #[error(
        "{}: virtual and network paths (\"/vsi…\", \"scheme://\") are not opened; accepted: a file on this machine",
        path.display()
    )]
    VirtualPath {
        /// The path as it was given.
        path: PathBuf,
    },
    /// A file of another format, or a damaged one.
    #[error("{}: cannot be opened{}; accepted: {accepted}", path.display(), because(detail))]
    Format {
        /// The path as it was given.
        path: PathBuf,
        /// What would be accepted.
        accepted: String,
        /// GDAL's messages.
        detail: String,
    },
    /// A raster whose compression this build cannot undo.
    #[error(
        "{}: its compression is not built in ({detail}); rewrite it with: gdal_translate -co COMPRESS=DEFLATE IN.tif OUT.tif",
        path.display()
    )]
    Compression {
        /// The path as it was given.
        path: PathBuf,
        /// GDAL's messages.
        detail: String,
    },
    /// An opened file that fails when it is read.
    #[error("{}: reading failed{}: the file is damaged or cut short; accepted: a whole file", path.display(), because(detail))]
    Read {
        /// The path as it was given.
        path: PathBuf,
        /// GDAL's messages.
        detail: String,
    },
    /// A layer name that the file does not have.
    #[error("{}: has no layer {layer:?}; it has: {}", path.display(), present.join(", "))]
    NoSuchLayer {
        /// The path as it was given.
        path: PathBuf,
        /// The layer asked for.
        layer: String,
        /// The layers there are.
        present: Vec<String>,
    },
    /// A file with more than one layer, or none, and no name to choose by.
    #[error(
        "{}: has {} layers; accepted: a file with one, or the name of one of its layers: {}",
        path.display(),
        present.len(),
        present.join(", ")
    )]
    SeveralLayers {
        /// The path as it was given.
        path: PathBuf,
        /// The layers there are.
        present: Vec<String>,
    },
    /// A layer that ended before all its features were read.
    #[error(
        "{}: layer {layer:?}: only {read} of {counted} features could be read{}",
        path.display(),
        because(detail)
    )]
    Incomplete {
        /// The path as it was given.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// Features that were read before it ended.
        read: u64,
        /// Features that the layer says it has.
        counted: u64,
        /// GDAL's messages.
        detail: String,
    },
    /// A layer whose last feature is not there, in a format that keeps them in order.
    #[error(
        "{}: layer {layer:?}: the last of its {counted} features cannot be read{}: the file is cut short",
        path.display(),
        because(detail)
    )]
    NoLast {
        /// The path as it was given.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// Features that the layer says it has.
        counted: u64,
        /// GDAL's messages.
        detail: String,
    },
    /// A file that is shorter than its own header says.
    #[error(
        "{}: is cut short: its header speaks of {stated} bytes, the file has {actual}",
        path.display()
    )]
    CutShort {
        /// The file, which may be one beside the path that was given.
        path: PathBuf,
        /// Bytes that the header announces.
        stated: u64,
        /// Bytes that there are.
        actual: u64,
    },
    /// A shapefile whose parts disagree about the number of records.
    #[error(
        "{}: has {rows} rows but {} has {shapes} shapes: one of the two is incomplete",
        table.display(),
        index.display()
    )]
    UnequalParts {
        /// The attribute table, `.dbf`.
        table: PathBuf,
        /// Its records.
        rows: u64,
        /// The index, `.shx`.
        index: PathBuf,
        /// Its records.
        shapes: u64,
    },
    /// A layer that could not be written whole.
    #[error("{}: cannot be written{}", path.display(), because(detail))]
    NotWritten {
        /// The file that was to be written.
        path: PathBuf,
        /// GDAL's messages.
        detail: String,
    },
    /// A geometry that the layer may not have.
    #[error("{}: layer {layer:?}: feature {feature}: {problem}", path.display())]
    Geometry {
        /// The path as it was given.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// The feature's identifier.
        feature: String,
        /// What is wrong with it.
        problem: GeometryProblem,
    },
}

/// `: detail`, or nothing where there is none.
fn because(detail: &str) -> String {
    if detail.is_empty() {
        String::new()
    } else {
        format!(": {detail}")
    }
}
