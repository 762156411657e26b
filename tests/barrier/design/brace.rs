//! Posts with a brace: fixed at the foot, held at two thirds of the height.
//!
//! With the triangle of water up to the top, w at the sill and a = 2h/3 the propped cantilever
//! has R = 0.19722·w·h, M at the foot 0.03519·w·h², M at the brace w·(h − a)³/(6h) =
//! 0.00617·w·h² (R = w·(10h³ − 10h²a + 5ha² − a³)/(40ha)).

use super::{about, check, design, feet, foot_pounds, inches, kit, opening, pounds, rules, within};
use sillmark::barrier::{
    BarrierDesign, Check, Kit, LoadCase, Open, Shortfall, UprightDesign, design_barrier,
};
use sillmark::load::{Debris, LoadZone, WaveAction};
use sillmark::quantity::parse_part;
use sillmark::quantity::unit::{
    Force, Velocity, foot_per_second, inch, newton_metres, pound_force,
};
use sillmark::site::BraceSide;

/// Posts that take 0.475 in³·25,000/1.65/12 = 599.7 ft·lb: too little for the 1,137.5 of a
/// post that stands alone in an opening of 14 ft, enough for a braced one.
fn kit_with_weak_posts() -> Kit {
    let mut weak = kit();
    let post = weak.posts.intermediate.as_mut().unwrap();
    let least = post.section.elastic_modulus * (0.475 / 9.833);
    post.section.elastic_modulus = least;
    post.section.plastic_modulus = Some(least);
    weak
}

fn at_top(post: &UprightDesign) -> sillmark::barrier::BaseForces {
    *post
        .base
        .iter()
        .find(|forces| forces.case == LoadCase::Top)
        .unwrap()
}

/// w·h = 62.4·2.5·7·2.5 = 2,730 lb; R = 0.197222·2,730 = 538.42 lb; V = 1,365 − 538.42 =
/// 826.58 lb; M = 0.0351852·2,730·2.5 = 240.14 ft·lb. The brace holds 20 in up and stands 36 in
/// out: slope 0.55556, vertical 299.12 lb, along it 538.42·√(1 + 0.30864) = 615.93 lb.
#[test]
fn a_propped_cantilever() {
    let found = design(&opening(feet(14.0), feet(2.5)), &kit_with_weak_posts());
    assert_eq!(found.spans(), 2);
    let post = &found.uprights[0];
    let brace = post.brace.unwrap();
    about(brace.at.get::<inch>(), 20.0);
    about(brace.horizontal.get::<pound_force>(), 538.42);
    about(brace.along.get::<pound_force>(), 615.93);
    about(brace.vertical.get::<pound_force>(), 299.12);
    let base = at_top(post);
    about(base.shear.get::<pound_force>(), 826.58);
    within(
        foot_pounds(check(&found, "intermediate post", "bending").demand),
        240.14,
        1e-4,
    );
    about(
        pounds(check(&found, "intermediate post", "shear").demand),
        826.62,
    );
    within(
        (base.moment / newton_metres(1.0)).value / 1.355_817_948,
        240.14,
        1e-4,
    );
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
}

/// A strut behind lifts the post's foot and presses its own; a tie before does the opposite.
#[test]
fn what_lifts_on_either_side() {
    let mut task = opening(feet(14.0), feet(2.5));
    let dry = design(&task, &kit_with_weak_posts());
    task.brace = Some(BraceSide::Water);
    let water = design(&task, &kit_with_weak_posts());
    about(at_top(&dry.uprights[0]).uplift.get::<pound_force>(), 299.12);
    about(
        at_top(&water.uprights[0]).uplift.get::<pound_force>(),
        -299.10,
    );
    let foot = |found: &sillmark::barrier::BarrierDesign| {
        let anchors = found
            .anchors
            .iter()
            .find(|anchors| anchors.post == "brace")
            .unwrap();
        (anchors.forces.uplift, anchors.demand)
    };
    about(foot(&dry).0.get::<pound_force>(), -299.12);
    assert_eq!(foot(&dry).1.tension_on_anchor, Force::default());
    // 1.6·299.12/2 on each of two anchors in one row, and 1.6·538.42/2 of shear.
    about(
        foot(&water).1.tension_on_anchor.get::<pound_force>(),
        239.30,
    );
    about(foot(&water).1.shear_on_anchor.get::<pound_force>(), 430.73);
    // The plate under the post: T = 1.6·(240.14·12/11 ± 299.12/2)/2 on each of two anchors.
    let plate = |found: &sillmark::barrier::BarrierDesign| {
        let anchors = found
            .anchors
            .iter()
            .find(|anchors| anchors.post == "intermediate post");
        anchors
            .unwrap()
            .demand
            .tension_on_anchor
            .get::<pound_force>()
    };
    within(plate(&dry), 329.22, 1e-4);
    within(plate(&water), 89.93, 1e-4);
}

#[test]
fn nobody_said_on_which_side() {
    let mut task = opening(feet(14.0), feet(2.5));
    task.brace = None;
    let found = design(&task, &kit_with_weak_posts());
    assert!(found.open.contains(&Open::BraceSide));
    assert_eq!(found.uprights[0].brace.unwrap().side, BraceSide::Dry);
    // A barrier that needs no brace does not ask.
    assert!(!design(&task, &kit()).open.contains(&Open::BraceSide));
}

/// Posts that take 299.9 ft·lb, so that they need their brace, whose maker allows 300 lb:
/// they are set closer. 300 lb along it allow
/// 300/615.93·84 = 40.9 in: 168 = n·b → five spans of (164 − 16)/5 = 29.6 in, b = 33.6 in.
#[test]
fn a_weak_brace_asks_for_closer_posts() {
    let mut weak = kit_with_weak_posts();
    let section = &mut weak.posts.intermediate.as_mut().unwrap().section;
    let least = section.elastic_modulus * 0.5;
    section.elastic_modulus = least;
    section.plastic_modulus = Some(least);
    weak.brace.as_mut().unwrap().capacity = Some(Force::new::<pound_force>(300.0));
    let found = design(&opening(feet(14.0), feet(2.5)), &weak);
    assert_eq!(found.spans(), 5);
    about(found.uprights[0].tributary.get::<inch>(), 33.6);
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
    // Where no spacing helps it is said; waves ask for a brace at every spacing.
    weak.brace.as_mut().unwrap().capacity = Some(Force::new::<pound_force>(1.0));
    let mut waves = opening(feet(14.0), feet(2.5));
    waves.water.waves = Some(WaveAction::NonBreaking);
    let found = design(&waves, &weak);
    assert!(
        found
            .shortfalls
            .iter()
            .any(|shortfall| matches!(shortfall, Shortfall::BraceFails { .. }))
    );
}

/// In a coastal zone the force along the brace counts 1.5 before it is held against what its
/// maker allows, like the moment of the post: 615.93 lb along it are 923.9 of an allowed 700.
#[test]
fn a_brace_is_held_to_its_capacity_with_the_load_factor() {
    let mut kit = kit_with_weak_posts();
    kit.brace.as_mut().unwrap().capacity = Some(Force::new::<pound_force>(700.0));
    // Posts so wide that they cannot be set closer.
    kit.posts.intermediate.as_mut().unwrap().width = inches(60.0);
    let task = opening(inches(232.0), feet(2.5));
    let of = |zone| design_barrier(&task, &kit, &rules().in_zone(zone), None, None);
    let other = of(LoadZone::Other).unwrap().unwrap();
    let coastal = of(LoadZone::Coastal).unwrap().unwrap();
    let brace = |found: &BarrierDesign| found.uprights[0].brace.unwrap();
    within(brace(&other).factor, 1.0, 1e-12);
    within(brace(&coastal).factor, 1.5, 1e-12);
    let (one, with_factor) = (brace(&coastal).along, brace(&coastal).demand());
    within((with_factor / one).value, 1.5, 1e-12);
    let used = |found: &BarrierDesign| brace(found).used().unwrap() / brace(found).along.value;
    within(used(&coastal) / used(&other), 1.5, 1e-9);
    let fails = |found: &BarrierDesign| {
        found.shortfalls.iter().any(|shortfall| {
            matches!(shortfall, Shortfall::BraceFails { along, .. } if *along == with_factor)
        })
    };
    assert!(fails(&coastal), "{:?}", coastal.shortfalls);
}

/// A brace at 0.3 of the height turns the foot the other way: by the formula M = w·h²/6 − R·a,
/// R = w·h·(10 − 3 + 0.45 − 0.027)/(40·0.3) = 0.61858·w·h, M = (0.16667 − 0.18558)·w·h² =
/// −0.018908·w·h² = −129.05 ft·lb.
#[test]
fn a_low_brace_turns_the_foot_round() {
    let mut low = kit_with_weak_posts();
    low.brace.as_mut().unwrap().attachment = parse_part("0.3").unwrap();
    let found = design(&opening(feet(14.0), feet(2.5)), &low);
    let base = at_top(&found.uprights[0]);
    within(
        (base.moment / newton_metres(1.0)).value / 1.355_817_948,
        -129.05,
        2e-4,
    );
}

/// Waves ask for a brace even where the post would hold alone.
#[test]
fn waves_ask_for_a_brace() {
    let mut task = opening(feet(14.0), feet(2.5));
    task.water.waves = Some(WaveAction::NonBreaking);
    assert!(design(&task, &kit()).uprights[0].brace.is_some());
    let braceless = Kit {
        brace: None,
        ..kit()
    };
    let lacks =
        |shortfall: &Shortfall| matches!(shortfall, Shortfall::KitLacks { part: "brace", .. });
    assert!(design(&task, &braceless).shortfalls.iter().any(lacks));
}

/// Debris of 310.6 lb (1,000 lb at 5 ft/s stopped in 0.5 s) strikes a braced post where it asks
/// most of it. About the foot that is not at the surface, where a cantilever over the brace
/// lightens it, but 0.42265 of the 20 in up. For a point force: M = F·x·(a − x)·(2a − x)/(2a²)
/// = 310.6·8.453·11.547·31.547/800/12 = 99.6 ft·lb more than the water's; spread over 1 ft it
/// is somewhat less, and never less than half.
#[test]
fn debris_strikes_a_braced_post_where_it_asks_most() {
    let mut task = opening(feet(14.0), feet(2.5));
    task.water.waves = Some(WaveAction::NonBreaking); // for the brace
    task.water.velocity = Some(Velocity::new::<foot_per_second>(5.0));
    let moment = |found: &sillmark::barrier::BarrierDesign| {
        (at_top(&found.uprights[0]).moment / newton_metres(1.0)).value / 1.355_817_948
    };
    let clean = moment(&design(&task, &kit()));
    task.water.debris = Some(Debris::Normal);
    let struck = moment(&design(&task, &kit()));
    let more = struck - clean;
    assert!((49.8..99.6).contains(&more), "{more} more than {clean}");
    assert!(design(&task, &kit()).checks().all(Check::holds));
}
