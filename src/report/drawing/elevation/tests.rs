#![allow(clippy::unwrap_used, clippy::panic)]

use super::elevation;
use crate::quantity::UnitSystem;
use crate::report::drawing::fixture::{FLOODS, SYSTEMS, alder_lock, stated};
use crate::report::drawing::legible::{assert_legible, texts};

/// The elevation of the first opening of a building, with its floods or without.
fn first(text: &str, units: UnitSystem) -> Option<String> {
    let assessment = stated(text, units);
    elevation("one", &assessment, &assessment.openings[0])
}

#[test]
fn every_opening_of_the_demonstration() {
    for (units, system) in SYSTEMS {
        let assessment = alder_lock(units);
        for opening in &assessment.openings {
            let name = opening.opening.id.replace(' ', "_");
            match elevation("one", &assessment, opening) {
                Some(drawing) => {
                    assert_legible(&format!("{name}, {system}"), &drawing);
                    insta::assert_snapshot!(format!("{name}_{system}"), drawing);
                }
                None => assert_eq!(opening.sill, None, "{name}"),
            }
        }
    }
}
