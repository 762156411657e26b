//! The section properties that the demonstration kits state, against another library that finds
//! them by finite elements (`sectionproperties`) from the rectangles of the profiles.

use std::path::Path;

use sillmark::barrier::{Kit, Section};

use crate::peer;

/// Half a unit of the last of four digits, at worst: 1.000 against 1.0005.
const FOUR_DIGITS: f64 = 5e-4;

#[test]
fn stated_properties_agree_with_finite_elements() {
    for (name, parts) in [("demonstration", 5), ("demonstration-si", 3)] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("data/kits/{name}.toml"));
        let text = std::fs::read_to_string(&path).unwrap();
        let kit = Kit::from_toml(name, &text).unwrap();
        let Some(lines) = peer::run("kit_sections.py", &[path.as_os_str()]) else {
            return;
        };
        assert_eq!(lines.len(), parts, "{name}");
        for line in lines {
            let (part, values) = line.split_once(';').unwrap();
            let peer: Vec<f64> = values
                .split(';')
                .map(|value| value.parse().unwrap())
                .collect();
            for ((property, stated), peer) in stated(section(&kit, part)).into_iter().zip(peer) {
                let difference = stated / peer - 1.0;
                assert!(
                    difference.abs() <= FOUR_DIGITS,
                    "{name}, {part}: {property} {stated}, the peer {peer}"
                );
            }
        }
    }
}

fn section<'kit>(kit: &'kit Kit, part: &str) -> &'kit Section {
    if part == "plank" {
        return &kit.plank.section;
    }
    let mut posts = kit.posts.all();
    &posts.find(|(name, _)| *name == part).unwrap().1.section
}

/// In millimetres, as the peer gives them.
fn stated(section: &Section) -> [(&'static str, f64); 4] {
    [
        ("area", section.area.value * 1e6),
        ("second moment", section.second_moment.value * 1e12),
        ("elastic modulus", section.elastic_modulus.value * 1e9),
        (
            "plastic modulus",
            section.plastic_modulus.unwrap().value * 1e9,
        ),
    ]
}
