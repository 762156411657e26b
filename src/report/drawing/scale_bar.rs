//! How long a distance is on a map.

use super::nice::at_most;
use super::sheet::{Anchor, Point, Sheet};
use crate::quantity::UnitSystem;
use crate::quantity::unit::{Length, foot, kilometer, meter};

/// The longest round distance that is at most so long, with its label.
pub(in crate::report) fn round_distance(longest: Length, units: UnitSystem) -> (Length, String) {
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

impl Sheet {
    /// A bar that shows a round distance, from `at` to the right and at most `longest` pixels
    /// long, its label behind it.
    pub(in crate::report) fn scale_bar(
        &mut self,
        at: Point,
        longest: f64,
        metres_a_pixel: f64,
        units: UnitSystem,
    ) {
        let (length, label) = round_distance(Length::new::<meter>(longest * metres_a_pixel), units);
        let (left, y) = at;
        let right = left + length.get::<meter>() / metres_a_pixel;
        let middle = f64::midpoint(left, right);
        self.group("scale-bar", |sheet| {
            let high = 5.0;
            sheet.rectangle("bar-full", (left, y - high), (middle - left, high));
            sheet.rectangle("bar-open", (middle, y - high), (right - middle, high));
            sheet.text("small", (right + 8.0, y), Anchor::Start, &label);
        });
    }
}
