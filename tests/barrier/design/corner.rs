//! Runs that turn.

use super::{about, check, design, feet, foot_pounds, inches, kit, task};
use sillmark::barrier::{Ends, Kit, Open, Run, Shortfall, Upright};
use sillmark::quantity::unit::{inch, pound_force};

fn run(legs: &[f64]) -> Run {
    Run::of_legs(legs.iter().map(|leg| inches(*leg)).collect()).unwrap()
}

/// Legs of 48, 96 and 48 in, to the middles of their corner posts: clear 48 − 2 − 2 = 44,
/// 96 − 2·2 = 92 and 44 in; cut 44 + 1.5 + 1.25 = 46.75 and 92 + 2.5 = 94.5 in.
///
/// A corner post takes (44 + 4)/2 = 24 in of one leg and (92 + 4)/2 = 48 in of the other, at a
/// right angle: √(24² + 48²) = 53.6656 in = 4.47214 ft. M = 62.4·2.5³/6·4.47214 =
/// 726.722 ft·lb.
#[test]
fn three_legs_with_the_vector_sum() {
    let found = design(&task(run(&[48.0, 96.0, 48.0]), feet(2.5)), &kit());
    assert_eq!(found.spans(), 3);
    let cuts: Vec<_> = found
        .legs
        .iter()
        .map(|planned| planned.leg.longest_cut().get::<inch>())
        .collect();
    for (cut, by_hand) in cuts.iter().zip([46.75, 94.5, 46.75]) {
        about(*cut, by_hand);
    }
    assert_eq!(found.count(Upright::Corner), 2);
    assert_eq!(found.count(Upright::Intermediate), 0);
    let corner = &found.uprights[0];
    about(corner.tributary.get::<inch>(), 53.6656);
    about(
        foot_pounds(check(&found, "corner post", "bending").demand),
        726.722,
    );
    assert_eq!(
        found.end_post.as_ref().unwrap().ends,
        Some(Ends::AgainstWall)
    );
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
    // What a vector sum does not show is said.
    let said = |open: &Open| matches!(open, Open::NotChecked { part, .. } if part == "corner post");
    assert!(found.open.iter().any(said));
}

/// The plate of the corner post, load × 1.6: each leg pulls on a row of its own, 11 in from
/// the other, and one anchor stands in both. M of the legs: 162.5·2 = 325 and 162.5·4 =
/// 650 ft·lb; T = 1.6·12·(325 + 650)/(11·2) = 850.91 lb on that anchor, not the 1.6·12·726.722/
/// (11·2) = 634.2 lb of the vector sum on a row. Shear 62.4·2.5²/2·4.47214·1.6/4 = 348.83 lb.
#[test]
fn the_anchor_that_both_legs_pull() {
    let found = design(&task(run(&[48.0, 96.0, 48.0]), feet(2.5)), &kit());
    let plate = found
        .anchors
        .iter()
        .find(|anchors| anchors.post == "corner post")
        .unwrap();
    about(plate.demand.tension_on_anchor.get::<pound_force>(), 850.91);
    about(plate.demand.shear_on_anchor.get::<pound_force>(), 348.83);
}

/// The pieces of a run: two end posts and a post at each corner.
#[test]
fn two_and_five_legs() {
    let two = design(&task(run(&[40.0, 60.0]), feet(2.0)), &kit());
    assert_eq!((two.spans(), two.count(Upright::Corner)), (2, 1));
    let five = design(
        &task(run(&[30.0, 40.0, 50.0, 40.0, 30.0]), feet(2.0)),
        &kit(),
    );
    assert_eq!((five.spans(), five.count(Upright::Corner)), (5, 4));
    let ends = five
        .pieces
        .iter()
        .find(|piece| piece.name == "end post")
        .unwrap();
    assert_eq!(ends.count, 2);
}

/// A short leg does not keep a long one from being divided: with posts that take 378.8 ft·lb
/// the middle leg needs its posts every 27.97 in, which a leg of 24 in cannot be divided for.
#[test]
fn a_long_leg_is_divided_beside_short_ones() {
    let mut weak = kit();
    weak.brace = None;
    let post = weak.posts.intermediate.as_mut().unwrap();
    let least = post.section.elastic_modulus * (0.3 / 9.833);
    post.section.elastic_modulus = least;
    post.section.plastic_modulus = Some(least);
    let found = design(&task(run(&[24.0, 168.0, 24.0]), feet(2.5)), &weak);
    let spans: Vec<_> = found
        .legs
        .iter()
        .map(|planned| planned.leg.spans.len())
        .collect();
    assert_eq!(spans, [1, 7, 1]);
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
}

/// A corner post that fails is helped in the leg that loads it most.
#[test]
fn a_corner_post_that_fails_has_its_wider_leg_divided() {
    let mut weak = kit();
    weak.brace = None;
    let post = weak.posts.corner.as_mut().unwrap();
    let least = post.section.elastic_modulus * (0.3 / 9.833);
    post.section.elastic_modulus = least;
    post.section.plastic_modulus = Some(least);
    // b up to 27.97 in of both legs: 16 in of the short one leave √(27.97² − 16²) = 22.94 in
    // of the long one, 2·22.94 − 4 = 41.9 in of clear width: 92 = n·41.9 + (n − 1)·4 → n = 3.
    let found = design(&task(run(&[32.0, 96.0, 32.0]), feet(2.5)), &weak);
    let spans: Vec<_> = found
        .legs
        .iter()
        .map(|planned| planned.leg.spans.len())
        .collect();
    assert_eq!(spans, [1, 3, 1]);
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
}

#[test]
fn a_leg_shorter_than_its_posts_leaves_no_barrier() {
    let found = design(&task(run(&[3.0, 96.0, 48.0]), feet(2.5)), &kit());
    let no_room = |shortfall: &Shortfall| matches!(shortfall, Shortfall::NoRoom { leg } if *leg == inches(3.0));
    assert!(found.shortfalls.iter().any(no_room));
    assert!(found.legs.is_empty() && found.uprights.is_empty() && found.pieces.is_empty());
}

#[test]
fn a_kit_without_corner_posts() {
    let mut square = kit();
    square.posts.corner = None;
    let found = design(&task(run(&[48.0, 96.0, 48.0]), feet(2.5)), &square);
    let lacks = |shortfall: &Shortfall| {
        matches!(
            shortfall,
            Shortfall::KitLacks {
                part: "corner post",
                ..
            }
        )
    };
    assert!(found.shortfalls.iter().any(lacks));
    assert_eq!(found.count(Upright::Corner), 0);
    let faceless = Kit {
        posts: sillmark::barrier::Posts {
            inside: None,
            ..kit().posts
        },
        ..kit()
    };
    let found = design(&task(run(&[48.0, 96.0, 48.0]), feet(2.5)), &faceless);
    let lacks = |shortfall: &Shortfall| {
        matches!(
            shortfall,
            Shortfall::KitLacks {
                part: "inside post",
                ..
            }
        )
    };
    assert!(found.shortfalls.iter().any(lacks));
}
