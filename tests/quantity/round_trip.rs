//! What is printed can be read, and says the same to the digits that were printed.

use proptest::prelude::*;
use sillmark::quantity::unit::{Length, Time, foot, inch, meter, minute};
use sillmark::quantity::{
    Elevation, LengthUnit, UnitSystem, VerticalDatum, duration, parse_duration, parse_elevation,
    parse_signed_length,
};

const UNITS: [LengthUnit; 6] = [
    LengthUnit::Metre,
    LengthUnit::Centimetre,
    LengthUnit::Millimetre,
    LengthUnit::Foot,
    LengthUnit::SurveyFoot,
    LengthUnit::Inch,
];

fn metres() -> impl Strategy<Value = Length> {
    (-400.0..900.0).prop_map(Length::new::<meter>)
}

proptest! {
    #[test]
    fn a_printed_duration(minutes in 0_u32..20_000) {
        let time = Time::new::<minute>(f64::from(minutes));
        let again = parse_duration(&duration(time)).unwrap();
        prop_assert!((again - time).abs() < Time::new::<minute>(1e-9));
    }

    #[test]
    fn a_number_with_a_unit(number in -900.0..900.0_f64, unit in prop::sample::select(&UNITS[..])) {
        let length = parse_signed_length(&format!("{number} {unit}")).unwrap();
        prop_assert!((unit.read(length) - number).abs() <= 1e-12 * number.abs());
    }

    #[test]
    fn a_printed_height(height in metres()) {
        for (system, half_a_digit) in [
            (UnitSystem::Us, Length::new::<foot>(0.005)),
            (UnitSystem::Si, Length::new::<meter>(0.0005)),
        ] {
            let again = parse_signed_length(&system.height(height)).unwrap();
            prop_assert!((again - height).abs() <= half_a_digit * 1.000_001);
            // What was rounded once does not move any more.
            prop_assert_eq!(system.height(again), system.height(height));
        }
    }

    #[test]
    fn a_printed_dimension(width in metres()) {
        for (system, half_a_digit) in [
            (UnitSystem::Us, Length::new::<inch>(0.05)),
            (UnitSystem::Si, Length::new::<meter>(0.0005)),
        ] {
            let again = parse_signed_length(&system.dimension(width)).unwrap();
            prop_assert!((again - width).abs() <= half_a_digit * 1.000_001);
        }
    }

    #[test]
    fn a_printed_elevation(height in metres()) {
        for datum in VerticalDatum::all_named() {
            for system in [UnitSystem::Us, UnitSystem::Si] {
                let printed = system.elevation(Elevation::new(height, datum));
                let again = parse_elevation(&printed).unwrap();
                prop_assert_eq!(again.datum(), datum);
                prop_assert_eq!(system.elevation(again), printed);
            }
        }
    }

    #[test]
    fn feet_and_inches(feet in 0..90_u32, inches in 0..12_u32, sixteenths in 1..16_u32) {
        let text = format!("{feet} ft {inches} {sixteenths}/16 in");
        let length = parse_signed_length(&text).unwrap().get::<inch>();
        let expected = 12.0 * f64::from(feet) + f64::from(inches) + f64::from(sixteenths) / 16.0;
        prop_assert!((length - expected).abs() < 1e-9);
    }
}
