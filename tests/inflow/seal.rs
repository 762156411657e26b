//! Leakage is the maker's statement and nothing else.

use approx::assert_relative_eq;
use proptest::prelude::*;
use sillmark::inflow::{Finding, Missing, Reason, StatedLeakage, WettedSeal, seal_leakage};
use sillmark::quantity::unit::{liter_per_second, litres_per_hour_per_metre};
use sillmark::statement::{Citation, Confidence};

use super::metres;

fn door(depth: f64) -> WettedSeal {
    WettedSeal {
        width: metres(1.2),
        height: metres(0.8),
        depth: metres(depth),
        plank_cover: Some(metres(0.2)),
    }
}

fn stated() -> StatedLeakage {
    StatedLeakage {
        rate: litres_per_hour_per_metre(3600.0),
        tested_depth: Some(metres(0.9)),
        counts_plank_joints: false,
        citation: Citation {
            source: "sheet 7".into(),
            confidence: Confidence::Stated,
        },
    }
}

fn litres_a_second(seal: &WettedSeal, stated: &StatedLeakage) -> f64 {
    match seal_leakage(seal, Some(stated)).unwrap() {
        Finding::Counted(part) => part.flow.get::<liter_per_second>(),
        Finding::NotCounted(other) => panic!("{}", other.reason),
    }
}

fn reason(seal: &WettedSeal, stated: Option<&StatedLeakage>) -> Reason {
    match seal_leakage(seal, stated).unwrap() {
        Finding::NotCounted(other) => other.reason,
        Finding::Counted(part) => panic!("{part:?}"),
    }
}

#[test]
fn the_wetted_seal_is_the_sill_and_both_sides_up_to_the_water() {
    // 1 L/s on each metre: the flow in L/s is the length in m.
    assert_relative_eq!(litres_a_second(&door(0.5), &stated()), 2.2, epsilon = 1e-12);
}

#[test]
fn no_seal_stands_higher_than_the_barrier() {
    assert_relative_eq!(
        litres_a_second(&door(0.85), &stated()),
        2.8,
        epsilon = 1e-12
    );
}

#[test]
fn without_water_nothing_leaks() {
    assert_relative_eq!(litres_a_second(&door(0.0), &stated()), 0.0);
}

#[test]
fn joints_count_only_where_the_statement_counts_them_and_where_they_are_wet() {
    let with_joints = StatedLeakage {
        counts_plank_joints: true,
        ..stated()
    };
    // Planks of 0.2 m in 0.5 m of water: joints at 0.2 and 0.4 m.
    assert_relative_eq!(
        litres_a_second(&door(0.5), &with_joints),
        2.2 + 2.0 * 1.2,
        epsilon = 1e-12
    );
    // In 0.4 m of water the joint at 0.4 m is at the surface; none stands above 0.6 m.
    assert_relative_eq!(
        litres_a_second(&door(0.4), &with_joints),
        2.0 + 1.2,
        epsilon = 1e-12
    );
    assert_relative_eq!(
        litres_a_second(&door(0.9), &with_joints),
        2.8 + 3.0 * 1.2,
        epsilon = 1e-12
    );
    let unknown = WettedSeal {
        plank_cover: None,
        ..door(0.5)
    };
    assert_eq!(
        reason(&unknown, Some(&with_joints)),
        Reason::NotStated(Missing::PlankCover)
    );
}

#[test]
fn deeper_water_than_the_test_is_not_covered() {
    assert_eq!(
        reason(&door(0.91), Some(&stated())).to_string(),
        "water of 0.910 m is not covered by the maker's statement, which is for 0.900 m"
    );
    assert_relative_eq!(litres_a_second(&door(0.9), &stated()), 2.8, epsilon = 1e-12);
}

#[test]
fn no_rate_is_ever_assumed() {
    assert_eq!(
        reason(&door(0.5), None),
        Reason::NotStated(Missing::LeakageRate)
    );
}

#[test]
fn a_statement_without_a_depth_is_used_and_says_so() {
    let untested = StatedLeakage {
        tested_depth: None,
        ..stated()
    };
    let Finding::Counted(part) = seal_leakage(&door(0.5), Some(&untested)).unwrap() else {
        panic!();
    };
    assert_eq!(part.not_stated, [Missing::TestedDepth]);
    assert_eq!(part.citation.to_string(), "sheet 7");
}

proptest! {
    #[test]
    fn deeper_water_never_leaks_less(one in 0.0..0.9, other in 0.0..0.9, joints: bool) {
        let stated = StatedLeakage { counts_plank_joints: joints, ..stated() };
        let (shallow, deep) = if one < other { (one, other) } else { (other, one) };
        prop_assert!(
            litres_a_second(&door(shallow), &stated) <= litres_a_second(&door(deep), &stated)
        );
    }
}
