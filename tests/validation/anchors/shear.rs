//! Breakout in shear and pryout.

use super::*;
use approx::{assert_abs_diff_eq, assert_relative_eq};
use sillmark::anchor::{
    AnchorGroup, Anchorage, BaseMaterial, Bedding, Concrete, Cracking, Edge, EdgeReinforcement,
    Edges, Mode, ShearCase, Side, Steel,
};

/// Guide A p. 98: 5,000 psi, 6 in from the edge, 3/4 in rods 10 in deep, four 9 in apart, No. 5
/// bars along the edge.
#[test]
fn a_row_6_in_from_the_edge() {
    let edges = Edges {
        y_minus: Edge::At(inches(6.0)),
        ..Edges::FAR
    };
    let concrete = Concrete {
        edge_reinforcement: EdgeReinforcement::Bar,
        ..Concrete::normal_weight(psi(5000.0), inches(12.0))
    };
    let group = AnchorGroup::grid((4, inches(9.0)), (1, inches(1.0)), edges).unwrap();
    let check = wedge(concrete, (0.75, 10.0), group, ShearCase::FrontRow, 0.0);
    let breakout = check.shear.mode(TOWARD).unwrap();
    assert_abs_diff_eq!(factor(breakout, "l_e"), 6.0, epsilon = 1e-9);
    assert_abs_diff_eq!(factor(breakout, "V_b(a)"), 9549.0, epsilon = 1.0);
    assert_abs_diff_eq!(factor(breakout, "V_b(b)"), 9353.0, epsilon = 1.0);
    assert_abs_diff_eq!(nominal(breakout), 28_059.0, epsilon = 2.0);
}

/// Guide A pp. 123 and 124: the same concrete, 18 in from the edge and 12 in from the corner,
/// 0.361 in off centre: every factor but the lightweight one is at work.
#[test]
fn a_row_18_in_from_the_edge_near_a_corner() {
    let edges = Edges {
        y_minus: Edge::At(inches(18.0)),
        x_minus: Edge::At(inches(12.0)),
        ..Edges::FAR
    };
    let concrete = Concrete {
        edge_reinforcement: EdgeReinforcement::Bar,
        ..Concrete::normal_weight(psi(5000.0), inches(12.0))
    };
    let group = AnchorGroup::grid((4, inches(9.0)), (1, inches(1.0)), edges).unwrap();
    let check = wedge(concrete, (0.75, 10.0), group, ShearCase::FrontRow, 0.361);
    let breakout = check.shear.mode(TOWARD).unwrap();
    assert_abs_diff_eq!(factor(breakout, "A_Vc"), 792.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "A_Vco"), 1458.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "psi_ec,V"), 0.987, epsilon = 5e-4);
    assert_abs_diff_eq!(factor(breakout, "psi_ed,V"), 0.833, epsilon = 5e-4);
    assert_abs_diff_eq!(factor(breakout, "psi_h,V"), 1.5, epsilon = 1e-9);
    assert_abs_diff_eq!(factor(breakout, "V_b(a)"), 49_618.0, epsilon = 1.0);
    assert_abs_diff_eq!(factor(breakout, "V_b"), 48_600.0, epsilon = 1.0);
    assert_relative_eq!(nominal(breakout), 39_070.0, max_relative = 1e-3);
}

/// Guide A p. 157: 1/2 in anchors 3.25 in deep, 3,000 psi, 6 in thick, 5 in from the edge. The
/// corner (7 in) and the spacing (4.2 in) follow from the printed `ψ_ed,V` and `A_Vc`. Toward the
/// edge 4,700 lb; parallel to it 9,592 lb.
#[test]
fn toward_an_edge_and_along_it() {
    let edges = Edges {
        y_minus: Edge::At(inches(5.0)),
        x_minus: Edge::At(inches(7.0)),
        ..Edges::FAR
    };
    let concrete = Concrete::normal_weight(psi(3000.0), inches(6.0));
    let group = AnchorGroup::grid((2, inches(4.2)), (1, inches(1.0)), edges).unwrap();
    let check = wedge(
        concrete.clone(),
        (0.5, 3.25),
        group,
        ShearCase::FrontRow,
        0.185,
    );
    let breakout = check.shear.mode(TOWARD).unwrap();
    assert_abs_diff_eq!(factor(breakout, "V_b(a)"), 4407.0, epsilon = 1.0);
    assert_abs_diff_eq!(factor(breakout, "V_b(b)"), 5511.0, epsilon = 1.0);
    assert_abs_diff_eq!(factor(breakout, "A_Vc"), 112.2, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "A_Vco"), 112.5, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "psi_h,V"), 1.118, epsilon = 5e-4);
    assert_relative_eq!(nominal(breakout), 4700.0, max_relative = 1e-3);

    // The same edge beside the force: the group turned by a right angle.
    let edges = Edges {
        x_minus: Edge::At(inches(5.0)),
        y_minus: Edge::At(inches(7.0)),
        ..Edges::FAR
    };
    let group = AnchorGroup::grid((1, inches(1.0)), (2, inches(4.2)), edges).unwrap();
    let check = wedge(concrete, (0.5, 3.25), group, ShearCase::FrontRow, 0.185);
    let beside = Mode::ShearBreakout {
        edge: Side::XMinus,
        toward: false,
    };
    let breakout = check.shear.mode(beside).unwrap();
    assert_abs_diff_eq!(factor(breakout, "psi_ed,V"), 1.0, epsilon = 0.0);
    assert_relative_eq!(nominal(breakout), 9592.0, max_relative = 1e-3);
}

/// Guide B p. 181 (17.7.2.5.1): 1.0, 1.2, 1.4 in cracked concrete, 1.4 in uncracked.
#[test]
fn reinforcement_of_the_edge() {
    let psi_cracking = |cracking, edge_reinforcement| {
        let edges = Edges {
            y_minus: Edge::At(inches(6.0)),
            ..Edges::FAR
        };
        let concrete = Concrete {
            cracking,
            edge_reinforcement,
            ..thick(4000.0)
        };
        let group = AnchorGroup::single(edges).unwrap();
        let check = wedge(concrete, (0.5, 4.0), group, ShearCase::FrontRow, 0.0);
        factor(check.shear.mode(TOWARD).unwrap(), "psi_c,V")
    };
    for (cracking, reinforcement, expected) in [
        (Cracking::Cracked, EdgeReinforcement::NoneOrSmall, 1.0),
        (Cracking::Cracked, EdgeReinforcement::Bar, 1.2),
        (Cracking::Cracked, EdgeReinforcement::BarInStirrups, 1.4),
        (Cracking::Uncracked, EdgeReinforcement::NoneOrSmall, 1.4),
        (Cracking::Uncracked, EdgeReinforcement::BarInStirrups, 1.4),
    ] {
        assert_abs_diff_eq!(
            psi_cracking(cracking, reinforcement),
            expected,
            epsilon = 0.0
        );
    }
}

/// Guide B p. 214 (17.7.3.1): `k_cp` is 1 below 2.5 in, 2 from there.
#[test]
fn pryout_steps_at_2_5_in() {
    let lever = |embedment: f64| {
        let group = AnchorGroup::single(Edges::FAR).unwrap();
        let anchorage = Anchorage {
            base: BaseMaterial::Concrete(thick(4000.0)),
            fixing: headed_stud(),
            diameter: inches(0.5),
            embedment: Some(inches(embedment)),
            steel: Steel::default(),
            bedding: Bedding::Direct,
            shear_case: ShearCase::FrontRow,
            group,
        };
        let check = anchorage.check(&shear(Side::YPlus, 100.0, 1)).unwrap();
        factor(check.shear.mode(Mode::Pryout).unwrap(), "k_cp")
    };
    assert_abs_diff_eq!(lever(2.49), 1.0, epsilon = 0.0);
    assert_abs_diff_eq!(lever(2.5), 2.0, epsilon = 0.0);
}
