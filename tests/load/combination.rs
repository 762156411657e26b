//! Load factors: the shipped sets, and what a user may state.

use approx::assert_abs_diff_eq;
use proptest::prelude::*;
use sillmark::load::{Actions, CombinationSet, FactorBasis, LoadZone, ResistanceBasis};
use sillmark::statement::{Confidence, Document, StatementError};

fn shipped(id: &str) -> CombinationSet {
    let sets = CombinationSet::shipped().unwrap();
    sets.into_iter().find(|set| set.id == id).unwrap()
}

fn factor(id: &str, zone: LoadZone, basis: FactorBasis) -> Option<(f64, Confidence)> {
    let set = shipped(id);
    set.factor(zone, basis)
        .map(|(factor, citation)| (factor, citation.confidence))
}

#[test]
fn shipped_factors_and_how_sure_they_are() {
    use Confidence::{CommonPractice, FromMemory, Seen};
    use FactorBasis::{Allowable, Strength};
    use LoadZone::{Coastal, Other};
    for (id, zone, basis, expected) in [
        ("us-full-water", Coastal, Allowable, Some((1.5, Seen))),
        ("us-full-water", Coastal, Strength, Some((2.0, Seen))),
        (
            "us-full-water",
            Other,
            Allowable,
            Some((1.0, CommonPractice)),
        ),
        ("us-full-water", Other, Strength, Some((1.6, FromMemory))),
        ("asce7-16-flood", Coastal, Allowable, Some((1.5, Seen))),
        ("asce7-16-flood", Coastal, Strength, Some((2.0, Seen))),
        ("asce7-16-flood", Other, Allowable, Some((0.75, Seen))),
        ("asce7-16-flood", Other, Strength, Some((1.0, FromMemory))),
        ("en1990", Coastal, Allowable, None),
        ("en1990", Coastal, Strength, Some((1.5, FromMemory))),
        ("en1990", Other, Allowable, None),
        ("en1990", Other, Strength, Some((1.5, FromMemory))),
    ] {
        assert_eq!(factor(id, zone, basis), expected, "{id} {zone:?} {basis:?}");
    }
}

#[test]
fn ids_differ_and_every_set_names_its_resistance() {
    let sets = CombinationSet::shipped().unwrap();
    assert_eq!(sets[0].id, CombinationSet::DEFAULT);
    for (position, set) in sets.iter().enumerate() {
        assert!(!set.id.contains(char::is_whitespace));
        assert!(sets[..position].iter().all(|other| other.id != set.id));
        assert!(set.resistance.is_some());
        for (place, each) in set.combinations.iter().enumerate() {
            assert!(
                set.combinations[..place]
                    .iter()
                    .all(|other| other.id != each.id)
            );
        }
    }
    assert_eq!(
        shipped("en1990").resistance,
        Some(ResistanceBasis::PartialFactors)
    );
}

/// Every combination of a set multiplies the flood by the set's own factor.
#[test]
fn combinations_agree_with_their_factors() {
    let mut compared = 0;
    for set in CombinationSet::shipped().unwrap() {
        for zone in [LoadZone::Coastal, LoadZone::Other] {
            for basis in [FactorBasis::Allowable, FactorBasis::Strength] {
                for each in set.combinations(zone, basis) {
                    assert_eq!(
                        Some(each.flood),
                        set.factor(zone, basis).map(|(factor, _)| factor)
                    );
                    compared += 1;
                }
            }
        }
    }
    assert_eq!(compared, 14);
}

#[test]
fn a_sum_takes_each_load_with_its_factor() {
    let code = shipped("asce7-16-flood");
    let actions = Actions {
        dead: 100.0,
        live: 10.0,
        snow: 1.0,
        wind: 0.1,
        flood: 0.01,
    };
    let sums = |zone, basis| -> Vec<f64> {
        code.combinations(zone, basis)
            .map(|each| each.sum(&actions))
            .collect()
    };
    // D + 0.6W + 1.5Fa; D + 0.75L + 0.75S + 0.45W + 1.5Fa; 0.6D + 0.6W + 1.5Fa.
    let expected = [100.075, 108.31, 60.075];
    let found = sums(LoadZone::Coastal, FactorBasis::Allowable);
    assert_eq!(found.len(), expected.len());
    for (found, expected) in found.iter().zip(expected) {
        assert_abs_diff_eq!(*found, expected, epsilon = 1e-9);
    }
    // 1.2D + L + 0.5S + 0.5W + 1.0Fa; 0.9D + 0.5W + 1.0Fa.
    let expected = [130.56, 90.06];
    let found = sums(LoadZone::Other, FactorBasis::Strength);
    assert_eq!(found.len(), expected.len());
    for (found, expected) in found.iter().zip(expected) {
        assert_abs_diff_eq!(*found, expected, epsilon = 1e-9);
    }
}

const STATED: &str = "name = \"Town\"\nsource = \"Ordinance 7\"\nallowable = 0.7\nstrength = \"1.0\"\nresistance = \"partial factors\"\n";

fn read(text: &str) -> Result<CombinationSet, StatementError> {
    CombinationSet::read_stated(&Document::parse("site.toml", text)?.root())
}

#[test]
fn a_stated_set_holds_in_every_zone() {
    let set = read(STATED).unwrap();
    for zone in [LoadZone::Coastal, LoadZone::Other] {
        let (allowable, citation) = set.factor(zone, FactorBasis::Allowable).unwrap();
        assert_abs_diff_eq!(allowable, 0.7);
        assert_eq!(citation.confidence, Confidence::Stated);
        assert_eq!(citation.source, "Ordinance 7");
    }
    assert_eq!(set.resistance, Some(ResistanceBasis::PartialFactors));
    let bare = read("name = \"Town\"\nsource = \"Ordinance 7\"\nstrength = 1.6\n").unwrap();
    assert_eq!(bare.factor(LoadZone::Other, FactorBasis::Allowable), None);
    assert_eq!(bare.resistance, None);
}

#[test]
fn a_factor_that_cannot_be_is_refused_with_its_line() {
    for wrong in [
        "0.0",
        "-1.5",
        "16.0",
        "nan",
        "inf",
        "\"1,6\"",
        "\"1.6 ft\"",
        "true",
    ] {
        let text = STATED.replace("\"1.0\"", wrong);
        let message = read(&text).unwrap_err().to_string();
        assert!(
            message.starts_with("site.toml, line 4: strength "),
            "{message}"
        );
        assert!(
            message.ends_with("accepted: a load factor from 0.1 to 10, such as 1.6"),
            "{message}"
        );
    }
    for missing in ["name", "source", "strength"] {
        let kept: Vec<&str> = STATED
            .lines()
            .filter(|line| !line.starts_with(missing))
            .collect();
        let text = kept.join(
            "
",
        );
        let message = read(&text).unwrap_err().to_string();
        assert!(
            message.contains(&format!("{missing}: it is missing")),
            "{message}"
        );
    }
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused(text in any::<String>(), factor in any::<f64>()) {
        for text in [text, STATED.replace("0.7", &factor.to_string())] {
            if let Err(error) = read(&text) {
                prop_assert!(error.to_string().starts_with("site.toml, line "));
            }
        }
    }
}
