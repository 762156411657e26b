//! A door of 36 in behind five planks.

use super::{
    POUND, about, check, design, feet, foot_pounds, in_inches, inches, kit, opening, pounds,
};
use sillmark::barrier::{Kit, Shortfall};
use sillmark::quantity::unit::{foot, inch};

/// Clear 36 − 2·2 = 32 in; bearing 32 + 1.5 = 33.5 in; cut 32 + 2·1.5 = 35 in.
#[test]
fn one_span_of_five_planks() {
    let found = design(&opening(inches(36.0), feet(2.5)), &kit());
    assert_eq!(found.stack.count, 5);
    assert_eq!(found.spans(), 1);
    let span = found.legs[0].leg.spans[0];
    about(span.clear.get::<inch>(), 32.0);
    about(span.bearing.get::<inch>(), 33.5);
    about(span.cut.get::<inch>(), 35.0);
    assert!(found.legs[0].divided_because.is_empty());
    assert!(found.shortfalls.is_empty(), "{:?}", found.shortfalls);
}

/// The lowest plank stands 2 to 2.5 ft deep, 2.25 ft in the middle: w = 62.4·2.25·0.5 =
/// 70.2 lb/ft = 5.85 lb/in, L = 33.5 in = 2.79167 ft.
///
/// M = 70.2·2.79167²/8 = 68.387 ft·lb of 1.693·25,000/1.65/12 = 2,137.6;
/// V = 70.2·2.79167/2 = 97.988 lb of 0.656·0.6·25,000/1.65 = 5,963.6;
/// δ = 5·5.85·33.5⁴/(384·10.1e6·1.488) = 36,838,768/5,771,059,200 = 0.0063834 in of
/// 33.5/120 = 0.279167.
#[test]
fn the_lowest_plank() {
    let found = design(&opening(inches(36.0), feet(2.5)), &kit());
    let bending = check(&found, "plank 1", "bending");
    about(foot_pounds(bending.demand), 68.387);
    about(foot_pounds(bending.capacity), 2137.6);
    let shear = check(&found, "plank 1", "shear");
    about(pounds(shear.demand), 97.988);
    about(pounds(shear.capacity), 5963.6);
    let deflection = check(&found, "plank 1", "deflection");
    about(in_inches(deflection.demand), 0.006_383_4);
    about(in_inches(deflection.capacity), 0.279_167);
    // 0.031992 of bending against 0.022866 of deflection and 0.016431 of shear.
    assert_eq!(found.governing().unwrap().what, "bending");
    about(found.governing().unwrap().ratio(), 0.031_992);
}

/// 5 planks of 35 in at 2.7 lb/ft: 7.875 lb each; 2 end posts of 30 in at 1.95 lb/ft: 4.875 lb.
#[test]
fn pieces_and_masses() {
    let found = design(&opening(inches(36.0), feet(2.5)), &kit());
    let pieces: Vec<_> = found
        .pieces
        .iter()
        .map(|piece| (piece.name.as_str(), piece.count))
        .collect();
    assert_eq!(pieces, [("plank", 5), ("end post", 2)]);
    let mass = |piece: usize| found.pieces[piece].mass.unwrap().value / POUND;
    about(found.pieces[0].length.get::<inch>(), 35.0);
    about(mass(0), 7.875);
    about(found.pieces[1].length.get::<inch>(), 30.0);
    about(mass(1), 4.875);
}

/// Each limit solved for the length, with w = 70.2 lb/ft:
///
/// * M: √(8·2,137.6/70.2) = 15.608 ft = 187.30 in;
/// * V: 2·5,963.6/70.2 = 169.9 ft;
/// * δ = L/120: ∛(384·15,028,800/(5·120·5.85)) = ∛1,644,176.4 = 118.027 in, which governs.
#[test]
fn the_longest_span_by_deflection_in_closed_form() {
    let found = design(&opening(inches(36.0), feet(2.5)), &kit());
    let by_hand = (384.0 * 10.1e6 * 1.488 / (5.0 * 120.0 * 5.85_f64)).cbrt();
    about(by_hand, 118.027);
    super::within(found.longest_span.unwrap().get::<inch>(), by_hand, 1e-8);
}

/// The same where planks may bend as they like (δ up to L/10): then the moment governs.
#[test]
fn the_longest_span_by_bending_in_closed_form() {
    let mut rules = super::rules();
    rules.deflection.parts = 10.0;
    let task = opening(inches(36.0), feet(2.5));
    let found = sillmark::barrier::design_barrier(&task, &kit(), &rules, None, None);
    let longest = found.unwrap().unwrap().longest_span.unwrap();
    let capacity: f64 = 1.693 * 25_000.0 / 1.65 / 12.0;
    super::within(longest.get::<foot>(), (8.0 * capacity / 70.2).sqrt(), 1e-8);
}

/// Before one plank, 6 in of water press so little that the kit's 20 ft are the end: 240 in
/// of plank span 240 − 1.5 = 238.5 in between the middles of bearings of 1.5 in.
///
/// w = 62.4·0.25·0.5 = 7.8 lb/ft = 0.65 lb/in, δ: ∛(384·15,028,800/(600·0.65)) = 245.5 in.
#[test]
fn the_longest_span_stops_at_the_longest_piece() {
    let found = design(&opening(inches(36.0), feet(0.5)), &kit());
    about(found.longest_span.unwrap().get::<inch>(), 238.5);
}

/// Bearing 112.5 − 4 + 1.5 = 110 in. δ = L/120 allows w = 384·15,028,800/(600·110³) =
/// 7.22652 lb/in = 86.718 lb/ft on a plank 0.5 ft high whose middle is 0.25 ft over the sill:
/// 62.4·0.5·(d − 0.25) = 86.718, d = 3.02943 ft, below the kit's 4 ft.
#[test]
fn the_greatest_depth_in_closed_form() {
    let found = design(&opening(inches(112.5), feet(2.5)), &kit());
    assert_eq!(found.spans(), 1);
    let load: f64 = 384.0 * 10.1e6 * 1.488 / (600.0 * 110.0_f64.powi(3)) * 12.0;
    about(load, 86.718);
    let by_hand = 0.25 + load / 31.2;
    about(by_hand, 3.029_43);
    super::within(found.greatest_depth.unwrap().get::<foot>(), by_hand, 1e-8);
}

/// The planks of a narrow door would stand deeper water than the kit is built for: 4 ft, and
/// twice the barrier's 30 in where the kit has no limit.
#[test]
fn the_greatest_depth_stops_at_the_kit() {
    let narrow = opening(inches(36.0), feet(2.5));
    about(
        design(&narrow, &kit())
            .greatest_depth
            .unwrap()
            .get::<foot>(),
        4.0,
    );
    let unlimited = Kit {
        greatest_height: None,
        ..kit()
    };
    about(
        design(&narrow, &unlimited)
            .greatest_depth
            .unwrap()
            .get::<foot>(),
        5.0,
    );
}

/// Nine planks of 6 in are 4.5 ft, over the kit's 4 ft; eight are not, although feet and
/// inches differ in the last digits.
#[test]
fn the_height_of_the_kit() {
    let over = |found: &sillmark::barrier::BarrierDesign| {
        found
            .shortfalls
            .iter()
            .any(|shortfall| matches!(shortfall, Shortfall::OverKitHeight { .. }))
    };
    assert!(over(&design(&opening(inches(36.0), feet(4.1)), &kit())));
    assert!(!over(&design(&opening(inches(36.0), feet(4.0)), &kit())));
}
