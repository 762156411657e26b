//! Why a building cannot be assessed before the user mends something.

use crate::barrier::DesignError;
use crate::crs::{CrsError, DatumError};
use crate::level::LevelError;
use crate::quantity::{Elevation, IncomparableDatums, VerticalDatum};
use crate::site::{Site, Threshold};
use crate::statement::Place;
use crate::terrain::TerrainError;

/// A fault that has to be mended before there is an answer.
#[derive(Debug, thiserror::Error)]
pub enum AssessError {
    /// The threshold and a source stand on different datums.
    #[error(transparent)]
    Datum(#[from] Box<OtherDatum>),
    /// A terrain file cannot be read.
    #[error(transparent)]
    Terrain(#[from] TerrainError),
    /// A raster or a layer of levels cannot be read.
    #[error(transparent)]
    Level(#[from] LevelError),
    /// A place has no coordinates in a layer's system.
    #[error(transparent)]
    Crs(#[from] CrsError),
    /// A barrier cannot be designed.
    #[error("opening {opening:?}: {error}")]
    Barrier {
        /// The opening.
        opening: String,
        /// Why.
        error: Box<DesignError>,
    },
    /// What all barriers together ask for cannot be worked out.
    #[error(transparent)]
    Behind(#[from] Box<DesignError>),
    /// Two elevations do not share a datum.
    #[error(transparent)]
    Datums(#[from] IncomparableDatums),
}

/// The threshold and a source stand on different datums, and neither grid nor stated offset
/// leads from one to the other.
#[derive(Debug, thiserror::Error)]
#[error(
    "{place}: threshold {threshold:?}: it is on {threshold_datum}, but {what} is on {datum}: \
     heights on two datums cannot be compared, and {error}"
)]
pub struct OtherDatum {
    /// Where the threshold was stated.
    pub place: Place,
    /// The threshold, in the units it was stated in.
    pub threshold: String,
    /// Its datum.
    pub threshold_datum: VerticalDatum,
    /// What stands on the other datum.
    pub what: String,
    /// The other datum.
    pub datum: VerticalDatum,
    /// Why there is no conversion, and what would give one.
    pub error: DatumError,
}

impl AssessError {
    /// A height that cannot be put on the datum of the threshold.
    pub(super) fn other_datum(
        site: &Site,
        what: &str,
        elevation: Elevation,
        error: DatumError,
    ) -> Self {
        Self::Datum(Box::new(OtherDatum {
            place: site.threshold_place.clone(),
            threshold: match site.threshold {
                Threshold::Stated(elevation) => site.units.elevation(elevation),
                Threshold::AboveGround { height, .. } => {
                    format!("{} above the ground", site.units.height(height))
                }
            },
            threshold_datum: site.threshold.datum(),
            what: what.to_owned(),
            datum: elevation.datum(),
            error,
        }))
    }
}
