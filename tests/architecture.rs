//! The rooms of `src` and what they may import: data flows down the list in DEVELOPERS.md.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fs;
use std::path::{Path, PathBuf};

/// The rooms, in the order in which they may import each other: a room imports only from
/// rooms above it.
const ROOMS: [&str; 26] = [
    "quantity",
    "statement",
    "beam",
    "load",
    "inflow",
    "anchor",
    "design",
    "site",
    "proposal",
    "barrier",
    "risk",
    "verdict",
    "service",
    "gis",
    "crs",
    "table",
    "terrain",
    "hazard",
    "collect",
    "level",
    "assess",
    "surroundings",
    "review",
    "portfolio",
    "report",
    "cli",
];

/// Rooms of pure computation: no files, no GDAL, no network.
const PURE: [&str; 12] = [
    "quantity",
    "statement",
    "beam",
    "load",
    "inflow",
    "anchor",
    "design",
    "site",
    "proposal",
    "barrier",
    "risk",
    "verdict",
];

/// What pure rooms may not touch.
const IMPURE: [&str; 8] = [
    "gdal::",
    "gdal_sys",
    "proj::",
    "std::fs",
    "std::net",
    "std::process",
    "reqwest",
    "tokio::",
];

fn files(room: &str) -> Vec<PathBuf> {
    fn walk(folder: &Path, found: &mut Vec<PathBuf>) {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                found.push(path);
            }
        }
    }
    let mut found = Vec::new();
    walk(
        &Path::new(env!("CARGO_MANIFEST_DIR")).join("src").join(room),
        &mut found,
    );
    assert!(!found.is_empty(), "room {room} has no files");
    found
}

/// The code of a file: no comments (documentation shows how rooms are used together), no
/// tests below the code.
fn code(path: &Path) -> String {
    let text = fs::read_to_string(path).unwrap();
    let text = text.split("#[cfg(test)]").next().unwrap();
    text.lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .collect::<Vec<_>>()
        .join("\n")
}

#[test]
fn a_room_imports_only_from_rooms_above_it() {
    let mut faults = Vec::new();
    for (position, room) in ROOMS.iter().enumerate() {
        for path in files(room) {
            let code = code(&path);
            for below in &ROOMS[position + 1..] {
                if code.contains(&format!("crate::{below}::"))
                    || code.contains(&format!("crate::{below}::{{"))
                {
                    faults.push(format!("{} imports from {below}", path.display()));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn pure_rooms_touch_no_files_no_gdal_no_network() {
    let mut faults = Vec::new();
    for room in PURE {
        for path in files(room) {
            let code = code(&path);
            for word in IMPURE {
                if code.contains(word) {
                    faults.push(format!("{} uses {word}", path.display()));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn every_room_is_in_the_list_and_on_the_map() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let map =
        fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("DEVELOPERS.md")).unwrap();
    for entry in fs::read_dir(source).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            let room = path.file_name().unwrap().to_string_lossy().into_owned();
            assert!(
                ROOMS.contains(&room.as_str()),
                "{room} is not in the list of rooms"
            );
            assert!(
                map.contains(&format!("`src/{room}/`")),
                "{room} is not in DEVELOPERS.md"
            );
        }
    }
}
