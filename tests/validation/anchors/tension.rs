//! Tension.

use super::*;
use approx::{assert_abs_diff_eq, assert_relative_eq};
use sillmark::anchor::{
    AnchorGroup, AnchorSystem, Anchorage, BaseMaterial, Bedding, CastInShape, Concrete, Cracking,
    Demand, Edge, Edges, Fixing, Mode, ShearCase, Side, Steel, TensionAnchors, TensionDemand,
};
use sillmark::quantity::unit::pound_force;

/// Guide A p. 145: `N_b` 7,449 lb at 3,000 psi and 4 in; eccentricities of 0.2 and 0.1 in. Its
/// anchors stand irregularly, so its `A_Nc` of 397.68 in² is put in for that of our four.
#[test]
fn eccentricity_in_two_directions() {
    let anchorage = Anchorage {
        base: BaseMaterial::Concrete(thick(3000.0)),
        fixing: post_installed(AnchorSystem::TorqueControlled),
        diameter: inches(0.5),
        embedment: Some(inches(4.0)),
        steel: Steel::default(),
        bedding: Bedding::Direct,
        shear_case: ShearCase::FrontRow,
        group: AnchorGroup::grid((2, inches(4.0)), (2, inches(4.0)), Edges::FAR).unwrap(),
    };
    let demand = Demand {
        tension: Some(TensionDemand {
            anchors: TensionAnchors::All,
            force: pounds(1000.0),
            eccentricity_x: inches(0.2),
            eccentricity_y: inches(0.1),
            greatest: pounds(300.0),
        }),
        shear: None,
    };
    let check = anchorage.check(&demand).unwrap();
    let breakout = check.tension.mode(Mode::TensionBreakout).unwrap();
    let (x, y) = (
        factor(breakout, "psi_ec,N,x"),
        factor(breakout, "psi_ec,N,y"),
    );
    assert_abs_diff_eq!(factor(breakout, "N_b"), 7449.0, epsilon = 1.0);
    assert_abs_diff_eq!(x, 0.968, epsilon = 5e-4);
    assert_abs_diff_eq!(y, 0.984, epsilon = 5e-4);
    assert_abs_diff_eq!(x * y, 0.952, epsilon = 5e-4);
    let (ours, single) = (factor(breakout, "A_Nc"), factor(breakout, "A_Nco"));
    assert_abs_diff_eq!(single, 144.0, epsilon = 1e-9);
    // The guide goes on from the rounded 0.952.
    let rounded = nominal(breakout) / (x * y) * 0.952;
    assert_abs_diff_eq!(rounded * 397.68 / ours, 19_584.0, epsilon = 2.0);
}

/// Guide B pp. 61, 213 and 217 (17.6.2.6.1, Table 17.9.5): critical edge distances of 4, 4, 4,
/// 2.5 and 2 `h_ef`, in uncracked concrete alone.
#[test]
fn critical_edge_distances() {
    let splitting = |fixing, cracking, distance| {
        let edges = Edges {
            y_minus: Edge::At(inches(distance)),
            ..Edges::FAR
        };
        let concrete = Concrete {
            cracking,
            ..thick(4000.0)
        };
        let group = AnchorGroup::single(edges).unwrap();
        factor(&cone(fixing, concrete, 4.0, group), "psi_cp,N")
    };
    for (system, embedments) in [
        (AnchorSystem::TorqueControlled, 4.0),
        (AnchorSystem::DisplacementControlled, 4.0),
        (AnchorSystem::Screw, 4.0),
        (AnchorSystem::Undercut, 2.5),
        (AnchorSystem::Adhesive, 2.0),
    ] {
        let fixing = || post_installed(system);
        let at = |distance| splitting(fixing(), Cracking::Uncracked, distance);
        assert_abs_diff_eq!(at(embedments * 4.0), 1.0, epsilon = 1e-9);
        assert_abs_diff_eq!(at(embedments * 4.0 * 0.9), 0.9, epsilon = 1e-9);
        // Not below 1.5 h_ef / c_ac.
        assert_abs_diff_eq!(at(1.0), 1.5 / embedments, epsilon = 1e-9);
        assert_abs_diff_eq!(
            splitting(fixing(), Cracking::Cracked, 1.0),
            1.0,
            epsilon = 0.0
        );
    }
    let cast_in = splitting(headed_stud(), Cracking::Uncracked, 1.0);
    assert_abs_diff_eq!(cast_in, 1.0, epsilon = 0.0);
}

/// Guide B p. 217 (17.6.2.2.3): 16 `λ_a` √f'c `h_ef`^(5/3) for headed anchors from 11 to 25 in.
#[test]
fn deep_headed_anchors() {
    let basic = |fixing, embedment| {
        let group = AnchorGroup::single(Edges::FAR).unwrap();
        factor(&cone(fixing, thick(4000.0), embedment, group), "N_b")
    };
    // 16 · 63.2456 · 20^(5/3), by hand; 24 · 63.2456 · 10^1.5; 17 · 63.2456 · 20^1.5.
    assert_relative_eq!(basic(headed_stud(), 20.0), 149_119.0, max_relative = 1e-5);
    assert_relative_eq!(basic(headed_stud(), 10.0), 48_000.0, max_relative = 1e-5);
    let undercut = post_installed(AnchorSystem::Undercut);
    assert_relative_eq!(basic(undercut, 20.0), 96_166.0, max_relative = 1e-5);
}

/// Guide B p. 264 (Table 17.2.4.1): `λ_a` is λ for cast-in and undercut anchors, 0.8 λ for others.
#[test]
fn lightweight_concrete() {
    let lambda = |fixing| {
        let concrete = Concrete {
            lambda: 0.75,
            ..thick(4000.0)
        };
        factor(
            &cone(
                fixing,
                concrete,
                4.0,
                AnchorGroup::single(Edges::FAR).unwrap(),
            ),
            "lambda_a",
        )
    };
    assert_abs_diff_eq!(lambda(headed_stud()), 0.75, epsilon = 1e-12);
    assert_abs_diff_eq!(
        lambda(post_installed(AnchorSystem::Undercut)),
        0.75,
        epsilon = 1e-12
    );
    assert_abs_diff_eq!(
        lambda(post_installed(AnchorSystem::Screw)),
        0.60,
        epsilon = 1e-12
    );
    assert_abs_diff_eq!(
        lambda(post_installed(AnchorSystem::Adhesive)),
        0.60,
        epsilon = 1e-12
    );
}

/// Guide B p. 112 (17.6.4): `N_sb` = 160 `c_a1` √`A_brg` `λ_a` √f'c; (1 + `c_a2`/`c_a1`)/4 at a corner; a
/// group 1 + s/(6 `c_a1`). The numbers by hand: 160 · 3 · √1 · √4000 = 30,357.9 lb.
#[test]
fn side_face_blowout() {
    let burst = |columns, corner| {
        let edges = Edges {
            y_plus: Edge::At(inches(3.0)),
            x_minus: corner,
            ..Edges::FAR
        };
        let anchorage = Anchorage {
            base: BaseMaterial::Concrete(thick(4000.0)),
            fixing: Fixing::CastIn {
                shape: CastInShape::HeadedBolt,
                head_bearing: Some(square_inches(1.0)),
            },
            diameter: inches(0.75),
            embedment: Some(inches(10.0)),
            steel: Steel::default(),
            bedding: Bedding::Direct,
            shear_case: ShearCase::FrontRow,
            group: AnchorGroup::grid((columns, inches(9.0)), (2, inches(9.0)), edges).unwrap(),
        };
        let check = anchorage.check(&tension(1000.0 * f64::from(columns) * 2.0, columns * 2));
        let check = check.unwrap();
        check
            .tension
            .mode(Mode::SideFaceBlowout { edge: Side::YPlus })
            .unwrap()
            .clone()
    };
    let single = burst(1, Edge::Far);
    assert_abs_diff_eq!(nominal(&single), 30_357.9, epsilon = 0.1);
    assert_abs_diff_eq!(single.demand.get::<pound_force>(), 1000.0, epsilon = 1e-6);
    let corner = burst(1, Edge::At(inches(6.0)));
    assert_abs_diff_eq!(nominal(&corner), 30_357.9 * 0.75, epsilon = 0.1);
    let group = burst(2, Edge::Far);
    assert_abs_diff_eq!(nominal(&group), 30_357.9 * 1.5, epsilon = 0.1);
    assert_abs_diff_eq!(group.demand.get::<pound_force>(), 2000.0, epsilon = 1e-6);
}
