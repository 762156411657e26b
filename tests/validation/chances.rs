//! Worked examples of chances, each with its source.

use approx::assert_abs_diff_eq;
use sillmark::level::rounding_sd;
use sillmark::quantity::unit::foot;
use sillmark::quantity::{AnnualChance, LengthUnit, parse_annual_chance, parse_elevation};
use sillmark::risk::{
    ChanceLevel, Deviation, StageChance, chance_between, chance_over_years, mean_years_between,
};

fn chance(text: &str) -> AnnualChance {
    parse_annual_chance(text).unwrap()
}

/// US Army Corps of Engineers, Institute for Water Resources, National Economic Development
/// procedures manual, urban flood damage, printed page V-51: a frequency of 0.6 % is a flood
/// in 167 years.
#[test]
fn economic_manual_mean_years() {
    assert_abs_diff_eq!(mean_years_between(chance("0.6%")), 167.0, epsilon = 0.5);
}

/// The same manual, chapter V step 8: the interval between the frequencies 0.00135 and 0.001
/// is 0.00035.
#[test]
fn economic_manual_interval_of_frequencies() {
    let share = chance_between(chance("0.135%"), chance("0.1%"));
    assert_abs_diff_eq!(share, 0.000_35, epsilon = 1e-9);
}

/// Derived from 1 − (1 − p)³⁰, the figure of a flood risk raster for 30 years.
#[test]
fn derived_thirty_years() {
    for (annual, percent) in [("1%", 26.03), ("2%", 45.45), ("10%", 95.76), ("0.2%", 5.83)] {
        let chance = 100.0 * chance_over_years(chance(annual), 30);
        assert_abs_diff_eq!(chance, percent, epsilon = 0.005);
    }
    // No year, no flood; one year, the annual chance itself.
    assert_abs_diff_eq!(chance_over_years(chance("1%"), 0), 0.0);
    assert_abs_diff_eq!(chance_over_years(chance("1%"), 1), 0.01, epsilon = 1e-15);
}

/// Derived on log-probability paper with z of 10 %, 4 %, 2 %, 1 %, 0.5 % and 0.2 % = 1.2816,
/// 1.7507, 2.0537, 2.3263, 2.5758 and 2.8782. Linear in the logarithm of mean years the two
/// would be 101.822 and 105.491 ft: the tolerance tells the methods apart.
#[test]
fn derived_levels_between_two_floods() {
    for (frequent, rarer, asked, expected) in [
        (("10%", "100.0"), ("2%", "103.2"), "4%", 101.944),
        (("1%", "104.5"), ("0.2%", "106.8"), "0.5%", 105.540),
    ] {
        let level = |(of, feet): (&str, &str)| ChanceLevel {
            chance: chance(of),
            elevation: parse_elevation(&format!("{feet} ft NAVD88")).unwrap(),
            sd: None,
        };
        let curve = StageChance::new([level(frequent), level(rarer)]).unwrap();
        let found = curve.level_at(chance(asked)).unwrap();
        assert_abs_diff_eq!(
            found.elevation.height().get::<foot>(),
            expected,
            epsilon = 5e-4
        );
    }
}

/// The catalogue's rows for rounded levels against the rounding that is computed where a
/// level is read: half a unit of the last digit over √3.
#[test]
fn catalogue_and_computed_rounding_agree() {
    for (id, level) in [
        ("level-whole-foot", "9 ft NAVD88"),
        ("level-tenth-of-a-foot", "9.3 ft NAVD88"),
    ] {
        let known = Deviation::known(id).unwrap().unwrap();
        let computed = rounding_sd(parse_elevation(level).unwrap(), LengthUnit::Foot);
        assert_abs_diff_eq!(known.sd.value, computed.value, epsilon = 1e-12);
    }
}
