//! Breaking waves: the triangles against the code's numbers.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use proptest::prelude::*;
use sillmark::load::{Behind, BreakingWave, RiskCategory, Salinity};
use sillmark::quantity::unit::{foot, in_pounds_per_foot, pound_per_square_foot};
use sillmark::statement::Choice;

use super::feet;

fn wave(depth: f64, sill: f64, category: RiskCategory, behind: Behind) -> BreakingWave {
    BreakingWave {
        stillwater_depth: feet(depth),
        sill_above_ground: feet(sill),
        category,
        weight: Salinity::Salt.specific_weight(),
        behind,
    }
}

fn categories() -> impl Strategy<Value = RiskCategory> {
    prop::sample::select(RiskCategory::CHOICES).prop_map(|(_, category)| category)
}

proptest! {
    #[test]
    fn triangles_are_within_one_percent_of_the_code(
        depth in 0.1..15.0_f64,
        sill in -1.0..5.0_f64,
        category in categories(),
        behind in prop::sample::select(vec![Behind::Dry, Behind::EqualWater]),
    ) {
        let wave = wave(depth, sill, category, behind);
        let triangles = wave.profile().resultant().force;
        assert_relative_eq!(triangles.value, wave.code_force().value, max_relative = 0.01);
        // The code rounds down, so the triangles are the safe side.
        prop_assert!(triangles > wave.code_force());
    }

    #[test]
    fn the_greatest_pressure_is_at_the_stillwater(
        depth in 0.1..15.0_f64,
        sill in -1.0..5.0_f64,
        category in categories(),
    ) {
        let wave = wave(depth, sill, category, Behind::Dry);
        let (greatest, at) = wave.profile().greatest();
        assert_relative_eq!(greatest.value, wave.greatest_pressure().value, max_relative = 1e-9);
        assert_abs_diff_eq!(at.get::<foot>(), depth - sill, epsilon = 1e-9);
    }

    #[test]
    fn a_deeper_wave_loads_more(depth in 0.1..15.0_f64, more in 0.01..2.0_f64, category in categories()) {
        let force = |depth| wave(depth, 0.0, category, Behind::Dry).profile().resultant().force;
        prop_assert!(force(depth + more) > force(depth));
    }
}

#[test]
fn the_shape_over_the_sill() {
    // 4 ft of still water over the ground, the sill 1 ft above it, category II, 64 pcf.
    let profile = wave(4.0, 1.0, RiskCategory::II, Behind::Dry).profile();
    for (height, expected) in [
        (-1.0, 2.2 * 256.0),
        (3.0, (2.8 + 1.2) * 256.0),
        (7.8, 0.0),
        (7.9, 0.0),
        // At the sill: standing 8.8 − 1 ft of water, and a quarter of the way up to the peak.
        (0.0, 7.8 * 64.0 + 2.8 * 256.0 / 4.0),
    ] {
        let pressure = profile.pressure_at(feet(height));
        assert_abs_diff_eq!(
            pressure.get::<pound_per_square_foot>(),
            expected,
            epsilon = 1e-9
        );
    }
    let crest = wave(4.0, 1.0, RiskCategory::II, Behind::Dry).crest();
    assert_abs_diff_eq!(crest.get::<foot>(), 7.8, epsilon = 1e-9);
}

#[test]
fn water_behind_takes_its_own_load_off() {
    let (dry, wet) = (
        wave(4.0, 1.0, RiskCategory::III, Behind::Dry),
        wave(4.0, 1.0, RiskCategory::III, Behind::EqualWater),
    );
    let difference = dry.profile().resultant().force - wet.profile().resultant().force;
    assert_abs_diff_eq!(
        in_pounds_per_foot(difference),
        64.0 * 16.0 / 2.0,
        epsilon = 1e-9
    );
    let rounded = dry.code_force() - wet.code_force();
    assert_abs_diff_eq!(
        in_pounds_per_foot(rounded),
        0.5 * 64.0 * 16.0,
        epsilon = 1e-9
    );
}

/// The code puts the whole force at the stillwater surface; the triangles' resultant lies
/// lower, by the centroids 2.2/3 and (0 + 1 + 2.2)/3 of the depth.
#[test]
fn the_code_acts_higher_than_the_triangles() {
    for (category, cp) in [(RiskCategory::I, 1.6), (RiskCategory::IV, 3.5)] {
        let wave = wave(1.0, 0.0, category, Behind::Dry);
        let lower = wave.profile().resultant().height.get::<foot>();
        let centroid = (1.1 * cp * 3.2 / 3.0 + 2.42 * 2.2 / 3.0) / (1.1 * cp + 2.42);
        assert_abs_diff_eq!(lower, centroid, epsilon = 1e-9);
        assert!(wave.code_resultant().moment > wave.profile().resultant().moment);
        assert_abs_diff_eq!(
            wave.code_resultant().height.get::<foot>(),
            1.0,
            epsilon = 1e-9
        );
    }
}

#[test]
fn a_wave_without_depth_is_refused() {
    for depth in [0.0, -1.0, f64::NAN] {
        assert!(
            wave(depth, 0.0, RiskCategory::I, Behind::Dry)
                .checked()
                .is_err()
        );
    }
    assert!(
        wave(1.0, f64::INFINITY, RiskCategory::I, Behind::Dry)
            .checked()
            .is_err()
    );
}
