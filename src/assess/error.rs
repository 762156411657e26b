//! Why a building cannot be assessed before the user mends something.

use crate::crs::CrsError;
use crate::quantity::{IncomparableDatums, VerticalDatum};
use crate::statement::Place;
use crate::terrain::TerrainError;

/// A fault that has to be mended before there is an answer.
#[derive(Debug, thiserror::Error)]
pub enum AssessError {
    /// The threshold and a source stand on different datums.
    #[error(
        "{place}: threshold {threshold:?}: it is on {threshold_datum}, but {what} is on {datum}: heights on two datums cannot be compared; \
         accepted: {accepted}"
    )]
    Datum {
        /// Where the threshold was stated.
        place: Place,
        /// The threshold, in the units it was stated in.
        threshold: String,
        /// Its datum.
        threshold_datum: VerticalDatum,
        /// What stands on the other datum.
        what: String,
        /// The other datum.
        datum: VerticalDatum,
        /// What would mend it.
        accepted: String,
    },
    /// A terrain file cannot be read.
    #[error(transparent)]
    Terrain(#[from] TerrainError),
    /// A place has no coordinates in a layer's system.
    #[error(transparent)]
    Crs(#[from] CrsError),
    /// Two elevations do not share a datum.
    #[error(transparent)]
    Datums(#[from] IncomparableDatums),
}
