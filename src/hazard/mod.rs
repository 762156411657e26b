//! Flood zones: what a public map says about a place.
//!
//! A [`Schema`] (data, not code) says how a publisher's layer is to be read; users write their
//! own for maps of any country. [`read_zones_by`] reads a layer by its schema into a [`ZoneMap`], which answers for a point with every zone that holds it,
//! the worst first. What a layer does not say is not made up: a level without a datum is
//! refused with a remark, an unknown code is [`ZoneClass::Unknown`], and a layer that could
//! be read only in part is an error.

mod class;
mod code;
mod error;
mod interpret;
mod layer_path;
mod map;
mod number;
mod polygon;
mod read;
mod remark;
mod schema;
mod zone;

pub use class::ZoneClass;
pub use code::CodePattern;
pub use error::HazardError;
pub use interpret::interpret;
pub use layer_path::LayerPath;
pub use map::{ZoneMap, ZonesHere};
pub use read::{Around, ZoneStatement, read_zones, read_zones_by};
pub use remark::ZoneRemark;
pub use schema::{LevelRule, Role, Schema, SchemaChoice, ZoneRow};
pub use zone::Zone;
