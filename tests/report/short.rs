//! The short answer and what is still to settle.

use sillmark::barrier::Open;
use sillmark::inflow::Inflow;
use sillmark::quantity::UnitSystem;
use sillmark::report::{barrier_lines, open_lines};

use super::fixture;

fn told(units: UnitSystem) -> String {
    let mut texts = Vec::new();
    for (name, answer) in fixture::all() {
        let lines = barrier_lines(&answer, units);
        let open = open_lines(&answer, units);
        assert!((2..=6).contains(&lines.len()), "{name}: {lines:#?}");
        let (lines, open) = (lines.join("\n"), open.join("\n"));
        texts.push(format!("{name}\n{lines}\n{open}\n"));
    }
    texts.join("\n")
}

#[test]
fn in_feet_and_pounds() {
    insta::assert_snapshot!("short_us", told(UnitSystem::Us));
}

#[test]
fn in_metres_and_newtons() {
    insta::assert_snapshot!("short_si", told(UnitSystem::Si));
}

#[test]
fn what_is_open_is_said_once_and_never_lost() {
    for (name, mut answer) in fixture::all() {
        let before = open_lines(&answer, UnitSystem::Us);
        for open in answer.design.open.clone() {
            // Twice the same is no news.
            answer.design.open.push(open);
        }
        assert_eq!(open_lines(&answer, UnitSystem::Us), before, "{name}");
        for line in &before {
            let same = before.iter().filter(|other| *other == line);
            assert_eq!(same.count(), 1, "{name}: {line}");
        }
        answer.design.open.clear();
        answer.inflow = Inflow::default();
        assert!(open_lines(&answer, UnitSystem::Us).is_empty(), "{name}");
    }
}

#[test]
fn the_brace_is_nearest_where_it_is_fuller_than_any_plank() {
    let lines = barrier_lines(&fixture::waves(), UnitSystem::Us).join("\n");
    assert!(
        lines.contains("nearest to its limit: the brace of the intermediate post"),
        "{lines}"
    );
    let mut without = fixture::waves();
    for post in &mut without.design.uprights {
        post.brace = None;
    }
    let lines = barrier_lines(&without, UnitSystem::Us).join("\n");
    assert!(
        lines.contains("nearest to its limit: plank 3 from the sill in bending"),
        "{lines}"
    );
    assert!(!lines.contains("brace"), "{lines}");
}

#[test]
fn beyond_a_limit() {
    let mut answer = fixture::door();
    let check = &mut answer.design.legs[0].checks[0];
    check.capacity = sillmark::barrier::Amount::Moment(match check.demand {
        sillmark::barrier::Amount::Moment(moment) => moment / 1.5,
        other => panic!("{other:?}"),
    });
    let lines = barrier_lines(&answer, UnitSystem::Us).join("\n");
    assert!(
        lines.contains("beyond its limit: the lowest plank in bending, 150 % of what is allowed"),
        "{lines}"
    );
}

#[test]
fn one_sentence_for_all_parts_it_holds_for() {
    let mut answer = fixture::door();
    let open = |part: &str, what: &str| Open::NotChecked {
        part: part.to_owned(),
        what: what.to_owned(),
    };
    answer.design.open = vec![
        open("plank", "buckling"),
        open("plank", "fatigue (clause 9): nothing is stated"),
        open("corner post", "buckling"),
        open("corner post", "fatigue (clause 9): nothing is stated"),
        open("corner post", "fire"),
    ];
    assert_eq!(
        open_lines(&answer, UnitSystem::Us),
        [
            "have the planks and the corner posts checked by an engineer: buckling and fatigue",
            "have the corner posts checked by an engineer: fire",
        ]
    );
}
