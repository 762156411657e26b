//! No kit file makes the reader panic.

use proptest::prelude::*;
use sillmark::barrier::Kit;

const EXAMPLE: &str = include_str!("../../data/kits/demonstration.toml");

fn read(text: &str) {
    match Kit::from_toml("kit.toml", text) {
        Ok(kit) => assert!(kit.plank.cover.value >= 0.0099),
        Err(error) => assert!(error.to_string().starts_with("kit.toml, line ")),
    }
}

proptest! {
    #[test]
    fn any_text(text in any::<String>()) {
        read(&text);
    }

    #[test]
    fn a_piece_of_the_example_replaced(
        ends in any::<(prop::sample::Index, prop::sample::Index)>(),
        new in any::<String>(),
    ) {
        let first = ends.0.index(EXAMPLE.len());
        let second = (first + ends.1.index(9)).min(EXAMPLE.len());
        read(&format!("{}{new}{}", &EXAMPLE[..first], &EXAMPLE[second..]));
    }
}
