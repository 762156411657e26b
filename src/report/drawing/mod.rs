//! Drawings as SVG: what they are drawn with, and one drawing a file.
//!
//! A [`Sheet`] takes marks in pixels and gives an `<svg>` element with title and description.
//! Looks are classes of `drawing.css`, which a page includes once; texts that users wrote are
//! escaped by the sheet.

#[cfg(test)]
mod around;
mod beside;
mod clear;
mod dimension;
mod elevation;
#[cfg(test)]
mod fixture;
mod footnotes;
mod hatch;
#[cfg(test)]
mod legible;
mod lettering;
pub(super) mod nice;
mod plan;
mod pressure;
mod scale;
mod scale_bar;
mod section;
mod sheet;
mod stage_chance;
mod texture;

pub(super) use elevation::elevation;
pub(super) use plan::{notes, plan};
pub(super) use pressure::pressure;
pub(super) use scale_bar::round_distance;
pub(super) use section::section;
pub(super) use sheet::DRAWING_STYLE;
pub(super) use stage_chance::stage_chance;
