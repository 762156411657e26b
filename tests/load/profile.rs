//! The algebra of pressure profiles, against sums over thin strips.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use proptest::prelude::*;
use sillmark::load::{PressureBand, PressureProfile, Salinity};
use sillmark::quantity::Pressure;
use sillmark::quantity::unit::{
    Length, foot, in_newtons_per_metre, in_pounds_per_foot, meter, newton, newtons_per_cubic_metre,
    pascal, pound_per_square_foot, pounds_per_cubic_foot,
};

use super::feet;

fn metres(number: f64) -> Length {
    Length::new::<meter>(number)
}

fn band() -> impl Strategy<Value = PressureBand> {
    (
        -3.0..3.0_f64,
        0.01..4.0_f64,
        -5e4..5e4_f64,
        -5e4..5e4_f64,
        any::<bool>(),
    )
        .prop_map(|(low, tall, first, second, upside_down)| {
            let ends = if upside_down {
                (low + tall, low)
            } else {
                (low, low + tall)
            };
            PressureBand {
                from: metres(ends.0),
                to: metres(ends.1),
                at_from: Pressure::new::<pascal>(first),
                at_to: Pressure::new::<pascal>(second),
            }
        })
}

fn profile() -> impl Strategy<Value = PressureProfile> {
    prop::collection::vec(band(), 0..5).prop_map(|bands| {
        bands
            .into_iter()
            .fold(PressureProfile::default(), |sum, band| {
                sum.plus(&PressureProfile::band(band))
            })
    })
}

/// Force and moment about the sill by thin strips, from the pressures alone.
fn by_strips(profile: &PressureProfile, from: f64, to: f64) -> (f64, f64) {
    let count = 4000_u32;
    let thick = (to - from) / f64::from(count);
    (0..count).fold((0.0, 0.0), |(force, moment), strip| {
        let height = from + (f64::from(strip) + 0.5) * thick;
        let pressure = profile.pressure_at(metres(height)).get::<pascal>();
        (force + pressure * thick, moment + pressure * thick * height)
    })
}

proptest! {
    #[test]
    fn sums_are_those_of_thin_strips(profile in profile(), from in -2.0..2.0_f64, tall in 0.1..3.0_f64) {
        let to = from + tall;
        let clipped = profile.clipped(metres(from), metres(to));
        let (force, moment) = by_strips(&profile, from, to);
        // Steps inside a strip and the curve of the moment: a few parts in ten thousand of
        // the greatest load that five bands can be.
        let scale = 5.0 * 5e4 * tall;
        prop_assert!((in_newtons_per_metre(clipped.resultant().force) - force).abs() < 1e-3 * scale);
        prop_assert!((clipped.resultant().moment.get::<newton>() - moment).abs() < 5e-3 * scale);
    }

    #[test]
    fn a_cut_takes_nothing_away(profile in profile(), cut in -4.0..8.0_f64) {
        let (whole, cut) = (profile.resultant(), metres(cut));
        let below = profile.clipped(metres(-100.0), cut).resultant();
        let above = profile.clipped(cut, metres(100.0)).resultant();
        assert_abs_diff_eq!((below.force + above.force).value, whole.force.value, epsilon = 1e-6);
        assert_abs_diff_eq!((below.moment + above.moment).value, whole.moment.value, epsilon = 1e-6);
    }

    #[test]
    fn planks_share_the_whole_force(profile in profile(), planks in 1_u32..12) {
        let (bottom, tall) = (-4.0, 12.0);
        let plank = tall / f64::from(planks);
        let shares: f64 = (0..planks)
            .map(|each| bottom + f64::from(each) * plank)
            .map(|from| profile.force_between(metres(from), metres(from + plank)).value)
            .sum();
        assert_abs_diff_eq!(shares, profile.resultant().force.value, epsilon = 1e-6);
    }

    #[test]
    fn loads_add_and_scale(one in profile(), other in profile(), factor in -3.0..3.0_f64) {
        let (both, apart) = (one.plus(&other).resultant(), (one.resultant(), other.resultant()));
        assert_abs_diff_eq!(both.force.value, (apart.0.force + apart.1.force).value, epsilon = 1e-6);
        let scaled = one.scaled(factor).resultant();
        assert_abs_diff_eq!(scaled.moment.value, apart.0.moment.value * factor, epsilon = 1e-6);
    }

    #[test]
    fn no_pressure_is_above_the_greatest(profile in profile(), height in -4.0..8.0_f64) {
        let (greatest, at) = profile.greatest();
        prop_assert!(profile.pressure_at(metres(height)) <= greatest + Pressure::new::<pascal>(1e-6));
        prop_assert!((profile.pressure_at(at) - greatest).abs() < Pressure::new::<pascal>(1e-6) || greatest.value == 0.0);
    }

    #[test]
    fn force_grows_with_the_depth(depth in 0.0..10.0_f64, more in 0.001..1.0_f64) {
        let force = |depth| PressureProfile::still_water(metres(depth), Salinity::Fresh.specific_weight()).resultant().force;
        prop_assert!(force(depth + more) > force(depth));
    }

    #[test]
    fn both_systems_of_units_give_the_same(depth in 0.1..20.0_f64, weight in 60.0..70.0_f64) {
        // Each in its own numbers, γ·h²/2 and γ·h³/6; the factors are exact (NIST SP 811).
        let customary = PressureProfile::still_water(feet(depth), pounds_per_cubic_foot(weight)).resultant();
        assert_relative_eq!(in_pounds_per_foot(customary.force), weight * depth * depth / 2.0, max_relative = 1e-12);
        let (si_depth, si_weight) = (depth * 0.3048, weight * 4.448_221_615_260_5 / 0.3048_f64.powi(3));
        let si = PressureProfile::still_water(metres(si_depth), newtons_per_cubic_metre(si_weight)).resultant();
        assert_relative_eq!(in_newtons_per_metre(si.force), si_weight * si_depth * si_depth / 2.0, max_relative = 1e-12);
        assert_relative_eq!(si.force.value, customary.force.value, max_relative = 1e-12);
        assert_relative_eq!(si.moment.value, customary.moment.value, max_relative = 1e-12);
        assert_relative_eq!(si.height.get::<foot>(), depth / 3.0, max_relative = 1e-12);
    }
}

#[test]
fn the_pressure_at_a_step_is_the_greater_one() {
    let psf = |number| Pressure::new::<pound_per_square_foot>(number);
    let stepped = PressureProfile::uniform(feet(0.0), feet(2.0), psf(30.0))
        .plus(&PressureProfile::uniform(feet(2.0), feet(3.0), psf(50.0)));
    for (height, expected) in [
        (-0.1, 0.0),
        (0.0, 30.0),
        (1.0, 30.0),
        (2.0, 50.0),
        (3.0, 50.0),
        (3.1, 0.0),
    ] {
        let pressure = stepped.pressure_at(feet(height));
        assert_abs_diff_eq!(
            pressure.get::<pound_per_square_foot>(),
            expected,
            epsilon = 1e-9
        );
    }
    let (greatest, at) = stepped.greatest();
    assert_abs_diff_eq!(
        greatest.get::<pound_per_square_foot>(),
        50.0,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(at.get::<foot>(), 2.0, epsilon = 1e-9);
}

#[test]
fn the_moment_of_a_plank_is_about_its_lower_edge() {
    // A triangle of 2 ft from 100 psf to nothing: 100 lb/ft, 2/3 ft over its lower edge.
    let triangle = PressureProfile::band(PressureBand {
        from: feet(5.0),
        to: feet(7.0),
        at_from: Pressure::new::<pound_per_square_foot>(100.0),
        at_to: Pressure::default(),
    });
    let (force, moment) = (
        triangle.force_between(feet(5.0), feet(7.0)),
        triangle.moment_between(feet(5.0), feet(7.0)),
    );
    assert_abs_diff_eq!(in_pounds_per_foot(force), 100.0, epsilon = 1e-9);
    assert_abs_diff_eq!((moment / force).get::<foot>(), 2.0 / 3.0, epsilon = 1e-12);
    assert_abs_diff_eq!(
        triangle.resultant().height.get::<foot>(),
        17.0 / 3.0,
        epsilon = 1e-12
    );
}

#[test]
fn nothing_presses_where_there_is_no_water() {
    for depth in [-1.0, 0.0] {
        let dry = PressureProfile::still_water(feet(depth), Salinity::Fresh.specific_weight());
        assert!(dry.is_empty());
        assert_eq!(dry.resultant().height, Length::default());
        assert_eq!(dry.greatest(), (Pressure::default(), Length::default()));
    }
}
