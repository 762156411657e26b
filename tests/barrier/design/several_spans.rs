//! Openings too wide for one span.

use super::{
    POUND, about, check, design, feet, foot_pounds, in_inches, inches, kit, opening, pounds,
};
use sillmark::barrier::{Shortfall, Upright};
use sillmark::quantity::unit::inch;

/// 14 ft = 168 in. One span would bear over 168 − 4 + 1.5 = 165.5 in, more than the 118 in
/// that deflection allows and less than the 187 in of bending. Two: clear (168 − 2·2 − 4)/2 =
/// 80 in, bearing 80 + (1.5 + 1.25)/2 = 81.375, cut 80 + 2.75 = 82.75 in.
#[test]
fn two_spans_of_fourteen_feet() {
    let found = design(&opening(feet(14.0), feet(2.5)), &kit());
    assert_eq!(found.spans(), 2);
    assert_eq!(found.legs[0].divided_because, ["planks would bend too far"]);
    for span in &found.legs[0].leg.spans {
        about(span.clear.get::<inch>(), 80.0);
        about(span.bearing.get::<inch>(), 81.375);
        about(span.cut.get::<inch>(), 82.75);
    }
    assert_eq!(found.count(Upright::Intermediate), 1);
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
}

/// 10 planks of 82.75 in at 2.7 lb/ft: 18.619 lb; the post 30 in at 8.3 lb/ft: 20.75 lb.
#[test]
fn pieces_of_two_spans() {
    let found = design(&opening(feet(14.0), feet(2.5)), &kit());
    let pieces: Vec<_> = found
        .pieces
        .iter()
        .map(|piece| {
            (
                piece.name.as_str(),
                piece.count,
                piece.mass.unwrap().value / POUND,
            )
        })
        .collect();
    assert_eq!(pieces.len(), 3);
    assert_eq!((pieces[0].0, pieces[0].1), ("plank", 10));
    about(pieces[0].2, 18.618_75);
    assert_eq!((pieces[1].0, pieces[1].1), ("end post", 2));
    assert_eq!((pieces[2].0, pieces[2].1), ("intermediate post", 1));
    about(pieces[2].2, 20.75);
}

/// The post between takes 80 + 4 = 84 in = 7 ft of barrier: w = 62.4·2.5·7 = 1,092 lb/ft =
/// 91 lb/in at the sill.
///
/// V = 1,092·2.5/2 = 1,365 lb of 2.625·0.6·25,000/1.65 = 23,863.6;
/// M = 1,092·2.5²/6 = 1,137.5 ft·lb of 12.02·25,000/1.65/12 = 15,176.8;
/// δ = 91·30⁴/(30·10.1e6·29.85) = 0.0081496 in of 30/120 = 0.25.
#[test]
fn the_post_between_is_a_cantilever() {
    let found = design(&opening(feet(14.0), feet(2.5)), &kit());
    let post = &found.uprights[0];
    about(post.tributary.get::<inch>(), 84.0);
    assert!(post.brace.is_none());
    let shear = check(&found, "intermediate post", "shear");
    about(pounds(shear.demand), 1365.0);
    about(pounds(shear.capacity), 23_863.6);
    let bending = check(&found, "intermediate post", "bending");
    about(foot_pounds(bending.demand), 1137.5);
    about(foot_pounds(bending.capacity), 15_176.8);
    let deflection = check(&found, "intermediate post", "deflection");
    about(in_inches(deflection.demand), 0.008_149_6);
    about(in_inches(deflection.capacity), 0.25);
}

/// 8 planks are not higher than 4 ft; 9 are, and 10 ft 1 in is wider than 10 ft: practice asks
/// for a post although planks of (121 − 4 − 4)/2 in are far from their limit, as long as the
/// deflection is not what asks for it.
#[test]
fn practice_asks_for_a_post() {
    let mut rules = super::rules();
    rules.deflection.parts = 10.0;
    let spans = |width, height| {
        let task = opening(inches(width), feet(height));
        let found = sillmark::barrier::design_barrier(&task, &kit(), &rules, None, None);
        let found = found.unwrap().unwrap();
        (found.spans(), found.legs[0].divided_because.clone())
    };
    assert_eq!(spans(121.0, 4.0), (1, vec![]));
    assert_eq!(spans(120.0, 4.5), (1, vec![]));
    let because = "common practice asks for a post in a barrier so wide and so high";
    assert_eq!(spans(121.0, 4.5), (2, vec![because]));
}

/// A post that holds one span in three is set closer: with a section of 0.3 in³ it takes
/// 0.3·25,000/1.65/12 = 378.8 ft·lb, and M = 62.4·2.5³/6·b = 162.5·b allows b = 2.331 ft =
/// 27.97 in, less the post's 4 in a clear width of 23.97 in. 168 − 4 = 164 = n·c + (n − 1)·4
/// gives n ≥ 168/27.97 = 6.006: seven spans of (164 − 24)/7 = 20 in.
#[test]
fn posts_that_fail_are_set_closer() {
    let mut weak = kit();
    weak.brace = None;
    let post = weak.posts.intermediate.as_mut().unwrap();
    let least = post.section.elastic_modulus * (0.3 / 9.833);
    post.section.elastic_modulus = least;
    post.section.plastic_modulus = Some(least);
    let found = design(&opening(feet(14.0), feet(2.5)), &weak);
    assert_eq!(found.spans(), 7);
    about(found.legs[0].leg.spans[0].clear.get::<inch>(), 20.0);
    assert_eq!(
        found.legs[0].divided_because,
        [
            "planks would bend too far",
            "posts farther apart would not hold"
        ]
    );
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
}

/// Where no spacing helps, the frame that the planks ask for is given with its failing post.
#[test]
fn posts_that_never_hold_are_said_to_fail() {
    let mut weak = kit();
    weak.brace = None;
    let post = weak.posts.intermediate.as_mut().unwrap();
    let least = post.section.elastic_modulus * 1e-4;
    post.section.elastic_modulus = least;
    post.section.plastic_modulus = Some(least);
    let found = design(&opening(feet(14.0), feet(2.5)), &weak);
    assert_eq!(found.spans(), 2);
    let fails = found
        .shortfalls
        .iter()
        .any(|shortfall| matches!(shortfall, Shortfall::Fails(check) if check.part == "intermediate post"));
    assert!(fails, "{:?}", found.shortfalls);
}
