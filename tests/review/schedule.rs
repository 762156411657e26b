//! Which openings a proposal has, and which it leaves out.

use sillmark::review::{Shifts, Topic};

use super::fixture::{Reviewed, SITE, codes, of_house, outcome, reviewed};

const MORE: &str = r#"[[opening]]
id = "hatch"
width = "30 in"
sill = "9.95 ft NAVD88"
[[opening]]
id = "loft"
width = "30 in"
sill = "20 ft NAVD88"
[[opening]]
id = "vent"
width = "10 in"
sill = "unknown"
"#;

fn of(proposal: &str) -> Reviewed {
    reviewed(&format!("{SITE}{MORE}"), proposal, &Shifts::default())
}

#[test]
fn an_opening_left_out() {
    let left_out = of("[[opening]]\nid = \"hatch\"\nbarrier_height = \"6 in\"");
    let door = left_out.of("door", Topic::LeftOut);
    assert_eq!(outcome(door), "falls short by 1.90 ft");
    assert_eq!(codes(door), ["no-barrier-proposed"]);
    // The loft lies above the design level: nothing is left out there.
    let told: Vec<_> = left_out
        .points
        .iter()
        .filter(|point| point.topic == Topic::LeftOut)
        .collect();
    assert_eq!(told.len(), 2);
    assert_eq!(
        outcome(left_out.of("vent", Topic::LeftOut)),
        "cannot be checked: an answer of ours: unresolved, because the sill has not been measured"
    );
    let whole =
        of("[[opening]]\nid = \"door\"\n[[opening]]\nid = \"hatch\"\n[[opening]]\nid = \"vent\"");
    assert!(whole.find(Topic::LeftOut).is_none());
}

#[test]
fn a_sill_that_may_lie_above() {
    let left_out = of("[[opening]]\nid = \"door\"");
    let hatch = left_out.of("hatch", Topic::LeftOut);
    assert_eq!(outcome(hatch), "falls short by 0.05 ft");
    assert_eq!(codes(hatch), ["no-barrier-proposed", "perhaps-above"]);
}

#[test]
fn a_proposal_without_openings_leaves_none_out() {
    assert_eq!(
        of_house("freeboard = \"1 ft\"").outcome(Topic::LeftOut),
        "cannot be checked: [[opening]] in the proposal"
    );
}

#[test]
fn names_match_but_for_case_and_spaces() {
    let same = of_house("[[opening]]\nid = \" Door \"\nbarrier_height = \"2 ft\"");
    assert_eq!(same.outcome(Topic::BarrierHeight), "holds");
    assert!(same.find(Topic::UnknownOpening).is_none());
}

#[test]
fn an_opening_that_we_do_not_know() {
    let unknown = of_house(
        "[[opening]]\nid = \"dor\"\nbarrier_height = \"5 ft\"\nplanks = 9\nplank_height = \"6 in\"\n[opening.load]\ndepth = \"3.00 ft\"\nforce_per_width = \"280.8 lb/ft\"",
    );
    assert_eq!(
        unknown.outcome(Topic::UnknownOpening),
        "cannot be checked: an opening of this name in the site file"
    );
    assert_eq!(
        unknown.sentences(Topic::UnknownOpening),
        "perhaps \"door\" is meant"
    );
    // What its own figures and the kit tell is told all the same.
    assert_eq!(unknown.outcome(Topic::PlankStack), "falls short by 0.50 ft");
    assert_eq!(unknown.outcome(Topic::KitHeight), "falls short by 1.00 ft");
    assert_eq!(unknown.outcome(Topic::ForcePerWidth), "holds");
    assert_eq!(unknown.outcome(Topic::LeftOut), "falls short by 1.90 ft");
    let far = of_house("[[opening]]\nid = \"orangery\"");
    assert_eq!(far.codes(Topic::UnknownOpening), [""; 0]);
    let nameless = of_house("[[opening]]\nplanks = 3");
    assert_eq!(
        outcome(nameless.of("opening 1 of the proposal", Topic::UnknownOpening)),
        "cannot be checked: the id of the opening in the proposal"
    );
}

#[test]
fn names_that_differ_in_case_alone() {
    // Two for one opening of ours: both are told.
    let twice = of(
        "[[opening]]\nid = \"Door\"\nbarrier_height = \"1 ft\"\n[[opening]]\nid = \"door\"\nbarrier_height = \"2 ft\"",
    );
    assert_eq!(outcome(twice.of("door", Topic::BarrierHeight)), "holds");
    assert_eq!(
        outcome(twice.of("Door", Topic::UnknownOpening)),
        "cannot be checked: an opening of this name in the site file that no other one of the proposal is"
    );
    // Two of ours: one of the proposal is not both.
    let site = format!("{SITE}[[opening]]\nid = \"Door\"\nwidth = \"36 in\"");
    let offer = "[[opening]]\nid = \"Door\"\nbarrier_height = \"2 ft\"";
    let one = reviewed(&site, offer, &Shifts::default());
    assert_eq!(
        outcome(one.of("door", Topic::LeftOut)),
        "falls short by 1.90 ft"
    );
    assert_eq!(outcome(one.of("Door", Topic::BarrierHeight)), "holds");
}
