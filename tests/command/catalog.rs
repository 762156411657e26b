//! The catalogues print, with every entry.

use std::path::Path;

use sillmark::crs::COMMON_DATUM_PAIRS;
use sillmark::design::rules;
use sillmark::level::LevelSource;
use sillmark::quantity::VerticalDatum;
use sillmark::site::WallKind;
use sillmark::statement::Choice;
use sillmark::verdict::{CautionTexts, ReasonCode};

use super::scratch::Scratch;

/// The names of a catalogue's entries: what stands before the first colon of a line that is
/// not set in.
fn entries(list: &str) -> Vec<String> {
    let page = Scratch::new().answer(&["catalog", list]);
    let heads = page.lines().filter(|line| !line.starts_with(' '));
    heads
        .filter_map(|line| line.split_once(": ").map(|(name, _)| name.to_owned()))
        .collect()
}

#[test]
fn rules_are_all_there() {
    let ids: Vec<_> = rules().unwrap().into_iter().map(|rule| rule.id).collect();
    assert_eq!(entries("rules"), ids);
}

#[test]
fn limits_are_all_there() {
    let listed = entries("limits");
    for (word, _) in WallKind::CHOICES {
        assert!(
            listed.iter().any(|name| name == word),
            "{word} is not in {listed:?}"
        );
    }
    assert!(listed.iter().any(|name| name == "velocity"));
}

/// What `data/` holds, read as plain TOML, so that a row that the program drops is found.
fn data(name: &str) -> toml::Table {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("data")
        .join(name);
    std::fs::read_to_string(path).unwrap().parse().unwrap()
}

fn text<'row>(row: &'row toml::Value, field: &str) -> &'row str {
    row.get(field).and_then(toml::Value::as_str).unwrap()
}

fn rows<'table>(table: &'table toml::Table, name: &str) -> Vec<&'table toml::Value> {
    table[name].as_array().unwrap().iter().collect()
}

/// The list in one line without its breaks, to look for a source in.
fn flowing(list: &str) -> String {
    let page = Scratch::new().answer(&["catalog", list]);
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Holds that a list has the source of a row with how sure it is.
fn has_source(page: &str, row: &toml::Value) {
    let confidence = text(row, "confidence");
    let source = format!("source ({confidence}): {}", text(row, "source"));
    assert!(page.contains(&source), "{source:?} is not in {page}");
}

#[test]
fn kits_are_all_there_with_their_sources() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/kits");
    let files = std::fs::read_dir(folder).unwrap();
    let names = files.map(|file| file.unwrap().file_name().into_string().unwrap());
    let mut listed = entries("kits");
    let page = flowing("kits");
    let mut ids = Vec::new();
    for name in names {
        let kit = toml::Value::Table(data(&format!("kits/{name}")));
        has_source(&page, &kit);
        assert!(page.contains(&format!("{}: {}", text(&kit, "id"), text(&kit, "name"))));
        ids.push(text(&kit, "id").to_owned());
    }
    ids.sort();
    listed.sort();
    assert_eq!(listed, ids);
}

#[test]
fn materials_are_all_there_with_their_sources() {
    let file = data("materials.toml");
    let page = flowing("materials");
    let mut ids = Vec::new();
    for material in rows(&file, "material") {
        has_source(&page, material);
        ids.push(text(material, "id").to_owned());
    }
    assert!(ids.len() > 10, "{ids:?}");
    assert_eq!(entries("materials"), ids);
    // 25 and 30 ksi, as the file has them.
    assert!(
        page.contains("6063-T6 (ADM): Aluminium 6063-T6, extrusion yield 25"),
        "{page}"
    );
}

#[test]
fn combinations_are_all_there_with_their_sources() {
    let file = data("combinations.toml");
    let page = flowing("combinations");
    let mut ids = Vec::new();
    for set in rows(&file, "set") {
        has_source(&page, set);
        ids.push(text(set, "id").to_owned());
        for (zone, words) in [("coastal", "coastal zones"), ("other", "other zones")] {
            for (basis, kind) in [
                ("allowable", "allowable strength"),
                ("strength", "factored loads"),
            ] {
                let Some(row) = set.get(zone).and_then(|zone| zone.get(basis)) else {
                    continue;
                };
                let factor = row["factor"].as_float().unwrap();
                let line = format!("{words}, {kind}: {factor} ({}", text(row, "source"));
                assert!(page.contains(&line), "{line:?} is not in {page}");
            }
        }
    }
    assert_eq!(entries("combinations"), ids);
}

#[test]
fn practice_is_all_there_with_its_sources() {
    let file = data("practice.toml");
    let page = flowing("practice");
    for (_, row) in &file {
        has_source(&page, row);
    }
    assert_eq!(file.len(), entries("practice").len());
    assert!(
        page.contains("wider than 10.00 ft and higher than 4.00 ft"),
        "{page}"
    );
    assert!(page.contains("L/120"), "{page}");
}

#[test]
fn datums_are_all_there() {
    let mut names: Vec<_> = VerticalDatum::all_named()
        .map(|datum| datum.to_string())
        .collect();
    names.push("EPSG:n".to_owned());
    names.extend(
        COMMON_DATUM_PAIRS
            .iter()
            .map(|(from, to)| format!("{from} to {to}")),
    );
    assert_eq!(entries("datums"), names);
}

#[test]
fn sources_are_all_there_in_their_order() {
    let page = Scratch::new().answer(&["catalog", "sources"]);
    let lines: Vec<_> = page.lines().filter(|line| !line.is_empty()).collect();
    assert_eq!(lines.len(), LevelSource::ALL.len());
    for (line, source) in lines.iter().zip(LevelSource::ALL) {
        assert!(line.contains(&format!("({})", source.code())), "{line}");
    }
}

#[test]
fn schemas_are_all_there() {
    assert_eq!(entries("schemas"), ["nfhl", "england", "extent"]);
}

#[test]
fn cautions_are_all_there_with_their_sources() {
    let texts = CautionTexts::shipped().unwrap();
    let codes: Vec<_> = texts.all().map(|(code, ..)| code.to_owned()).collect();
    assert_eq!(entries("cautions"), codes);
    let page = Scratch::new().answer(&["catalog", "cautions"]);
    assert_eq!(page.matches("  source (").count(), codes.len());
}

#[test]
fn reasons_are_all_there_with_their_verdicts() {
    let codes: Vec<_> = ReasonCode::ALL.iter().map(|reason| reason.code).collect();
    assert_eq!(entries("reasons"), codes);
    let page = flowing("reasons");
    for reason in ReasonCode::ALL {
        let line = format!(
            "{}: {} verdict: {}",
            reason.code,
            reason.meaning,
            reason.verdict.word()
        );
        assert!(page.contains(&line), "{line:?} is not in {page}");
    }
    // As a run's summary tells them: "sill below".
    assert!(page.contains("sill-below: The sill lies below the design level verdict: protect"));
}
