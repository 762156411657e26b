//! Guide A pp. 70 to 82: sixteen glued 7/8 in rods of A36 steel, 12 in deep in cracked concrete of
//! 4,500 psi, 15 in thick, four rows 8 in apart of four 9 in apart, 6 in from one edge; No. 5
//! bars along it. The guide looks at the breakout in shear from its first three rows.

use super::*;
use approx::{assert_abs_diff_eq, assert_relative_eq};
use sillmark::anchor::{
    AnchorGroup, AnchorSystem, Anchorage, BaseMaterial, Bedding, Concrete, Ductility, Edge,
    EdgeReinforcement, Edges, Fixing, Mode, Outcome, Pullout, ShearCase, Side, Steel,
    SupplementaryReinforcement,
};

/// The first rows from the edge: for the breakout from row 2 those behind it do not count.
fn anchorage(rows: u32, shear_case: ShearCase) -> Anchorage {
    let mut approval = category_1(Pullout::Unstated);
    approval.bond = Some(pounds(128_489.0));
    let edges = Edges {
        y_minus: Edge::At(inches(6.0)),
        ..Edges::FAR
    };
    Anchorage {
        base: BaseMaterial::Concrete(Concrete {
            edge_reinforcement: EdgeReinforcement::Bar,
            ..Concrete::normal_weight(psi(4500.0), inches(15.0))
        }),
        fixing: Fixing::PostInstalled {
            system: AnchorSystem::Adhesive,
            approval,
        },
        diameter: inches(0.875),
        embedment: Some(inches(12.0)),
        steel: Steel {
            // Guide B p. 300: 0.462 in² for 7/8 in.
            area: Some(square_inches(0.462)),
            ultimate: Some(psi(58_000.0)),
            yield_strength: Some(psi(36_000.0)),
            ductility: Some(Ductility::Ductile),
        },
        bedding: Bedding::Direct,
        group: AnchorGroup::grid((4, inches(9.0)), (rows, inches(8.0)), edges).unwrap(),
        shear_case,
    }
}

/// P. 73: four rows of four, as its sums print them.
#[test]
fn breakout_in_tension() {
    let check = anchorage(4, ShearCase::FrontRow)
        .check(&tension(10_000.0, 16))
        .unwrap();
    let breakout = check.tension.mode(Mode::TensionBreakout).unwrap();
    assert_abs_diff_eq!(factor(breakout, "N_b"), 47_405.0, epsilon = 1.0);
    assert_abs_diff_eq!(factor(breakout, "A_Nc"), 3024.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "A_Nco"), 1296.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "psi_ed,N"), 0.80, epsilon = 1e-9);
    assert_abs_diff_eq!(nominal(breakout), 88_489.0, epsilon = 2.0);
    // P. 82: φ 0.65, 17.4 %; bond 83,518 lb, 12.0 %; steel 625 lb an anchor, 3.1 %.
    assert_abs_diff_eq!(design(breakout), 57_518.0, epsilon = 2.0);
    assert_abs_diff_eq!(breakout.utilisation(), 0.174, epsilon = 5e-4);
    let bond = check.tension.mode(Mode::Bond).unwrap();
    assert_abs_diff_eq!(design(bond), 83_518.0, epsilon = 1.0);
    assert_abs_diff_eq!(bond.utilisation(), 0.120, epsilon = 5e-4);
    let steel = check.tension.mode(Mode::SteelTension).unwrap();
    assert_relative_eq!(nominal(steel), 26_780.0, max_relative = 1e-3);
    assert_abs_diff_eq!(steel.utilisation(), 0.031, epsilon = 5e-4);
    assert_eq!(
        check.tension.governing().unwrap().mode,
        Mode::TensionBreakout
    );
    assert_eq!(check.outcome(), Outcome::Holds);
}

/// P. 82: steel 16,070 lb (0.6 of `A_se` `f_uta`), φ 0.65; pryout is twice the breakout.
#[test]
fn steel_and_pryout() {
    let demand = shear(Side::YMinus, 50_000.0, 16);
    let check = anchorage(4, ShearCase::FrontRow).check(&demand).unwrap();
    let steel = check.shear.mode(Mode::SteelShear).unwrap();
    assert_relative_eq!(nominal(steel), 16_070.0, max_relative = 1e-3);
    assert_relative_eq!(design(steel), 10_446.0, max_relative = 1e-3);
    assert_abs_diff_eq!(steel.utilisation(), 0.299, epsilon = 5e-4);
    let pryout = check.shear.mode(Mode::Pryout).unwrap();
    assert_abs_diff_eq!(nominal(pryout), 176_978.0, epsilon = 4.0);
    assert_abs_diff_eq!(design(pryout), 123_885.0, epsilon = 3.0);
    assert_abs_diff_eq!(pryout.utilisation(), 0.404, epsilon = 5e-4);
}

/// P. 77, from row 1.
#[test]
fn breakout_in_shear_from_row_1() {
    let demand = shear(Side::YMinus, 16_667.0, 12);
    let check = anchorage(3, ShearCase::FrontRow).check(&demand).unwrap();
    let mode = Mode::ShearBreakout {
        edge: Side::YMinus,
        toward: true,
    };
    let breakout = check.shear.mode(mode).unwrap();
    assert_abs_diff_eq!(factor(breakout, "V_b(a)"), 9785.0, epsilon = 1.0);
    assert_abs_diff_eq!(factor(breakout, "V_b(b)"), 8873.0, epsilon = 1.0);
    assert_abs_diff_eq!(factor(breakout, "A_Vc"), 405.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "A_Vco"), 162.0, epsilon = 1e-6);
    assert_abs_diff_eq!(nominal(breakout), 26_619.0, epsilon = 2.0);
}

/// P. 78 and 82, from row 2, 14 in from the edge: the concrete is thinner than 1.5 `c_a1`. The
/// guide rounds `ψ_h,V` = 1.183 to 1.18.
#[test]
fn breakout_in_shear_from_row_2() {
    let demand = shear(Side::YMinus, 33_333.0, 8);
    let mut anchorage = anchorage(2, ShearCase::WeldedBackRow);
    if let BaseMaterial::Concrete(concrete) = &mut anchorage.base {
        concrete.supplementary = SupplementaryReinforcement::Present;
    }
    let check = anchorage.check(&demand).unwrap();
    let mode = Mode::ShearBreakout {
        edge: Side::YMinus,
        toward: true,
    };
    let breakout = check.shear.mode(mode).unwrap();
    assert_abs_diff_eq!(factor(breakout, "A_Vc"), 1035.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "A_Vco"), 882.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(breakout, "psi_h,V"), 1.18, epsilon = 5e-3);
    assert_relative_eq!(nominal(breakout), 52_551.0, max_relative = 4e-3);
    // φ 0.75: the guide counts the bars as supplementary reinforcement.
    assert_relative_eq!(design(breakout), 39_413.0, max_relative = 4e-3);
}
