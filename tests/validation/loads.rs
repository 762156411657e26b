//! Loads of the water against worked examples and derived values, each with its source.
//!
//! Where a source rounds, the tolerance is half a unit of its last digit. What is derived
//! from a formula shows that the formula is kept, not that somebody published the number.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use sillmark::load::{
    Behind, BreakingWave, CombinationSet, CommentaryImpact, DragCoefficient, FactorBasis, Flow,
    GuidanceImpact, LEAST_HEAD_COEFFICIENT, LoadZone, PressureProfile, RiskCategory, Salinity,
    SoilGroup, StoppedObject, StruckStructure, WaterCase, breaking_wave_height,
    stillwater_depth_under_crest, velocity_bounds, velocity_head,
};
use sillmark::quantity::unit::{
    Force, Length, Velocity, foot, foot_per_second, in_newtons_per_metre, in_pounds_per_foot,
    kilonewton, kilopascal, meter, newton, newtons_per_cubic_metre, pound_force,
    pound_per_square_foot, pounds_per_cubic_foot,
};

fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

fn metres(number: f64) -> Length {
    Length::new::<meter>(number)
}

fn feet_per_second(number: f64) -> Velocity {
    Velocity::new::<foot_per_second>(number)
}

/// T. B. Quimby, A Beginner's Guide to ASCE 7-10, section 6.7.2 (rev. 11/04/2014): at a
/// stillwater depth of 3.25 ft the velocity lies between 3.25 and 10.23 ft/s, here with the
/// velocity head on the same depth in salt water at the guide's a 1.25 and V 6.75 ft/s. The
/// head, 0.8844 ft, and its pressure, 56.6 psf, are derived: the guide's own were not at hand.
#[test]
fn beginners_guide_velocity_and_its_head() {
    let depth = feet(3.25);
    let bounds = velocity_bounds(depth);
    let (lower, upper) = (bounds.lower, bounds.upper);
    assert_abs_diff_eq!(upper.get::<foot_per_second>(), 10.23, epsilon = 0.005);
    assert_abs_diff_eq!(lower.get::<foot_per_second>(), 3.25, epsilon = 1e-9);
    let velocity = feet_per_second(6.75);
    let head = velocity_head(velocity, LEAST_HEAD_COEFFICIENT).unwrap();
    assert_abs_diff_eq!(head.get::<foot>(), 0.8844, epsilon = 5e-5);
    let flow = Flow {
        velocity,
        ground: Length::default(),
        surface: depth,
        salinity: Salinity::Salt,
        head_coefficient: LEAST_HEAD_COEFFICIENT,
        wall_width: None,
    };
    let pressure = flow.load().unwrap().pressure;
    assert_abs_diff_eq!(
        pressure.get::<pound_per_square_foot>(),
        56.6,
        epsilon = 0.05
    );
}

/// Derived from dh = a·V²/(2g) with a 1.25 and g 32.2 ft/s² (Simi Valley Municipal Code
/// 7-5.703); "about 2 ft" at 10 ft/s was said on a structural engineers' list in 2004.
#[test]
fn velocity_heads_up_to_ten_feet_a_second() {
    for (velocity, expected) in [(3.0, 0.1747), (5.0, 0.4852), (8.0, 1.2422), (10.0, 1.9410)] {
        let head = velocity_head(feet_per_second(velocity), 1.25).unwrap();
        assert_abs_diff_eq!(head.get::<foot>(), expected, epsilon = 1e-4);
    }
}

/// Derived from W·V/(g·t) with 1,000 lb stopped in 0.5 s (Simi Valley Municipal Code 7-5.704).
#[test]
fn normal_impact_by_velocity() {
    for (velocity, expected) in [(3.0, 186.3), (5.0, 310.6), (8.0, 496.9), (10.0, 621.1)] {
        let force = StoppedObject::default().force(feet_per_second(velocity));
        assert_abs_diff_eq!(
            force.unwrap().get::<pound_force>(),
            expected,
            epsilon = 0.05
        );
    }
}

/// The same object by the commentary of ASCE 7 before its coefficients, 0.03 s in place of
/// 0.5 s: some 17 times the force (and π/2, which stands for the shape of the pulse).
#[test]
fn the_commentary_stops_seventeen_times_as_hard() {
    let velocity = feet_per_second(5.0);
    let mut bare = CommentaryImpact::usual(RiskCategory::II, 1.0, 1.0, 1.0);
    bare.orientation = 1.0;
    let ratio = bare.force(velocity).unwrap() / StoppedObject::default().force(velocity).unwrap();
    assert_abs_diff_eq!(
        ratio.value / std::f64::consts::FRAC_PI_2,
        0.5 / 0.03,
        epsilon = 1e-9
    );
}

/// FEMA P-55 (2011) vol. II Eq. 8.9 against the commentary of ASCE 7 (both from memory):
/// π·CI·CO·Rmax/(2·g·Δt) with CI 1, CO 0.8 and Δt 0.03 s gives `CStr` 0.2, 0.4 and 0.8 at Rmax
/// 0.154, 0.307 and 0.615 (derived).
#[test]
fn structure_coefficients_stand_for_plausible_responses() {
    use StruckStructure::{
        ConcreteFoundationWall, ConcretePileOrMomentFrame, TimberPileOrMasonryColumn,
    };
    let velocity = feet_per_second(6.0);
    for (structure, table, response) in [
        (TimberPileOrMasonryColumn, 0.2, 0.154),
        (ConcretePileOrMomentFrame, 0.4, 0.307),
        (ConcreteFoundationWall, 0.8, 0.615),
    ] {
        let guidance = GuidanceImpact {
            weight: Force::new::<pound_force>(1000.0),
            depth_coefficient: 1.0,
            blockage: 1.0,
            structure,
        };
        let force = guidance.force(velocity).unwrap();
        assert_abs_diff_eq!(force.get::<pound_force>(), 6000.0 * table, epsilon = 1e-6);
        let commentary = CommentaryImpact::usual(RiskCategory::II, 1.0, 1.0, response);
        assert_relative_eq!(
            commentary.force(velocity).unwrap().value,
            force.value,
            max_relative = 3e-3
        );
    }
}

/// FEMA P-259 chapter 4 (from memory): F = γ·H²/2 + (S − γ)·D²/2 with γ 62.4 pcf, H 5 ft and
/// D 4 ft; the forces are derived.
#[test]
fn saturated_soil_by_group() {
    for (group, expected) in [
        (SoilGroup::CleanSandOrGravel, 880.8),
        (SoilGroup::SandOrGravelWithFines, 896.8),
        (SoilGroup::StiffSiltOrClay, 936.8),
        (SoilGroup::SoftClay, 1128.8),
        (SoilGroup::ClayChunks, 1416.8),
    ] {
        let case = WaterCase {
            soil: Some(group),
            ..WaterCase::still(feet(5.0), feet(-4.0), Salinity::Fresh)
        };
        let force = case.load().unwrap().total().resultant().force;
        assert_abs_diff_eq!(in_pounds_per_foot(force), expected, epsilon = 1e-6);
    }
}

/// ASCE 7 section 5.4.4 as FEMA P-55 (2011) vol. II Eq. 8.6a and 8.6b and a public coastal
/// calculation have it; Cp 1.6, 2.8 and 3.5 from memory. Numbers in pounds and feet.
#[test]
fn breaking_wave_terms() {
    let depth = stillwater_depth_under_crest(feet(8.0));
    assert_abs_diff_eq!(depth.get::<foot>(), 5.2, epsilon = 1e-9);
    let height = breaking_wave_height(depth);
    assert_abs_diff_eq!(height.get::<foot>(), 4.056, epsilon = 1e-9);
    let (gamma, d) = (64.0, 5.2);
    for (category, cp) in [
        (RiskCategory::I, 1.6),
        (RiskCategory::II, 2.8),
        (RiskCategory::III, 3.2),
        (RiskCategory::IV, 3.5),
    ] {
        for (behind, standing, exact) in [(Behind::Dry, 2.4, 2.42), (Behind::EqualWater, 1.9, 1.92)]
        {
            let wave = BreakingWave {
                stillwater_depth: depth,
                sill_above_ground: feet(1.0),
                category,
                weight: Salinity::Salt.specific_weight(),
                behind,
            };
            let greatest = wave.greatest_pressure().get::<pound_per_square_foot>();
            assert_abs_diff_eq!(greatest, (cp + 1.2) * gamma * d, epsilon = 1e-6);
            let code = in_pounds_per_foot(wave.code_force());
            assert_abs_diff_eq!(code, (1.1 * cp + standing) * gamma * d * d, epsilon = 1e-6);
            let triangles = in_pounds_per_foot(wave.profile().resultant().force);
            let geometry = (1.1 * cp + exact) * gamma * d * d;
            assert_abs_diff_eq!(triangles, geometry, epsilon = 1e-6);
            assert_relative_eq!(triangles, code, max_relative = 0.01);
        }
    }
}

/// New York City Building Code 1605.3.1.2: a flood load of 1.0 alone counts 1.5 in zones V
/// and Coastal A, 0.75 in other zones A.
#[test]
fn flood_load_alone_with_allowable_stresses() {
    let sets = CombinationSet::shipped().unwrap();
    let code = sets.iter().find(|set| set.id == "asce7-16-flood").unwrap();
    for (zone, expected) in [(LoadZone::Coastal, 1.5), (LoadZone::Other, 0.75)] {
        let (factor, _) = code.factor(zone, FactorBasis::Allowable).unwrap();
        assert_abs_diff_eq!(factor, expected);
        assert_eq!(code.combinations(zone, FactorBasis::Allowable).count(), 3);
    }
}

/// A textbook page on forces on submerged surfaces (openknowledgegraph.com): a gate 2 m wide
/// and 3 m high with its top edge 1 m deep, 9.81 kN/m³: 147,150 N, the centre of pressure
/// 2.80 m below the surface.
#[test]
fn a_gate_below_the_surface() {
    let gate = PressureProfile::still_water(metres(4.0), newtons_per_cubic_metre(9810.0))
        .clipped(metres(0.0), metres(3.0))
        .resultant();
    let force = gate.force * metres(2.0);
    assert_abs_diff_eq!(force.get::<newton>(), 147_150.0, epsilon = 1e-6);
    assert_abs_diff_eq!(4.0 - gate.height.get::<meter>(), 2.80, epsilon = 1e-9);
}

/// Dock Engineering p. 322 (tekniskkulturarv.dk): a gate of two leaves under 30 ft of water of
/// 64 pcf; with half-leaves of 39.75 and 38.75 ft and a rise of 11.16 ft the thrust between
/// the leaves is 1,987,500 lb or 887.3 long tons.
#[test]
fn the_thrust_of_a_dock_gate() {
    let water = PressureProfile::still_water(feet(30.0), pounds_per_cubic_foot(64.0)).resultant();
    let thrust = water.force * feet(39.75) * feet(38.75) / (feet(11.16) * 2.0);
    assert_abs_diff_eq!(thrust.get::<pound_force>(), 1_987_500.0, epsilon = 1.0);
    assert_abs_diff_eq!(thrust.get::<pound_force>() / 2240.0, 887.3, epsilon = 0.05);
}

/// The same page: zones of equal load end at the depths H·√(i/n). With 7.2 m and three zones
/// they end at 4.1569 and 5.8788 m, and beams that carry a zone each lie at its centre of
/// pressure, 2.7713, 5.0671 and 6.5616 m (derived).
#[test]
fn zones_of_equal_load() {
    let depth = 7.2;
    let water = PressureProfile::still_water(metres(depth), newtons_per_cubic_metre(9810.0));
    let third = water.resultant().force / 3.0;
    let ends = [0.0, 4.1569, 5.8788, depth];
    for (zone, beam) in ends.windows(2).zip([2.7713, 5.0671, 6.5616]) {
        let (top, bottom) = (metres(depth - zone[0]), metres(depth - zone[1]));
        let force = water.force_between(bottom, top);
        assert_relative_eq!(force.value, third.value, max_relative = 1e-4);
        let above_bottom = water.moment_between(bottom, top) / force;
        let centre = metres(depth) - bottom - above_bottom;
        assert_abs_diff_eq!(centre.get::<meter>(), beam, epsilon = 1e-4);
    }
}

/// Derived from p = γ·h, f = γ·h²/2, m = γ·h³/6 with 9.81 kN/m³: one metre of water.
#[test]
fn one_metre_of_water() {
    let water = PressureProfile::still_water(metres(1.0), newtons_per_cubic_metre(9810.0));
    let (pressure, height) = water.greatest();
    assert_abs_diff_eq!(pressure.get::<kilopascal>(), 9.81, epsilon = 1e-9);
    assert_eq!(height, Length::default());
    let resultant = water.resultant();
    assert_abs_diff_eq!(
        in_newtons_per_metre(resultant.force),
        4905.0,
        epsilon = 1e-6
    );
    assert_abs_diff_eq!(resultant.moment.get::<kilonewton>(), 1.635, epsilon = 1e-9);
}

/// Derived from the same formulas with 62.4 pcf: three feet of water.
#[test]
fn three_feet_of_water() {
    let water = PressureProfile::still_water(feet(3.0), Salinity::Fresh.specific_weight());
    let pressure = water.greatest().0.get::<pound_per_square_foot>();
    assert_abs_diff_eq!(pressure, 187.2, epsilon = 1e-6);
    let resultant = water.resultant();
    assert_abs_diff_eq!(in_pounds_per_foot(resultant.force), 280.8, epsilon = 1e-6);
    assert_abs_diff_eq!(resultant.moment.get::<pound_force>(), 280.8, epsilon = 1e-6);
}

/// FEMA P-55 (2011) vol. II table 8-2 (from memory): drag coefficients by width over depth, at
/// both ends of each band.
#[test]
fn drag_coefficients_at_the_ends_of_their_bands() {
    for (from, to, expected) in [
        (1.0, 12.0, 1.25),
        (13.0, 20.0, 1.30),
        (21.0, 32.0, 1.40),
        (33.0, 40.0, 1.50),
        (41.0, 80.0, 1.75),
        (81.0, 120.0, 1.80),
        (121.0, 5000.0, 2.00),
    ] {
        for ratio in [from, to] {
            let drag = DragCoefficient::of(feet(ratio * 3.0), feet(3.0));
            assert_abs_diff_eq!(drag.value, expected, epsilon = 1e-12);
        }
    }
}
