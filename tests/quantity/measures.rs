//! The measures of structures and of water: sizes of their units, what is printed and read
//! again, and what no text may do.

use proptest::prelude::*;
use sillmark::quantity::unit::SecondMoment;
use sillmark::quantity::{
    QuantityError, UnitSystem, parse_area, parse_density, parse_flow, parse_flow_per_length,
    parse_force, parse_line_load, parse_mass, parse_mass_per_length, parse_moment,
    parse_moment_per_length, parse_part, parse_pressure, parse_rain, parse_ratio_of_span,
    parse_second_moment, parse_section_modulus, parse_stress, parse_volume,
};

/// A reader whose result is given in SI units.
type Reader = fn(&str) -> Result<f64, QuantityError>;

/// Every reader, a unit that it knows, the size of that unit in SI units and the greatest value
/// that it takes. Sizes as NIST SP 811 (2008), appendix B.8, prints them to seven digits.
const READERS: [(Reader, &str, f64, f64); 51] = [
    (force, "lb", 4.448_222, 1e8),
    (force, "kip", 4448.222, 1e8),
    (force, "N", 1.0, 1e8),
    (force, "kN", 1e3, 1e8),
    (line_load, "lb/ft", 14.593_90, 1e8),
    (line_load, "kN/m", 1e3, 1e8),
    (moment_per_length, "ft-lb/ft", 4.448_222, 1e8),
    (moment_per_length, "in-lb/ft", 0.112_984_8 / 0.3048, 1e8),
    (moment_per_length, "kN m/m", 1e3, 1e8),
    (moment, "ft-lb", 1.355_818, 1e8),
    (moment, "kip-in", 112.9848, 1e8),
    (moment, "N·m", 1.0, 1e8),
    (moment, "kN m", 1e3, 1e8),
    (stress, "psi", 6894.757, 2e12),
    (stress, "ksi", 6.894_757e6, 2e12),
    (stress, "psf", 47.880_26, 2e12),
    (stress, "MPa", 1e6, 2e12),
    (stress, "N/mm²", 1e6, 2e12),
    (stress, "GPa", 1e9, 2e12),
    (pressure, "psf", 47.880_26, 1e6),
    (pressure, "kPa", 1e3, 1e6),
    (area, "in2", 6.4516e-4, 1e6),
    (area, "in^2", 6.4516e-4, 1e6),
    (area, "in²", 6.4516e-4, 1e6),
    (area, "ft2", 9.290_304e-2, 1e6),
    (area, "mm2", 1e-6, 1e6),
    (area, "cm²", 1e-4, 1e6),
    (area, "m2", 1.0, 1e6),
    (modulus, "in3", 1.638_706e-5, 1.0),
    (modulus, "cm³", 1e-6, 1.0),
    (modulus, "mm^3", 1e-9, 1.0),
    (volume, "gal", 3.785_412e-3, 1e7),
    (volume, "L", 1e-3, 1e7),
    (second_moment, "in4", 4.162_314e-7, 1.0),
    (second_moment, "cm⁴", 1e-8, 1.0),
    (second_moment, "mm4", 1e-12, 1.0),
    (mass, "lb", 0.453_592_4, 1e7),
    (mass, "kg", 1.0, 1e7),
    (mass_per_length, "lb/ft", 1.488_164, 1e4),
    (mass_per_length, "kg/m", 1.0, 1e4),
    (density, "lb/in3", 2.767_990e4, 23_000.0),
    (density, "lb/ft3", 16.018_46, 23_000.0),
    (flow, "gal/min", 6.309_020e-5, 1e3),
    (flow, "cfs", 2.831_685e-2, 1e3),
    (flow, "L/s", 1e-3, 1e3),
    (flow, "m3/h", 2.777_778e-4, 1e3),
    // A gallon in an hour is 1.051503e-6 m³/s; by the foot of 0.3048 m.
    (flow_per_length, "gal/h/ft", 1.051_503e-6 / 0.3048, 1.0),
    (flow_per_length, "L/h/m", 2.777_778e-7, 1.0),
    (rain, "in/h", 7.055_556e-6, 2.0 / 3600.0),
    (rain, "mm/h", 2.777_778e-7, 2.0 / 3600.0),
    (part, "%", 0.01, 1.0),
];

fn force(text: &str) -> Result<f64, QuantityError> {
    parse_force(text).map(|read| read.value)
}
fn moment(text: &str) -> Result<f64, QuantityError> {
    parse_moment(text).map(|read| read.value)
}
fn stress(text: &str) -> Result<f64, QuantityError> {
    parse_stress(text).map(|read| read.value)
}
fn line_load(text: &str) -> Result<f64, QuantityError> {
    parse_line_load(text).map(|read| read.value)
}

fn moment_per_length(text: &str) -> Result<f64, QuantityError> {
    parse_moment_per_length(text).map(|read| read.value)
}

fn pressure(text: &str) -> Result<f64, QuantityError> {
    parse_pressure(text).map(|read| read.value)
}
fn area(text: &str) -> Result<f64, QuantityError> {
    parse_area(text).map(|read| read.value)
}
fn modulus(text: &str) -> Result<f64, QuantityError> {
    parse_section_modulus(text).map(|read| read.value)
}
fn volume(text: &str) -> Result<f64, QuantityError> {
    parse_volume(text).map(|read| read.value)
}
fn second_moment(text: &str) -> Result<f64, QuantityError> {
    parse_second_moment(text).map(|read: SecondMoment| read.value)
}
fn mass(text: &str) -> Result<f64, QuantityError> {
    parse_mass(text).map(|read| read.value)
}
fn mass_per_length(text: &str) -> Result<f64, QuantityError> {
    parse_mass_per_length(text).map(|read| read.value)
}
fn density(text: &str) -> Result<f64, QuantityError> {
    parse_density(text).map(|read| read.value)
}
fn flow(text: &str) -> Result<f64, QuantityError> {
    parse_flow(text).map(|read| read.value)
}
fn flow_per_length(text: &str) -> Result<f64, QuantityError> {
    parse_flow_per_length(text).map(|read| read.value)
}
fn rain(text: &str) -> Result<f64, QuantityError> {
    parse_rain(text).map(|read| read.value)
}
fn part(text: &str) -> Result<f64, QuantityError> {
    parse_part(text).map(|read| read.value)
}

/// Half of the last of the seven digits that NIST prints.
const SEVEN_DIGITS: f64 = 5e-7;

/// Every reader on one text; what it accepts is a number within its bounds.
fn read_all(text: &str) {
    for (reader, _, _, greatest) in READERS {
        if let Ok(value) = reader(text) {
            assert!((0.0..=greatest).contains(&value), "{text:?} gives {value}");
        }
    }
    if let Ok(part) = parse_ratio_of_span(text) {
        assert!((1e-4..=0.1).contains(&part.value), "{text:?}");
    }
}

#[test]
fn a_unit_has_its_size() {
    for (reader, unit, size, greatest) in READERS {
        // Half of the greatest value, so that every unit fits into its bounds.
        let number = (greatest / size / 2.0).min(1000.0).floor().max(0.001);
        let value = reader(&format!("{number} {unit}")).unwrap();
        assert!(
            (value / (number * size) - 1.0).abs() <= SEVEN_DIGITS,
            "{number} {unit} is {value}"
        );
    }
}

#[test]
fn a_quantity_without_unit_or_with_that_of_another_is_refused() {
    for (reader, unit, _, _) in READERS {
        let error = reader("-1").unwrap_err();
        let told = ["it has no unit", "it is not between 0 and 1"];
        assert!(told.contains(&error.problem()), "{unit}: {error}");
        let error = reader("3 cubits").unwrap_err();
        assert!(error.problem().contains("\"cubits\""), "{unit}: {error}");
        assert!(error.accepted().contains("such as"), "{unit}: {error}");
        assert!(reader(&format!("-3 {unit}")).is_err(), "{unit}");
        assert!(reader(&format!("1e3 {unit}")).is_err(), "{unit}");
        assert!(reader(&format!("1,000 {unit}")).is_err(), "{unit}");
        let endless = "9".repeat(400);
        assert!(reader(&format!("{endless} {unit}")).is_err(), "{unit}");
        assert!(
            reader(&format!("{endless}/{endless} {unit}")).is_err(),
            "{unit}"
        );
    }
}

#[test]
fn a_message_names_the_known_units() {
    assert_eq!(
        parse_stress("25").unwrap_err().to_string(),
        "\"25\" is not a strength or a modulus: it has no unit; accepted: a stress with its unit, such as \"4000 psi\", \"25 ksi\" or \"170 MPa\""
    );
    assert_eq!(
        parse_section_modulus("3 gal").unwrap_err().problem(),
        "\"gal\" is not a unit of section modulus (those are in3, ft3, mm3, cm3, m3)"
    );
    assert_eq!(
        parse_rain("3 m/h").unwrap_err().problem(),
        "\"m/h\" is not a unit of rainfall (those are in/h, mm/h)"
    );
    assert_eq!(
        parse_rain("300 in/h").unwrap_err().problem(),
        "no rain falls that hard"
    );
    assert_eq!(
        parse_force("-5 kN").unwrap_err().problem(),
        "it is negative"
    );
}

#[test]
fn a_part_of_the_span_is_written_both_ways() {
    let part = parse_ratio_of_span("1/240").unwrap();
    assert_eq!(parse_ratio_of_span(" L / 240 ").unwrap(), part);
    for text in [
        "L/1", "L/0", "L", "1/", "-1/120", "1/120 ft", "L/99999", "L/nan", "0",
    ] {
        assert!(parse_ratio_of_span(text).is_err(), "{text}");
    }
}

/// The print has `digits` significant digits.
fn near(again: f64, value: f64, digits: i32) -> bool {
    (again / value - 1.0).abs() <= 0.500_001 * 10.0_f64.powi(1 - digits)
}

proptest! {
    #[test]
    fn any_text(text in any::<String>()) {
        read_all(&text);
    }

    #[test]
    fn a_number_and_anything(number in any::<f64>(), rest in any::<String>()) {
        read_all(&format!("{number} {rest}"));
    }

    #[test]
    fn one_character_changed(
        reader in 0..READERS.len(),
        place in any::<prop::sample::Index>(),
        change in any::<char>(),
    ) {
        let mut characters: Vec<char> = format!("12.5 {}", READERS[reader].1).chars().collect();
        let place = place.index(characters.len());
        characters[place] = change;
        read_all(&characters.into_iter().collect::<String>());
    }

    #[test]
    fn what_is_printed_to_its_digits_is_read_again(exponent in -6.0..-0.01_f64) {
        let value = 10.0_f64.powf(exponent);
        let metre = parse_area("1 m2").unwrap();
        for units in [UnitSystem::Us, UnitSystem::Si] {
            let section = metre * value;
            prop_assert!(near(area(&units.section_area(section)).unwrap(), value, 4));
            let modulus_of = parse_section_modulus("1 m3").unwrap() * value;
            prop_assert!(near(modulus(&units.section_modulus(modulus_of)).unwrap(), value, 4));
            let second = parse_second_moment("1 m4").unwrap() * value;
            prop_assert!(near(second_moment(&units.second_moment(second)).unwrap(), value, 4));
            let strength = parse_stress("1000 GPa").unwrap() * value;
            prop_assert!(near(stress(&units.stress(strength)).unwrap(), 1e12 * value, 4));
            let rate = parse_flow("1 m3/s").unwrap() * value;
            prop_assert!(near(flow(&units.flow(rate)).unwrap(), value, 3));
            let leak = parse_flow_per_length("1 m2/s").unwrap() * value;
            prop_assert!(near(flow_per_length(&units.flow_per_length(leak)).unwrap(), value, 3));
        }
    }

    #[test]
    fn what_is_printed_to_a_place_is_read_again(part in 0.0..1.0_f64) {
        let close = |again: f64, value: f64, half_a_digit: f64| (again - value).abs() <= half_a_digit * 1.000_001;
        for (units, pound, foot_pound, of_mass, of_length, gallon, of_rain) in [
            (UnitSystem::Us, 4.5 / 2.0, 1.36 / 2.0, 0.0454 / 2.0, 0.0149 / 2.0, 3.79e-3 / 2.0, 7.06e-8 / 2.0),
            (UnitSystem::Si, 5.0, 0.5, 0.05, 0.005, 0.5e-3, 0.139e-7),
        ] {
            let value = parse_force("100 kN").unwrap() * part;
            prop_assert!(close(force(&units.force(value)).unwrap(), value.value, pound));
            let value = parse_moment("100 kN·m").unwrap() * part;
            prop_assert!(close(moment(&units.moment(value)).unwrap(), value.value, foot_pound));
            let value = parse_mass("100 kg").unwrap() * part;
            prop_assert!(close(mass(&units.mass(value)).unwrap(), value.value, of_mass));
            let value = parse_mass_per_length("100 kg/m").unwrap() * part;
            prop_assert!(close(mass_per_length(&units.mass_per_length(value)).unwrap(), value.value, of_length));
            let value = parse_volume("100 m3").unwrap() * part;
            prop_assert!(close(volume(&units.volume(value)).unwrap(), value.value, gallon));
            let value = parse_rain("1000 mm/h").unwrap() * part;
            prop_assert!(close(rain(&units.rain(value)).unwrap(), value.value, of_rain));
        }
    }
}
