//! Saturated soil.

use approx::assert_relative_eq;
use proptest::prelude::*;
use sillmark::load::{PressureProfile, Salinity, SoilGroup, saturated_soil};
use sillmark::quantity::unit::{in_pounds_per_foot, pound_per_square_foot};
use sillmark::statement::Choice;

use super::feet;

proptest! {
    #[test]
    fn water_and_soil_press_as_the_formula(
        over in 0.0..6.0_f64,
        buried in 0.1..6.0_f64,
        group in prop::sample::select(SoilGroup::CHOICES),
    ) {
        let (depth, water) = (over + buried, Salinity::Fresh.specific_weight());
        let soil = saturated_soil(feet(buried), group.1, water).unwrap();
        let both = soil.plus(&PressureProfile::still_water(feet(depth), water));
        let extra = group.1.equivalent_fluid_weight().value / water.value * 62.4 - 62.4;
        let formula = 62.4 * depth * depth / 2.0 + extra * buried * buried / 2.0;
        assert_relative_eq!(in_pounds_per_foot(both.resultant().force), formula, max_relative = 1e-9);
        // The soil does not press above the ground.
        let above = soil.pressure_at(feet(buried + 0.01)).get::<pound_per_square_foot>();
        prop_assert!(above.abs() < 1e-12);
    }
}

#[test]
fn a_buried_height_below_zero_is_refused() {
    for buried in [-0.1, f64::NAN, f64::INFINITY] {
        let water = Salinity::Fresh.specific_weight();
        assert!(saturated_soil(feet(buried), SoilGroup::SoftClay, water).is_err());
    }
}

#[test]
fn heavier_groups_stand_later_in_the_list() {
    let weights: Vec<f64> = SoilGroup::CHOICES
        .iter()
        .map(|(_, group)| group.equivalent_fluid_weight().value)
        .collect();
    assert!(weights.is_sorted_by(|one, next| one < next));
    assert!(
        SoilGroup::CHOICES
            .iter()
            .all(|(_, group)| !group.classes().is_empty())
    );
}
