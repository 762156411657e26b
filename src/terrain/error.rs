//! What can go wrong with an elevation raster.

use std::path::PathBuf;

use crate::crs::CrsError;
use crate::gis::GisError;

/// A raster that cannot be used as terrain.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TerrainError {
    /// It cannot be opened or read.
    #[error(transparent)]
    Gis(#[from] GisError),
    /// More bands than one.
    #[error("{}: has {bands} bands; accepted: a raster of one band, {what}", path.display())]
    Bands {
        /// The raster.
        path: PathBuf,
        /// Its bands.
        bands: usize,
        /// What the one band holds.
        what: &'static str,
    },
    /// A band of complex numbers or an unknown type.
    #[error("{}: its cells are not real numbers", path.display())]
    CellType {
        /// The raster.
        path: PathBuf,
    },
    /// A scale or offset that makes no number.
    #[error("{}: scale {scale} and offset {offset} do not give heights", path.display())]
    Scale {
        /// The raster.
        path: PathBuf,
        /// Factor on the stored values.
        scale: f64,
        /// Added after it.
        offset: f64,
    },
    /// No position on the earth.
    #[error("{}: does not say where its cells lie (no usable geotransform)", path.display())]
    NoPosition {
        /// The raster.
        path: PathBuf,
    },
    /// No coordinate reference system.
    #[error("{}: has no coordinate reference system; state it with {option}", path.display())]
    NoCrs {
        /// The raster.
        path: PathBuf,
        /// The option that states it.
        option: &'static str,
    },
    /// A coordinate reference system that cannot be used.
    #[error("{}: {source}; state the right one with {option}", path.display())]
    Crs {
        /// The raster.
        path: PathBuf,
        /// What is wrong with it.
        source: CrsError,
        /// The option that states the right one.
        option: &'static str,
    },
    /// A place that the raster's system cannot express.
    #[error("{}: {source}", path.display())]
    Place {
        /// The raster.
        path: PathBuf,
        /// What is wrong.
        source: CrsError,
    },
    /// Something that neither the file nor the user states.
    #[error("{}: does not state its {what}; state it with {option} (accepted: {accepted})", path.display())]
    NotStated {
        /// The raster.
        path: PathBuf,
        /// What is missing.
        what: &'static str,
        /// The option that states it.
        option: &'static str,
        /// What it takes.
        accepted: &'static str,
    },
    /// A unit or datum in the file that is not known here.
    #[error("{}: its {what} {text:?} is not understood; accepted: {accepted}", path.display())]
    NotUnderstood {
        /// The raster.
        path: PathBuf,
        /// What is not understood.
        what: &'static str,
        /// As the file writes it.
        text: String,
        /// What would be.
        accepted: &'static str,
    },
    /// The file and the user state different things.
    #[error("{}: states its {what} as {file:?}, but {option} says {stated:?}; accepted: {option} with what the file states", path.display())]
    Contradiction {
        /// The raster.
        path: PathBuf,
        /// What they disagree on.
        what: &'static str,
        /// What the file says.
        file: String,
        /// The option.
        option: &'static str,
        /// What the option says.
        stated: String,
    },
    /// A place that lies outside the raster.
    #[error(
        "{}: does not reach longitude {longitude}, latitude {latitude}{}; \
         accepted: a terrain model that holds the site (x {:.6} to {:.6}, y {:.6} to {:.6} in {crs})",
        path.display(),
        .place.map(|[x, y]| format!(", which is x {x:.6}, y {y:.6} there")).unwrap_or_default(),
        lowest[0], highest[0], lowest[1], highest[1]
    )]
    DoesNotReach {
        /// The raster.
        path: PathBuf,
        /// Degrees east of the place.
        longitude: f64,
        /// Degrees north of the place.
        latitude: f64,
        /// The place in the raster's coordinates, where they can express it.
        place: Option<[f64; 2]>,
        /// The least x and y of the raster.
        lowest: [f64; 2],
        /// The greatest x and y of the raster.
        highest: [f64; 2],
        /// The raster's coordinate system.
        crs: String,
    },
    /// Heights that are not elevations.
    #[error("{}: its heights are {found} ({name:?}); accepted: heights above a vertical datum", path.display())]
    NotElevations {
        /// The raster.
        path: PathBuf,
        /// What they are.
        found: &'static str,
        /// The vertical system's name.
        name: String,
    },
}
