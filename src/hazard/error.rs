//! What can go wrong with a layer of flood zones.

use std::path::PathBuf;

use crate::crs::CrsError;
use crate::gis::GisError;
use crate::statement::StatementError;

/// A layer that cannot be used.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum HazardError {
    /// It cannot be opened or not read whole.
    #[error(transparent)]
    Gis(#[from] GisError),
    /// The schema cannot be read.
    #[error(transparent)]
    Schema(Box<StatementError>),
    /// No layer at all.
    #[error("{}: has no layers", path.display())]
    NoLayers {
        /// The file.
        path: PathBuf,
    },
    /// Several layers that could be meant.
    #[error(
        "{}: which layer holds the zones? name it as {}:LAYER; it has: {}",
        path.display(),
        path.display(),
        layers.join(", ")
    )]
    WhichLayer {
        /// The file.
        path: PathBuf,
        /// Its layers.
        layers: Vec<String>,
    },
    /// An option that says otherwise than the schema.
    #[error(
        "{option} says {stated:?}, but the schema {schema} says {by_schema:?} for every zone; accepted: one of the two, or the same twice"
    )]
    SchemaContradiction {
        /// The schema's name.
        schema: String,
        /// What the schema says.
        by_schema: String,
        /// The option.
        option: &'static str,
        /// What the option says.
        stated: String,
    },
    /// A layer without an attribute that the schema needs.
    #[error(
        "{}: layer {layer:?} has no attribute {needed:?} ({schema}); it has: {}",
        path.display(),
        attributes.join(", ")
    )]
    NoAttribute {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// The attribute that the schema asks for.
        needed: String,
        /// The schema's name.
        schema: String,
        /// The attributes that there are.
        attributes: Vec<String>,
    },
    /// No coordinate reference system.
    #[error(
        "{}: layer {layer:?} has no coordinate reference system; state it with --zones-crs",
        path.display()
    )]
    NoCrs {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
    },
    /// A coordinate reference system that cannot be used.
    #[error(
        "{}: layer {layer:?}: {source}; state the right one with --zones-crs",
        path.display()
    )]
    Crs {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// What is wrong with it.
        source: CrsError,
    },
    /// A stated system that is not the file's own.
    #[error(
        "{}: layer {layer:?} states its coordinate reference system as {file:?}, but --zones-crs says {stated:?}",
        path.display()
    )]
    CrsContradiction {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// What the file says.
        file: String,
        /// What the option says.
        stated: String,
    },
    /// Coordinates that are not degrees where the system says degrees.
    #[error(
        "{}: layer {layer:?} has the {axis} {value}, but its coordinate reference system {crs:?} is geographic: accepted are {} to {bound} degrees. If the file does not name its system (GeoJSON is then taken as WGS 84), state it with --zones-crs",
        path.display(),
        -bound
    )]
    NotDegrees {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// `longitude` or `latitude`.
        axis: &'static str,
        /// The number.
        value: f64,
        /// Greatest number that is accepted.
        bound: f64,
        /// The system's name.
        crs: String,
    },
}

impl From<StatementError> for HazardError {
    fn from(error: StatementError) -> Self {
        Self::Schema(Box::new(error))
    }
}
