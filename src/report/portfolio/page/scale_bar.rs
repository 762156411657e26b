//! How long a distance is on the map.

use super::frame::Frame;
use crate::quantity::UnitSystem;
use crate::quantity::unit::{Length, meter};
use crate::report::drawing::nice::pixels;
use crate::report::drawing::round_distance;

pub(super) struct ScaleBar {
    /// Pixels.
    pub(super) length: String,
    pub(super) label: String,
    /// Where the bar is true.
    pub(super) latitude: String,
}

/// Greatest length of the bar, in pixels.
const LONGEST: f64 = 150.0;
/// A degree along a meridian of a sphere of 6371 km, the earth's mean radius: 6371 π / 180.
const METRES_A_DEGREE: f64 = 111_194.9;

impl ScaleBar {
    pub(super) fn of(frame: &Frame, units: UnitSystem) -> Self {
        let metres_a_pixel = METRES_A_DEGREE / frame.pixels_for_a_degree_of_latitude();
        let longest = Length::new::<meter>(LONGEST * metres_a_pixel);
        let (length, label) = round_distance(longest, units);
        let latitude = frame.middle_latitude();
        Self {
            length: pixels(length.get::<meter>() / metres_a_pixel),
            label,
            latitude: format!(
                "{:.1}° {}",
                latitude.abs(),
                if latitude < 0.0 { 'S' } else { 'N' }
            ),
        }
    }
}
