//! `PATH[:LAYER]`: nothing that is typed gets lost.

use proptest::prelude::*;
use sillmark::hazard::LayerPath;

fn split(text: &str) {
    let LayerPath { path, layer } = LayerPath::split(text);
    let path = path.to_str().unwrap();
    match layer {
        Some(layer) => assert_eq!(format!("{path}:{layer}"), text),
        None => assert_eq!(path, text),
    }
}

proptest! {
    #[test]
    fn any_text(text in any::<String>()) {
        split(&text);
    }

    #[test]
    fn pieces_in_any_order(
        pieces in prop::collection::vec(
            prop::sample::select(vec![
                ":", "/", "\\", ".gpkg", ".SHP", ".gdb", ".json", "zones", "C:", "İ", "é", " ", "",
            ]),
            0..9,
        ),
    ) {
        split(&pieces.concat());
    }
}
