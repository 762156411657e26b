//! No site file makes the reader panic.

use proptest::prelude::*;
use sillmark::site::{QuickForm, Site};

const EXAMPLE: &str = include_str!("../../examples/alder-lock/site.toml");

fn read(text: &str) {
    match Site::from_toml("site.toml", text) {
        Ok(site) => assert!(!site.openings.is_empty()),
        Err(error) => {
            let message = error.to_string();
            assert!(message.starts_with("site.toml, line "), "{message}");
            assert!(message.contains("; accepted: "), "{message}");
        }
    }
}

/// What is put in the place of a piece of the file.
fn replacement() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        any::<String>(),
        prop::sample::select(vec![
            "\"",
            "'''",
            "[",
            "]]",
            "{",
            "}",
            "=",
            "\n",
            "#",
            "nan",
            "-inf",
            "1e999",
            "0x10",
            "2026-01-01",
            "true",
            "[[opening]]",
            "\"unknown\"",
            "\\u0000",
            "\u{feff}",
            "-0.0",
        ])
        .prop_map(str::to_owned),
    ]
}

proptest! {
    #[test]
    fn any_text(text in any::<String>()) {
        read(&text);
    }

    #[test]
    fn a_piece_of_the_example_replaced(
        ends in any::<(prop::sample::Index, prop::sample::Index)>(),
        short in any::<bool>(),
        new in replacement(),
    ) {
        let places: Vec<usize> = (0..=EXAMPLE.len()).filter(|at| EXAMPLE.is_char_boundary(*at)).collect();
        let first = ends.0.index(places.len());
        let reach = if short { 8 } else { places.len() };
        let second = (first + ends.1.index(reach)).min(places.len() - 1);
        read(&format!("{}{new}{}", &EXAMPLE[..places[first]], &EXAMPLE[places[second]..]));
    }

    #[test]
    fn two_lines_changed_places(ends in any::<(prop::sample::Index, prop::sample::Index)>()) {
        let mut lines: Vec<&str> = EXAMPLE.lines().collect();
        let count = lines.len();
        lines.swap(ends.0.index(count), ends.1.index(count));
        read(&lines.join("\n"));
    }

    #[test]
    fn any_quick_form(at in any::<String>(), threshold in any::<String>(), opening in any::<String>()) {
        let openings = [opening];
        let form = QuickForm { at: &at, threshold: &threshold, openings: &openings, occupancy: None };
        let refused = form.site().map_err(|error| error.to_string());
        prop_assert!(refused.is_ok() || refused.unwrap_err().starts_with("option --"));
    }
}
