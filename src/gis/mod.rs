//! The one door to GDAL: opening users' files, reading features, turning geometry into
//! [`geo`] types.
//!
//! Everything that GDAL does silently is made loud here: a missing file has a message,
//! only the formats named in [`RASTER_FORMATS`] and [`VECTOR_FORMATS`] are opened, and a
//! layer that could be read only in part is an error, never a shorter layer.

mod completeness;
mod curve;
mod date;
mod error;
mod feature_cursor;
mod feature_reader;
mod fetched;
mod geometry;
mod last_error;
mod layer_writer;
mod messages;
mod open;
mod shape;
mod start;
mod value;
mod wkb;

pub use error::GisError;
pub use feature_cursor::FeatureCursor;
pub use feature_reader::{FeatureReader, Record};
pub use fetched::Fetched;
pub use geometry::GeometryProblem;
pub use layer_writer::{
    FieldKind, Fill, LayerDraft, LayerFormat, LayerPlan, LayerShape, write_layer, write_layers,
};
pub use open::{RASTER_FORMATS, VECTOR_FORMATS, open_raster, open_vector};
pub use start::start;
pub use value::AttributeValue;

pub(crate) use date::stated_date;
pub(crate) use fetched::{CELL_METRES, FETCHED_FROM, FETCHED_ON, in_rfc3339, served_cell_size};
pub(crate) use messages::heard;
pub(crate) use value::append_number;
pub(crate) use wkb::WellKnownBinary;
