//! The whole sheet.

use sillmark::quantity::UnitSystem;
use sillmark::report::barrier_sheet;

use super::fixture;

const COLUMNS: usize = 96;

#[test]
fn every_barrier_in_both_systems() {
    for (name, answer) in fixture::all() {
        for (units, system) in [(UnitSystem::Us, "us"), (UnitSystem::Si, "si")] {
            let sheet = barrier_sheet(&answer, units, COLUMNS);
            insta::assert_snapshot!(format!("sheet_{name}_{system}"), sheet);
        }
    }
}

#[test]
fn lines_end_before_the_given_column() {
    for (name, answer) in fixture::all() {
        for units in [UnitSystem::Us, UnitSystem::Si] {
            for line in barrier_sheet(&answer, units, COLUMNS).lines() {
                assert!(line.chars().count() <= COLUMNS, "{name}: {line}");
                assert_eq!(line, line.trim_end(), "{name}");
            }
        }
    }
}

#[test]
fn every_mark_has_its_source() {
    for (name, answer) in fixture::all() {
        let sheet = barrier_sheet(&answer, UnitSystem::Us, COLUMNS);
        let (body, sources) = sheet.split_once("\nSources\n").unwrap();
        for number in 1.. {
            let mark = format!("[{number}]");
            let listed = sources.lines().any(|line| line.starts_with(&mark));
            assert_eq!(body.contains(&mark), listed, "{name}: {mark}");
            if !listed {
                assert!(number > 3, "{name} has {number} sources");
                break;
            }
        }
    }
}

#[test]
fn no_unit_of_the_other_system() {
    for (name, answer) in fixture::all() {
        let sheet = barrier_sheet(&answer, UnitSystem::Si, COLUMNS);
        let body = sheet.split("\nSources\n").next().unwrap();
        for unit in [" ft-lb", " lb/ft", " psf", " gal/min", " gal/h"] {
            assert!(!body.contains(unit), "{name}: {unit}");
        }
        let sheet = barrier_sheet(&answer, UnitSystem::Us, COLUMNS);
        let body = sheet.split("\nSources\n").next().unwrap();
        for unit in [" kN", " kPa", " kg", " L/s", " L/h"] {
            assert!(!body.contains(unit), "{name}: {unit}");
        }
    }
}
