//! Flood zones: what a public map says about a place.
//!
//! A [`Schema`] (data, not code) says how a publisher's layer is to be read; users write
//! their own for maps of any country. [`read_zones_by`] reads a layer by its schema into a
//! [`ZoneMap`], which answers for a point with every zone that holds it, the worst first. What
//! a layer does not say is not made up: a level without a datum is refused with a remark, an
//! unknown code is [`ZoneClass::Unknown`], and a layer that could be read only in part is an
//! error.
//! [`read_level_lines`] does the same for lines of a known flood level.

mod area;
mod class;
mod code;
mod edges;
mod error;
mod here;
mod interpret;
mod layer;
mod layer_content;
mod layer_path;
mod level_lines;
mod map;
mod neighbourhood;
mod number;
mod origin;
mod part;
mod read;
mod remark;
mod schema;
mod shared;
mod zone;

pub use area::ZoneArea;
pub use class::ZoneClass;
pub use code::CodePattern;
pub use error::HazardError;
pub use here::ZonesHere;
pub use interpret::interpret;
pub use layer_content::LayerContent;
pub use layer_path::LayerPath;
pub(crate) use level_lines::Piece;
pub use level_lines::{
    LevelLine, LevelLineMap, LineKind, LineRemark, LineRole, LineSchema, LineStatement,
    read_level_lines, read_level_lines_by,
};
pub use map::ZoneMap;
pub use origin::LayerOrigin;
pub use part::Part;
pub use read::{ZoneStatement, read_zones, read_zones_by};
pub use remark::ZoneRemark;
pub use schema::{LevelRule, Role, Schema, SchemaChoice, ZoneRow};
pub use shared::SharedZones;
pub use zone::Zone;
