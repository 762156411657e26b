//! Gaps and weirs agree with each other where they describe the same water.

use approx::assert_relative_eq;
use proptest::prelude::*;
use sillmark::inflow::{
    Coefficient, Crest, Gap, NotchStep, WeirCoefficient, critical_depth, gap_flow, overtopping,
    small_gap_flow, stepped_notch, weir_flow,
};
use sillmark::quantity::unit::{FlowPerLength, VolumeRate};
use sillmark::statement::{Citation, Confidence};

use super::metres;

fn coefficient(value: f64) -> Coefficient {
    Coefficient {
        value,
        citation: Citation {
            source: "laboratory".into(),
            confidence: Confidence::Stated,
        },
    }
}

fn over(crest: &Crest, length: f64, head: f64) -> f64 {
    weir_flow(crest, metres(length), metres(head))
        .unwrap()
        .flow
        .value
}

#[test]
fn water_below_the_crest_does_not_flow() {
    for crest in [
        Crest::Broad,
        Crest::Sharp,
        Crest::SharpContracted {
            crest_height: metres(0.5),
        },
        Crest::Stated(coefficient(0.62)),
    ] {
        assert_relative_eq!(over(&crest, 1.0, 0.0), 0.0);
        assert_relative_eq!(over(&crest, 1.0, -0.3), 0.0);
    }
}

#[test]
fn a_contracted_stream_needs_a_width() {
    let crest = Crest::SharpContracted {
        crest_height: metres(1.0),
    };
    let error = weir_flow(&crest, metres(0.5), metres(2.5)).unwrap_err();
    assert_eq!(
        error.to_string(),
        "head over the crest \"2.5 m\": it is out of range; accepted: less than 5 times the length of the crest, 0.5 m"
    );
}

#[test]
fn the_coefficients_are_the_same_in_both_systems() {
    assert_relative_eq!(WeirCoefficient::broad_crested().us(), 3.087, epsilon = 2e-3);
    assert_relative_eq!(WeirCoefficient::broad_crested().si(), 1.705, epsilon = 5e-4);
    assert_relative_eq!(WeirCoefficient::francis().si(), 1.84, epsilon = 5e-3);
    assert_relative_eq!(WeirCoefficient::from_si(1.7).si(), 1.7);
    assert_relative_eq!(WeirCoefficient::from_us(3.0).us(), 3.0, epsilon = 1e-14);
}

proptest! {
    #[test]
    fn a_gap_open_to_the_water_surface_is_a_notch(width in 0.01..5.0, depth in 0.01..2.0, cd in 0.3..1.0) {
        let gap = Gap { width: metres(width), from: metres(0.0), to: metres(depth + 1.0) };
        let through = gap_flow(&gap, metres(depth), Some(&coefficient(cd))).unwrap().flow.value;
        let over = over(&Crest::Stated(coefficient(cd)), width, depth);
        prop_assert!((through / over - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_small_deep_gap_flows_as_if_all_of_it_lay_at_its_middle(height in 1e-6..1e-3, depth in 0.5..2.0) {
        let gap = Gap { width: metres(2.0), from: metres(0.0), to: metres(height) };
        let exact = gap_flow(&gap, metres(depth), None).unwrap().flow.value;
        let middle = metres(depth - height / 2.0);
        let simple = small_gap_flow(metres(2.0) * metres(height), middle, 0.6).unwrap().value;
        prop_assert!((exact / simple - 1.0).abs() < 1e-6, "{}", exact / simple - 1.0);
    }

    #[test]
    fn a_gap_is_the_sum_of_its_pieces(from in -1.0..1.0, first in 0.0..1.0, second in 0.0..1.0, depth in -1.0..3.0) {
        let part = |low: f64, high: f64| {
            let gap = Gap { width: metres(0.7), from: metres(low), to: metres(high) };
            gap_flow(&gap, metres(depth), None).unwrap().flow.value
        };
        let (middle, to) = (from + first, from + first + second);
        let whole = part(from, to);
        prop_assert!((whole - part(from, middle) - part(middle, to)).abs() <= 1e-12);
        prop_assert!(whole >= 0.0);
    }

    #[test]
    fn steps_of_one_width_are_one_notch(heights in prop::collection::vec(0.01..0.5, 1..6), head in 0.0..3.0) {
        let steps: Vec<_> = heights
            .iter()
            .map(|height| NotchStep { width: metres(1.5), height: metres(*height) })
            .collect();
        let stepped = stepped_notch(&steps, metres(head), &coefficient(0.62)).unwrap().flow.value;
        let plain = over(&Crest::Stated(coefficient(0.62)), 1.5, head);
        prop_assert!((stepped - plain).abs() <= 1e-12 * plain.max(1.0));
    }

    #[test]
    fn overtopping_is_the_most_of_the_plain_crests(length in 0.1..5.0, head in 0.0..1.0, height in 0.1..2.0) {
        let safe = overtopping(metres(length), metres(head), metres(height)).unwrap().flow.value;
        prop_assert!(safe >= over(&Crest::Sharp, length, head));
        prop_assert!(over(&Crest::Sharp, length, head) >= over(&Crest::Broad, length, head));
        let crest = Crest::SharpContracted { crest_height: metres(height) };
        if let Ok(contracted) = weir_flow(&crest, metres(length), metres(head)) {
            prop_assert!(safe >= contracted.flow.value);
        }
    }

    #[test]
    fn the_safe_coefficient_of_the_highest_head_covers_every_lower_head(head in 0.0..1.0, part in 0.0..1.0, height in 0.1..2.0) {
        let highest = WeirCoefficient::over_a_barrier(metres(head), metres(height));
        let lower = WeirCoefficient::over_a_barrier(metres(head * part), metres(height));
        prop_assert!(highest >= lower);
    }

    #[test]
    fn water_over_a_broad_crest_is_critical_at_two_thirds_of_the_head(head in 0.01..2.0) {
        let flow: VolumeRate = weir_flow(&Crest::Broad, metres(1.0), metres(head)).unwrap().flow;
        let on_each_metre: FlowPerLength = flow / metres(1.0);
        let depth = critical_depth(on_each_metre).unwrap();
        prop_assert!((depth.value / (head * 2.0 / 3.0) - 1.0).abs() < 1e-12);
    }
}
