//! Worked examples that were published elsewhere, each with its source.
//!
//! Where the source rounds, the tolerance is half a unit of its last digit.

use approx::assert_abs_diff_eq;
use sillmark::design::{BaseLevel, FloodEvent, KnownLevels, StatedLevel, design_level, rules};
use sillmark::level::depth_over_grade;
use sillmark::load::{
    Hydrostatic, Salinity, buoyant_force, depth_at_wall, hydrostatic_pressure, velocity_bounds,
};
use sillmark::quantity::unit::{
    Length, foot, foot_per_second, in_newtons_per_metre, in_pounds_per_foot, inch, kilonewton,
    meter, newtons_per_cubic_metre, pascal, pound_force, pound_per_square_foot,
    pound_per_square_inch, pounds_per_cubic_foot,
};
use sillmark::quantity::{AnnualChance, Elevation, parse_elevation};

fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

fn elevation(text: &str) -> Elevation {
    parse_elevation(text).unwrap()
}

fn in_feet(level: Elevation) -> f64 {
    level.height().get::<foot>()
}

/// T. B. Quimby, A Beginner's Guide to ASCE 7-10, section 6.7.1 (rev. 11/04/2014): a wall in
/// salt water, base flood elevation 54 ft, grade 50 ft, 1 ft of erosion and scour.
mod beginners_guide_hydrostatic {
    use super::*;

    fn load() -> Hydrostatic {
        let depth = depth_at_wall(
            elevation("54 ft NAVD88"),
            elevation("50 ft NAVD88"),
            feet(1.0),
        )
        .unwrap();
        Hydrostatic::of_depth(depth, Salinity::Salt.specific_weight())
    }

    #[test]
    fn depth_is_5_0_ft() {
        assert_abs_diff_eq!(load().depth.get::<foot>(), 5.0, epsilon = 1e-9);
    }

    #[test]
    fn pressure_at_the_foot_is_320_psf() {
        assert_abs_diff_eq!(
            load().pressure.get::<pound_per_square_foot>(),
            320.0,
            epsilon = 1e-9
        );
    }

    #[test]
    fn force_is_800_lb_on_a_foot_of_wall() {
        assert_abs_diff_eq!(in_pounds_per_foot(load().force), 800.0, epsilon = 1e-9);
    }

    #[test]
    fn force_on_a_wall_of_20_ft_is_16_0_kips() {
        let force = load().force * feet(20.0);
        assert_abs_diff_eq!(force.get::<pound_force>(), 16_000.0, epsilon = 1e-6);
    }

    #[test]
    fn the_resultant_is_3_ft_4_in_below_the_surface() {
        let load = load();
        let below_surface = load.depth - load.lever_arm;
        assert_abs_diff_eq!(below_surface.get::<inch>(), 40.0, epsilon = 1e-9);
    }
}

/// The same guide, section 6.7.2: bounds of the velocity at a stillwater depth of 3.25 ft,
/// with g = 32.2 ft/s² (ASCE 7-10 commentary Eqs. C5-1 and C5-2).
#[test]
fn beginners_guide_velocity_bounds() {
    let bounds = velocity_bounds(feet(3.25));
    assert_abs_diff_eq!(
        bounds.upper.get::<foot_per_second>(),
        10.23,
        epsilon = 0.005
    );
    assert_abs_diff_eq!(bounds.lower.get::<foot_per_second>(), 3.25, epsilon = 1e-9);
}

/// Flood-warning lecture slides that quote FEMA (slideplayer 4704598): water in a volume of
/// 5.5 × 14 × 1 ft at 62.4 lb/ft³ weighs 4,805 lb.
#[test]
fn lecture_slides_weight_of_water() {
    let volume = feet(5.5) * feet(14.0) * feet(1.0);
    let force = buoyant_force(volume, Salinity::Fresh.specific_weight());
    assert_abs_diff_eq!(force.get::<pound_force>(), 4805.0, epsilon = 1.0);
}

/// A textbook's example 2.3.1 (p. 31): 62.3 lb/ft³ and 288 ft give 124.6 lb/in²; 1 lb/in² is
/// 2.31 ft of water.
#[test]
fn textbook_pressure_of_288_ft() {
    let pressure = hydrostatic_pressure(feet(288.0), pounds_per_cubic_foot(62.3));
    assert_abs_diff_eq!(
        pressure.get::<pound_per_square_inch>(),
        124.6,
        epsilon = 0.05
    );
    let head = 288.0 / pressure.get::<pound_per_square_inch>();
    assert_abs_diff_eq!(head, 2.31, epsilon = 0.005);
}

/// Derived from p = γh, f = γh²/2, m = γh³/6 with γ = 9.81 kN/m³: one metre of water.
#[test]
fn derived_one_metre_of_water() {
    let load = Hydrostatic::of_depth(Length::new::<meter>(1.0), newtons_per_cubic_metre(9810.0));
    assert_abs_diff_eq!(load.pressure.get::<pascal>(), 9810.0, epsilon = 1e-6);
    assert_abs_diff_eq!(in_newtons_per_metre(load.force), 4905.0, epsilon = 1e-6);
    assert_abs_diff_eq!(load.moment.get::<kilonewton>(), 1.635, epsilon = 1e-9);
}

/// Derived from the same formulas with γ = 62.4 pcf: three feet of water. Force and moment
/// have the same digits because 3/3 is 1.
#[test]
fn derived_three_feet_of_water() {
    let load = Hydrostatic::of_depth(feet(3.0), Salinity::Fresh.specific_weight());
    assert_abs_diff_eq!(
        load.pressure.get::<pound_per_square_foot>(),
        187.2,
        epsilon = 1e-6
    );
    assert_abs_diff_eq!(in_pounds_per_foot(load.force), 280.8, epsilon = 1e-6);
    assert_abs_diff_eq!(load.moment.get::<pound_force>(), 280.8, epsilon = 1e-6);
}

/// 44 CFR 60.3(c)(7), as the FEMA glossary gives it: in zone AO the highest adjacent grade
/// plus the depth number, or 2 ft where the map has none.
#[test]
fn sheet_flow_is_counted_from_the_highest_adjacent_grade() {
    let grade = elevation("100.0 ft NAVD88");
    assert_abs_diff_eq!(
        in_feet(depth_over_grade(grade, None)),
        102.0,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(
        in_feet(depth_over_grade(grade, Some(feet(1.0)))),
        101.0,
        epsilon = 1e-9
    );
}

fn design(rule: &str, flood: &str, stated: &[StatedLevel]) -> f64 {
    let rules = rules().unwrap();
    let rule = rules.iter().find(|known| known.id == rule).unwrap();
    let levels = KnownLevels {
        flood: BaseLevel::Known(elevation(flood)),
        stated,
    };
    in_feet(design_level(rule, None, levels).unwrap().elevation)
}

fn stated(event: FloodEvent, level: &str) -> StatedLevel {
    StatedLevel {
        event,
        elevation: elevation(level),
        sd: None,
        source: "worked example".to_owned(),
    }
}

/// FEMA glossary, floodproofing certificate: a non-residential building gets full credit when
/// floodproofed to the base flood elevation + 1 ft.
#[test]
fn floodproofing_certificate_full_credit() {
    assert_abs_diff_eq!(
        design("us-nfip-floodproofing", "100 ft NAVD88", &[]),
        101.0,
        epsilon = 1e-9
    );
}

/// IRC R322.2.1: zone AE, base flood 100.0, design flood elevation 100.5: base flood + 1 ft
/// governs.
#[test]
fn residential_code_takes_the_higher() {
    let community = [stated(FloodEvent::Community, "100.5 ft NAVD88")];
    assert_abs_diff_eq!(
        design("us-residential-code-r322", "100 ft NAVD88", &community),
        101.0,
        epsilon = 1e-9
    );
    let higher = [stated(FloodEvent::Community, "102.5 ft NAVD88")];
    assert_abs_diff_eq!(
        design("us-residential-code-r322", "100 ft NAVD88", &higher),
        102.5,
        epsilon = 1e-9
    );
}

/// Nashua NH Ordinance O-21-058, section B(2): base flood 100, 0.2 % flood 102.6, design flood
/// elevation 101. Classes 1 to 3: 101.0; class 4: 102.6, the 0.2 % flood above base + 2 ft.
#[test]
fn floodproofing_by_flood_design_class() {
    let levels = [
        stated(
            FloodEvent::Chance(AnnualChance::ONE_IN_500),
            "102.6 ft NAVD88",
        ),
        stated(FloodEvent::Community, "101 ft NAVD88"),
    ];
    assert_abs_diff_eq!(
        design("us-floodproofing-class-1-2-3", "100 ft NAVD88", &levels),
        101.0,
        epsilon = 1e-9
    );
    assert_abs_diff_eq!(
        design("us-floodproofing-class-4", "100 ft NAVD88", &levels),
        102.6,
        epsilon = 1e-9
    );
}
