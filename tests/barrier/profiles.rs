//! Sums over rectangles: what the textbook says of simple shapes, and what holds for all.

use approx::assert_relative_eq;
use proptest::prelude::*;
use sillmark::barrier::{ProfileError, Rectangle, SectionSums, section_sums};
use sillmark::quantity::Length;
use sillmark::quantity::unit::meter;

fn rectangle(x: f64, y: f64, width: f64, height: f64, hole: bool) -> Rectangle {
    let metres = Length::new::<meter>;
    Rectangle {
        x: metres(x),
        y: metres(y),
        width: metres(width),
        height: metres(height),
        hole,
    }
}

fn same(one: &SectionSums, other: &SectionSums) {
    let pairs = [
        (one.depth.value, other.depth.value),
        (one.area.value, other.area.value),
        (one.second_moment.value, other.second_moment.value),
        (one.elastic_modulus.value, other.elastic_modulus.value),
        (one.plastic_modulus.value, other.plastic_modulus.value),
    ];
    for (one, other) in pairs {
        assert_relative_eq!(one, other, max_relative = 1e-9);
    }
}

#[test]
fn a_tee_by_hand() {
    // Flange 4 by 1 at the wet side, stem 1 by 3 behind it. Centroid (4·0.5 + 3·2.5) / 7 =
    // 19/14; the equal-area axis lies in the flange at 7/8.
    let sums = section_sums(&[
        rectangle(0.0, 0.0, 1.0, 4.0, false),
        rectangle(1.0, 1.5, 3.0, 1.0, false),
    ])
    .unwrap();
    let axis = 19.0 / 14.0;
    let second =
        4.0 / 12.0 + 4.0 * (axis - 0.5_f64).powi(2) + 27.0 / 12.0 + 3.0 * (2.5_f64 - axis).powi(2);
    assert_relative_eq!(sums.area.value, 7.0);
    assert_relative_eq!(sums.second_moment.value, second, max_relative = 1e-12);
    assert_relative_eq!(
        sums.elastic_modulus.value,
        second / (4.0 - axis),
        max_relative = 1e-12
    );
    let plastic = 4.0 * 0.875_f64.powi(2) / 2.0 + 4.0 * 0.125_f64.powi(2) / 2.0 + 3.0 * 1.625;
    assert_relative_eq!(sums.plastic_modulus.value, plastic, max_relative = 1e-12);
}

#[test]
fn a_gap_between_two_plates_is_no_metal() {
    // Two plates of 1 by 4, their middles 5 apart: Z = 2·4·2.5, I = 2·(4/12 + 4·2.5²).
    let sums = section_sums(&[
        rectangle(0.0, 0.0, 1.0, 4.0, false),
        rectangle(5.0, 0.0, 1.0, 4.0, false),
    ])
    .unwrap();
    assert_relative_eq!(sums.plastic_modulus.value, 20.0, max_relative = 1e-12);
    assert_relative_eq!(
        sums.second_moment.value,
        2.0 * (4.0 / 12.0 + 25.0),
        max_relative = 1e-12
    );
}

#[test]
fn what_is_no_profile() {
    assert_eq!(section_sums(&[]), Err(ProfileError::Empty));
    let bar = rectangle(0.0, 0.0, 2.0, 6.0, false);
    assert_eq!(section_sums(&[bar, bar]), Err(ProfileError::Overlap(1, 2)));
    let hole = rectangle(0.0, 0.0, 2.0, 6.0, true);
    assert_eq!(section_sums(&[bar, hole]), Err(ProfileError::Empty));
    assert_eq!(section_sums(&[hole]), Err(ProfileError::HoleOutside(1)));
}

proptest! {
    #[test]
    fn a_box_is_the_difference_of_two_bars(
        depth in 0.02..0.3_f64, breadth in 0.05..0.4_f64, wall in 0.05..0.45_f64,
        (right, up) in (-1.0..1.0_f64, -1.0..1.0_f64),
    ) {
        let wall = wall * depth.min(breadth);
        let (inner_depth, inner_breadth) = (depth - 2.0 * wall, breadth - 2.0 * wall);
        let drawn = section_sums(&[
            rectangle(right, up, depth, breadth, false),
            rectangle(right + wall, up + wall, inner_depth, inner_breadth, true),
        ]).unwrap();
        let second = (breadth * depth.powi(3) - inner_breadth * inner_depth.powi(3)) / 12.0;
        let plastic = (breadth * depth.powi(2) - inner_breadth * inner_depth.powi(2)) / 4.0;
        prop_assert!((drawn.second_moment.value / second - 1.0).abs() < 1e-9);
        prop_assert!((drawn.elastic_modulus.value / (second / (depth / 2.0)) - 1.0).abs() < 1e-9);
        prop_assert!((drawn.plastic_modulus.value / plastic - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_mirrored_or_moved_or_cut_profile_is_the_same(
        bars in prop::collection::vec((0.002..0.05_f64, 0.01..0.2_f64), 1..6),
        (right, up) in (-1.0..1.0_f64, -1.0..1.0_f64),
    ) {
        // Bars one behind the other.
        let mut at = 0.0;
        let mut profile = Vec::new();
        for (width, height) in bars {
            profile.push(rectangle(at, 0.0, width, height, false));
            at += width;
        }
        let sums = section_sums(&profile).unwrap();
        let moved: Vec<_> = profile.iter().map(|bar| rectangle(
            right - bar.x.value - bar.width.value, up, bar.width.value, bar.height.value, false,
        )).collect();
        same(&sums, &section_sums(&moved).unwrap());
        let cut: Vec<_> = profile.iter().flat_map(|bar| {
            let (x, half, height) = (bar.x.value, bar.width.value / 2.0, bar.height.value);
            [rectangle(x, 0.0, half, height, false), rectangle(x + half, 0.0, half, height, false)]
        }).collect();
        same(&sums, &section_sums(&cut).unwrap());
        // No section is plastic before it is elastic, nor its metal outside its depth.
        prop_assert!(sums.plastic_modulus.value >= sums.elastic_modulus.value * (1.0 - 1e-12));
        let most = sums.area * sums.depth * sums.depth / 4.0;
        prop_assert!(sums.second_moment.value <= most.value * (1.0 + 1e-12));
    }
}
