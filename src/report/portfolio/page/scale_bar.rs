//! How long a distance is on the map.

use super::frame::Frame;
use crate::quantity::UnitSystem;
use crate::quantity::unit::{Length, foot, kilometer, meter};
use crate::report::drawing::nice::{at_most, pixels};

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
        let (length, label) = round_length(longest, units);
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

fn round_length(longest: Length, units: UnitSystem) -> (Length, String) {
    match units {
        UnitSystem::Si => {
            let metres = at_most(longest.get::<meter>());
            let length = Length::new::<meter>(metres);
            if metres >= 1000.0 {
                (length, format!("{:.0} km", length.get::<kilometer>()))
            } else {
                (length, format!("{metres} m"))
            }
        }
        UnitSystem::Us => {
            let miles = longest.get::<foot>() / FEET_A_MILE;
            if miles >= 1.0 {
                let miles = at_most(miles);
                (
                    Length::new::<foot>(miles * FEET_A_MILE),
                    format!("{miles:.0} mi"),
                )
            } else {
                let feet = at_most(longest.get::<foot>());
                (Length::new::<foot>(feet), format!("{feet} ft"))
            }
        }
    }
}

/// NIST SP 811, appendix B.6.
const FEET_A_MILE: f64 = 5280.0;
