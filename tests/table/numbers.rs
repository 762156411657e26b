//! Values as CSV text.

use proptest::prelude::*;
use sillmark::quantity::push_fixed;
use sillmark::table::csv_text;

fn fixed(number: f64, decimals: usize) -> String {
    let mut line = Vec::new();
    push_fixed(&mut line, number, decimals);
    String::from_utf8(line).unwrap()
}

/// What the standard library writes, a zero without its sign.
fn expected(number: f64, decimals: usize) -> String {
    let text = format!("{number:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.chars().all(|digit| "0.".contains(digit)) => rest.to_owned(),
        _ => text,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20_000))]

    #[test]
    fn digits_are_those_of_the_standard_library(
        number in prop_oneof![
            any::<f64>().prop_filter("finite", |number| number.is_finite()),
            -1e4..1e4_f64,
            (-1_000_000..1_000_000_i32).prop_map(|whole| f64::from(whole) / 1000.0),
            (-1_000_000..1_000_000_i32).prop_map(|whole| f64::from(whole) / 8.0),
        ],
        decimals in 0..12_usize,
    ) {
        prop_assert_eq!(fixed(number, decimals), expected(number, decimals));
    }

    #[test]
    fn a_text_is_read_as_it_was_written(text in "[a \",\n\ré\u{feff}]{0,12}") {
        let mut line = b"x,".to_vec();
        csv_text(&mut line, &text);
        line.extend(b",y\n");
        let mut parser = csv::ReaderBuilder::new().has_headers(false).from_reader(&line[..]);
        let records: Vec<_> = parser.records().map(Result::unwrap).collect();
        prop_assert_eq!(records.len(), 1);
        prop_assert_eq!(records[0].iter().collect::<Vec<_>>(), ["x", &text, "y"]);
    }
}

#[test]
fn what_is_no_number_is_empty_and_zero_has_no_sign() {
    for number in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(fixed(number, 3), "");
    }
    assert_eq!(fixed(-0.0, 2), "0.00");
    assert_eq!(fixed(-0.001, 2), "0.00");
    assert_eq!(fixed(0.5, 0), "0");
    assert_eq!(fixed(1.5, 0), "2");
    assert_eq!(fixed(0.125, 2), "0.12");
    assert_eq!(fixed(1e300, 1), format!("{:.1}", 1e300));
}

#[test]
fn quotes_stand_only_where_they_are_needed() {
    let mut line = Vec::new();
    for text in ["plain text", "O'Hara; 5\"", "a,b", " x", ""] {
        csv_text(&mut line, text);
        line.push(b'|');
    }
    assert_eq!(line, b"plain text|\"O'Hara; 5\"\"\"|\"a,b\"|\" x\"||");
}
