//! What can go wrong with a layer of flood zones or lines.

use std::path::PathBuf;

use super::LayerContent;
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
        "{}: which layer holds the {}? name it as {}:LAYER; it has: {}",
        path.display(),
        content.plural(),
        path.display(),
        layers.join(", ")
    )]
    WhichLayer {
        /// The file.
        path: PathBuf,
        /// What the layer should hold.
        content: LayerContent,
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
    /// A layer without the attribute that it is read for.
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
        "{}: layer {layer:?} has no coordinate reference system; state it with {}-crs",
        path.display(),
        content.option()
    )]
    NoCrs {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// What the layer is read for.
        content: LayerContent,
    },
    /// A coordinate reference system that cannot be used.
    #[error(
        "{}: layer {layer:?}: {source}; state the right one with {}-crs",
        path.display(),
        content.option()
    )]
    Crs {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// What the layer is read for.
        content: LayerContent,
        /// What is wrong with it.
        source: Box<CrsError>,
    },
    /// A stated system that is not the file's own.
    #[error(
        "{}: layer {layer:?} states its coordinate reference system as {file:?}, but {option}-crs says {stated:?}; accepted: {option}-crs with what the file states",
        path.display(),
        option = content.option()
    )]
    CrsContradiction {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// What the layer is read for.
        content: LayerContent,
        /// What the file says.
        file: String,
        /// What the option says.
        stated: String,
    },
    /// Coordinates that are not degrees where the system says degrees.
    #[error(
        "{}: layer {layer:?} has the {axis} {value}, but its coordinate reference system {crs:?} is geographic: accepted are {} to {bound} degrees. If the file does not name its system (GeoJSON is then taken as WGS 84), state it with {}-crs",
        path.display(),
        -bound,
        content.option()
    )]
    NotDegrees {
        /// The file.
        path: PathBuf,
        /// The layer.
        layer: String,
        /// What the layer is read for.
        content: LayerContent,
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
