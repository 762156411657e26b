//! The line along a pressure profile.

use crate::load::{PressureBand, PressureProfile};

/// Heights over the sill with their pressures, from the bottom up, in metres and pascals; at
/// a step one height has both.
pub(super) fn outline(profile: &PressureProfile) -> Vec<(f64, f64)> {
    let bands = profile.bands();
    let ends = bands.iter().flat_map(|band| [band.from, band.to]);
    let mut heights: Vec<f64> = ends.map(|height| height.value).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup();
    let mut line = Vec::new();
    for pair in heights.windows(2) {
        let (low, high) = (pair[0], pair[1]);
        let over = bands
            .iter()
            .filter(|band| band.from.value <= low && band.to.value >= high);
        let at = |height: f64| over.clone().map(|band| between(band, height)).sum();
        line.extend([(low, at(low)), (high, at(high))]);
    }
    line.dedup();
    line
}

/// The pressure of a band at a height within it.
fn between(band: &PressureBand, height: f64) -> f64 {
    let (from, to) = (band.from.value, band.to.value);
    let share = (height - from) / (to - from);
    band.at_from.value * (1.0 - share) + band.at_to.value * share
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::{Length, Pressure, meter, pascal};

    #[test]
    fn bands_add_and_steps_stay() {
        let metres = Length::new::<meter>;
        let low = PressureProfile::uniform(metres(0.0), metres(1.0), Pressure::new::<pascal>(10.0));
        let high = PressureProfile::uniform(metres(0.5), metres(2.0), Pressure::new::<pascal>(5.0));
        let line = outline(&low.plus(&high));
        let expected = [
            (0.0, 10.0),
            (0.5, 10.0),
            (0.5, 15.0),
            (1.0, 15.0),
            (1.0, 5.0),
            (2.0, 5.0),
        ];
        assert_eq!(line, expected);
    }
}
