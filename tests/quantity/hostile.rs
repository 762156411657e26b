//! No text makes a parser panic, and none comes through as a number that is none.

use proptest::prelude::*;
use sillmark::quantity::unit::{day, meter, meter_per_second};
use sillmark::quantity::{
    parse_annual_chance, parse_duration, parse_elevation, parse_length, parse_signed_length,
    parse_velocity,
};

/// Every parser on one text; what it accepts has to be finite and within its own bounds.
fn parse_all(text: &str) {
    if let Ok(length) = parse_length(text) {
        assert!((0.0..=1000.0).contains(&length.get::<meter>()), "{text:?}");
    }
    if let Ok(length) = parse_signed_length(text) {
        assert!(
            (-1000.0..=1000.0).contains(&length.get::<meter>()),
            "{text:?}"
        );
    }
    if let Ok(elevation) = parse_elevation(text) {
        let height = elevation.height().get::<meter>();
        assert!((-500.0..=9000.0).contains(&height), "{text:?}");
    }
    if let Ok(velocity) = parse_velocity(text) {
        assert!(
            (0.0..=30.0).contains(&velocity.get::<meter_per_second>()),
            "{text:?}"
        );
    }
    if let Ok(time) = parse_duration(text) {
        assert!((0.0..=366.0).contains(&time.get::<day>()), "{text:?}");
    }
    if let Ok(chance) = parse_annual_chance(text) {
        assert!(
            chance.probability() > 0.0 && chance.probability() < 1.0,
            "{text:?}"
        );
    }
}

/// Texts that a quantity is made of, right and wrong.
const PIECES: [&str; 40] = [
    "8.1",
    "36",
    "0",
    "-",
    "+",
    ".",
    "/",
    "1/2",
    " ",
    "\t",
    "ft",
    "in",
    "m",
    "mm",
    "'",
    "\"",
    "\u{2032}",
    "\u{2033}",
    "NAVD88",
    "EPSG:5703",
    "EPSG:",
    "ft/s",
    "m/s",
    "h",
    "min",
    "days",
    "%",
    "in 100",
    "nan",
    "inf",
    "e3",
    "1e400",
    "-0",
    ",",
    "\u{0}",
    "\u{feff}",
    "\u{663}",
    "½",
    "🌊",
    "99999999999999999999999999999999999999999999999999999999999999999999",
];

proptest! {
    #[test]
    fn any_text(text in any::<String>()) {
        parse_all(&text);
    }

    #[test]
    fn pieces_in_any_order(pieces in prop::collection::vec(prop::sample::select(&PIECES[..]), 0..9)) {
        parse_all(&pieces.concat());
    }

    #[test]
    fn one_character_changed(
        start in prop::sample::select(vec![
            "36 in", "3 ft 4 1/2 in", "-2 in", "9.2 ft NAVD88", "2.80 m EPSG:5703", "2 ft/s",
            "12 h", "0.2%", "1 in 100",
        ]),
        place in any::<prop::sample::Index>(),
        change in any::<char>(),
    ) {
        let mut characters: Vec<char> = start.chars().collect();
        let place = place.index(characters.len());
        characters[place] = change;
        parse_all(&characters.into_iter().collect::<String>());
    }
}

#[test]
fn infinity_over_infinity_is_no_length() {
    let endless = "9".repeat(400);
    let error = parse_length(&format!("{endless}/{endless} in")).unwrap_err();
    assert_eq!(error.problem(), "it is absurdly large");
}
