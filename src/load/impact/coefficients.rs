//! How depth and obstacles keep debris from a building.

use crate::load::LoadError;
use crate::load::error::not_negative;
use crate::quantity::Length;
use crate::quantity::unit::foot;
use crate::statement::Choice;

/// Where debris meets the building, as far as its depth coefficient asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DebrisZone {
    /// A floodway or a coastal zone V: full force at every depth.
    FloodwayOrCoastal,
    /// Another zone A: less in shallow water.
    Other,
}

impl Choice for DebrisZone {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("floodway or zone V", Self::FloodwayOrCoastal),
        ("other", Self::Other),
    ];
}

/// Depth coefficient CD of debris: 1.0 in floodways and zone V; elsewhere 0 up to 1 ft of
/// still water, 0.25 at 2 ft, 0.5 at 3 ft, 0.75 at 4 ft, 1.0 from 5 ft, straight between.
///
/// Reference: FEMA P-55 (2011) vol. II table 8-3, ASCE 7-16 table C5.4-1 (from memory, the
/// tables' numbers too).
///
/// # Errors
/// [`LoadError`] for a negative depth.
///
/// ```
/// use sillmark::load::{DebrisZone, debris_depth_coefficient};
/// use sillmark::quantity::unit::{Length, foot};
/// let at = |feet| debris_depth_coefficient(DebrisZone::Other, Length::new::<foot>(feet));
/// assert!((at(3.0)? - 0.5).abs() < 1e-12);
/// # Ok::<(), sillmark::load::LoadError>(())
/// ```
pub fn debris_depth_coefficient(
    zone: DebrisZone,
    stillwater_depth: Length,
) -> Result<f64, LoadError> {
    let depth = not_negative("stillwater depth", stillwater_depth)?.get::<foot>();
    Ok(match zone {
        DebrisZone::FloodwayOrCoastal => 1.0,
        DebrisZone::Other => ((depth - 1.0) / 4.0).clamp(0.0, 1.0),
    })
}

/// Blockage coefficient CB by the width of the open path before the building: 0 up to 5 ft,
/// 0.2 at 10 ft, 0.6 at 20 ft, 1.0 from 30 ft, straight between.
///
/// Reference: FEMA P-55 (2011) vol. II table 8-4, ASCE 7-16 table C5.4-2 (from memory, the
/// tables' numbers too).
///
/// # Errors
/// [`LoadError`] for a negative width.
pub fn blockage_coefficient(path_width: Length) -> Result<f64, LoadError> {
    let width = not_negative("width of the open path", path_width)?.get::<foot>();
    Ok(((width - 5.0) / 25.0).clamp(0.0, 1.0))
}
