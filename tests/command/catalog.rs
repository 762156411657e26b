//! The catalogues print, with every entry.

use sillmark::crs::COMMON_DATUM_PAIRS;
use sillmark::design::rules;
use sillmark::level::LevelSource;
use sillmark::quantity::VerticalDatum;
use sillmark::site::WallKind;
use sillmark::statement::Choice;
use sillmark::verdict::CautionTexts;

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

#[test]
fn kits_are_all_there() {
    assert_eq!(entries("kits"), ["demonstration"]);
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
