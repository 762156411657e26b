//! Whole planks that reach a height, and no more of them.

use proptest::prelude::*;
use sillmark::barrier::{Kit, planks_for};
use sillmark::quantity::Length;
use sillmark::quantity::unit::{foot, inch, meter};

proptest! {
    #[test]
    fn enough_and_not_one_too_many(height in 0.0..100.0_f64, cover in 0.01..1.0_f64) {
        let mut kit = Kit::demonstration().unwrap();
        kit.plank.cover = Length::new::<meter>(cover);
        let height = Length::new::<meter>(height);
        let stack = planks_for(height, &kit);
        // A micrometre short is taken for rounding.
        let rounding = Length::new::<meter>(1.000_001e-6);
        prop_assert!(stack.height + rounding >= height);
        if stack.count > 0 {
            prop_assert!(stack.height - kit.plank.cover < height);
        }
    }
}

#[test]
fn a_height_of_whole_planks_takes_no_further_one() {
    let kit = Kit::demonstration().unwrap(); // 6 in
    for planks in 0..40_u32 {
        // Added up in feet, so that binary rounding has its chance.
        let level = Length::new::<foot>(612.9 + 0.5 * f64::from(planks));
        let stack = planks_for(level - Length::new::<foot>(612.9), &kit);
        assert_eq!(stack.count, planks);
    }
    assert_eq!(planks_for(Length::new::<inch>(6.01), &kit).count, 2);
}

#[test]
fn water_that_just_reaches_the_top_does_not_stand_above_it() {
    let kit = Kit::demonstration().unwrap();
    for planks in 1..=40 {
        // Half feet, as a difference of two elevations far above their datum gives them.
        let height =
            Length::new::<foot>(615.3 + 0.5 * f64::from(planks)) - Length::new::<foot>(615.3);
        let stack = planks_for(height, &kit);
        assert_eq!(stack.count, planks);
        assert!(!stack.is_overtopped_by(height), "{planks} planks");
        assert!(stack.is_overtopped_by(height + Length::new::<inch>(0.1)));
    }
}
