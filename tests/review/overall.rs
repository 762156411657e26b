//! What a review comes to.

use sillmark::review::{Counts, OutcomeKind, Review, Shifts};

use super::fixture::{SITE, of_house, with};

#[test]
fn the_worst_and_the_counts() {
    assert_eq!(of_house("").worst, OutcomeKind::CannotBeChecked);
    assert_eq!(
        of_house("freeboard = \"0 ft\"").worst,
        OutcomeKind::FallsShort
    );
    let text = "freeboard = \"0 ft\"\nannual_chance = \"1%\"\n[[opening]]\nid = \"door\"\nbarrier_height = \"3 ft\"";
    with(SITE, text, &Shifts::default(), |review| {
        let counts = review.counts();
        let Counts {
            holds,
            exceeds,
            cannot_be_checked,
            falls_short,
        } = counts;
        assert_eq!(falls_short, 1);
        assert_eq!(exceeds, 1);
        assert_eq!(
            holds + exceeds + cannot_be_checked + falls_short,
            review.points.len()
        );
        for kind in OutcomeKind::WORST_FIRST {
            let points = review.points.iter();
            let number = points.filter(|point| point.outcome.kind() == kind).count();
            assert_eq!(counts.of(kind), number);
        }
    });
}

#[test]
fn the_worst_is_the_first() {
    let mut order = OutcomeKind::WORST_FIRST;
    order.sort_by(|one, other| other.cmp(one));
    assert_eq!(order, OutcomeKind::WORST_FIRST);
}

#[test]
fn it_calls_itself_a_screening() {
    assert!(Review::SCREENING.contains("screening"));
    assert!(Review::SCREENING.contains("licensed engineer"));
}

#[test]
fn points_that_differ_say_by_how_much_and_where_ours_stands() {
    let text = "flood_level = \"8 ft NAVD88\"\nfreeboard = \"0 ft\"\n[[opening]]\nid = \"door\"\nbarrier_height = \"6 ft\"\nposts = 1";
    for point in of_house(text).points {
        let kind = point.outcome.kind();
        if kind == OutcomeKind::FallsShort || kind == OutcomeKind::Exceeds {
            assert!(!point.reference.is_empty(), "{}", point.topic.code());
            assert!(point.ours.is_some() && point.theirs.is_some());
        }
    }
}
