//! Lines of a known flood level: cross-sections of a flood study and flood-level lines.
//!
//! A [`LineSchema`] (data) says how a publisher's layer is to be read; [`read_level_lines`]
//! reads one into a [`LevelLineMap`], which finds the lines around a place. A line whose
//! level has no datum or no unit is kept without a level and with a remark.

mod interpret;
mod kind;
mod line;
mod map;
mod read;
mod remark;
mod schema;

pub use kind::LineKind;
pub use line::LevelLine;
pub use map::LevelLineMap;
pub(crate) use map::Piece;
pub use read::{LineStatement, read_level_lines, read_level_lines_by};
pub use remark::LineRemark;
pub use schema::{LineRole, LineSchema};
