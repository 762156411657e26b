//! Which heights and distances a section shows, and how large.

use super::sills::Sills;
use super::{BOTTOM, LEFT, RIGHT, TOP};
use crate::assess::Assessment;
use crate::quantity::unit::{Length, foot, meter};
use crate::quantity::{Elevation, UnitSystem};
use crate::report::drawing::nice::at_most;
use crate::report::drawing::scale::Scale;
use crate::surroundings::SiteSection;

/// From metres to pixels, by way of the units that are printed.
pub(super) struct Frame {
    units: UnitSystem,
    /// Heights, upward.
    pub(super) up: Scale,
    /// Lowest and highest height shown.
    pub(super) heights: (f64, f64),
    /// Distances, towards A′.
    pub(super) along: Scale,
    /// Nearest to A and nearest to A′.
    pub(super) distances: (f64, f64),
    pub(super) height_unit: String,
    pub(super) distance_unit: &'static str,
    /// How many times heights are larger than distances.
    pub(super) raised: f64,
    /// Whether some ground lies beyond the heights shown.
    pub(super) is_cut: bool,
}

/// Ground is shown so far below and above what has to be seen, as a part of how high that is,
/// and at least metres: a hill must not flatten the water.
const GROUND_BEYOND: f64 = 1.5;
const GROUND_AT_LEAST: f64 = 2.5;

impl Frame {
    /// `None` where the section has no ground.
    pub(super) fn of(
        assessment: &Assessment<'_>,
        section: &SiteSection,
        sills: &Sills,
    ) -> Option<Self> {
        let units = assessment.method.units;
        let ground = section.points.iter().filter_map(|point| point.ground);
        let ground: Vec<f64> = ground.map(metres).collect();
        let (lowest, highest) = range(&ground)?;
        let mut seen: Vec<f64> = sills.elevations().map(metres).collect();
        let place = &assessment.place;
        seen.extend(place.ground.elevation().map(metres));
        seen.extend(
            place
                .design_level
                .as_ref()
                .map(|level| metres(level.elevation)),
        );
        if let Some(level) = &place.flood_level {
            let twice = level.decided.sd.map_or(0.0, |sd| 2.0 * sd.get::<meter>());
            let level = metres(level.decided.elevation);
            seen.extend([level - twice, level + twice]);
        }
        let (low, high) = range(&seen).unwrap_or((lowest, highest));
        let beyond = (GROUND_BEYOND * (high - low)).max(GROUND_AT_LEAST);
        let shown = (
            low.min(lowest.max(low - beyond)),
            high.max(highest.min(high + beyond)),
        );
        let ends = (
            section.points.first()?.along.get::<meter>(),
            section.points.last()?.along.get::<meter>(),
        );
        let pixels_along = (RIGHT - LEFT) / (ends.1 - ends.0).max(1e-6);
        // A tenth of the plot stays free below and above.
        let pixels_up = 0.8 * (BOTTOM - TOP) / (shown.1 - shown.0).max(0.3);
        let raised = rounded_down(pixels_up / pixels_along);
        let span = (BOTTOM - TOP) / (raised * pixels_along);
        let middle = f64::midpoint(shown.0, shown.1);
        let heights = (middle - span / 2.0, middle + span / 2.0);
        let unit = |metres: f64| in_units(Length::new::<meter>(metres), units);
        let (heights_shown, distances) = (
            (unit(heights.0), unit(heights.1)),
            (unit(ends.0), unit(ends.1)),
        );
        let symbol = match units {
            UnitSystem::Us => "ft",
            UnitSystem::Si => "m",
        };
        Some(Self {
            units,
            up: Scale::between(heights_shown, (BOTTOM, TOP)),
            heights: heights_shown,
            along: Scale::between(distances, (LEFT, RIGHT)),
            distances,
            height_unit: format!("{symbol} {}", assessment.site.threshold.datum()),
            distance_unit: symbol,
            raised,
            is_cut: lowest < heights.0 || highest > heights.1,
        })
    }

    /// Where a height lies on the sheet.
    pub(super) fn height(&self, elevation: Elevation) -> f64 {
        self.up.at(in_units(elevation.height(), self.units))
    }

    /// Where a distance from the site lies on the sheet.
    pub(super) fn distance(&self, along: Length) -> f64 {
        self.along.at(in_units(along, self.units))
    }

    pub(super) fn site(&self) -> f64 {
        self.along.at(0.0)
    }
}

/// To two digits, whole numbers from two on: it is told, and may be any number.
fn rounded_down(number: f64) -> f64 {
    if number < 2.0 {
        return at_most(number);
    }
    let step = 10_f64.powf(number.log10().floor() - 1.0).max(1.0);
    (number / step).floor() * step
}

fn in_units(length: Length, units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Us => length.get::<foot>(),
        UnitSystem::Si => length.get::<meter>(),
    }
}

/// All heights of an assessment stand on the datum of its threshold.
fn metres(elevation: Elevation) -> f64 {
    elevation.height().get::<meter>()
}

fn range(numbers: &[f64]) -> Option<(f64, f64)> {
    let lowest = numbers.iter().copied().reduce(f64::min)?;
    let highest = numbers.iter().copied().reduce(f64::max)?;
    Some((lowest, highest))
}
