//! Whole checks, and the strength reduction factors.

use super::*;
use approx::{assert_abs_diff_eq, assert_relative_eq};
use sillmark::anchor::{
    AnchorGroup, AnchorSystem, Anchorage, Approval, BaseMaterial, Bedding, CastInShape, Category,
    Concrete, Demand, Ductility, Edge, Edges, Fixing, Mode, Outcome, Pullout, ShearCase,
    ShearDemand, Side, Steel, SupplementaryReinforcement, TensionDemand,
};

/// Guide A pp. 86 to 90: sixteen expansion anchors, approval's `k_c` 21, 5.75 in deep in cracked
/// concrete of 4,000 psi, 10 in thick, 9 in by 6 in apart, 8 in from one edge. Strengths of steel
/// and pullout are the approval's. The whole check, tension and shear.
#[test]
fn sixteen_expansion_anchors() {
    let mut approval = category_1(Pullout::Stated(pounds(14_939.0)));
    approval.coefficient_cracked = Some(21.0);
    approval.steel_tension = Some(pounds(41_365.0));
    approval.steel_shear = Some(pounds(22_825.0));
    let edges = Edges {
        y_minus: Edge::At(inches(8.0)),
        ..Edges::FAR
    };
    let anchorage = Anchorage {
        base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(10.0))),
        fixing: Fixing::PostInstalled {
            system: AnchorSystem::TorqueControlled,
            approval,
        },
        // Not printed on the pages read; at 1 in the smaller V_b is the one printed.
        diameter: inches(1.0),
        embedment: Some(inches(5.75)),
        steel: Steel {
            ductility: Some(Ductility::Ductile),
            ..Steel::default()
        },
        bedding: Bedding::Direct,
        group: AnchorGroup::grid((4, inches(9.0)), (4, inches(6.0)), edges).unwrap(),
        shear_case: ShearCase::FrontRow,
    };
    let demand = Demand {
        tension: Some(TensionDemand::even(pounds(10_000.0), 16)),
        shear: Some(ShearDemand::even(Side::YMinus, pounds(15_000.0), 16)),
    };
    let check = anchorage.check(&demand).unwrap();
    let breakout = check.tension.mode(Mode::TensionBreakout).unwrap();
    assert_abs_diff_eq!(factor(breakout, "A_Nc"), 1532.16, epsilon = 0.005);
    assert_abs_diff_eq!(factor(breakout, "A_Nco"), 297.56, epsilon = 0.005);
    assert_abs_diff_eq!(factor(breakout, "psi_ed,N"), 0.978, epsilon = 5e-4);
    assert_abs_diff_eq!(factor(breakout, "N_b"), 18_313.0, epsilon = 1.0);
    assert_relative_eq!(nominal(breakout), 92_221.0, max_relative = 5e-4);
    assert_relative_eq!(design(breakout), 59_943.0, max_relative = 5e-4);
    let pullout = check.tension.mode(Mode::Pullout).unwrap();
    assert_abs_diff_eq!(design(pullout), 9710.0, epsilon = 1.0);
    assert_abs_diff_eq!(pullout.utilisation(), 0.064, epsilon = 5e-4);
    let toward = Mode::ShearBreakout {
        edge: Side::YMinus,
        toward: true,
    };
    let wedge = check.shear.mode(toward).unwrap();
    assert_abs_diff_eq!(factor(wedge, "A_Vc"), 510.0, epsilon = 1e-6);
    assert_abs_diff_eq!(factor(wedge, "A_Vco"), 288.0, epsilon = 1e-6);
    // ψ_h,V = 1.0954, printed as 1.10 and used so.
    assert_relative_eq!(nominal(wedge), 25_089.0, max_relative = 5e-3);
    let pryout = check.shear.mode(Mode::Pryout).unwrap();
    assert_relative_eq!(nominal(pryout), 184_442.0, max_relative = 5e-4);
    assert_relative_eq!(design(pryout), 129_109.0, max_relative = 5e-4);
    assert_eq!(check.shear.governing().unwrap().mode, toward);
    // P. 90: 0.167 + 0.854 = 1.02 < 1.2; 0.051 + 0.769 = 0.82 < 1.0.
    let interaction = check.interaction.unwrap();
    assert_abs_diff_eq!(interaction.tension, 0.167, epsilon = 5e-4);
    assert_relative_eq!(interaction.shear, 0.854, max_relative = 6e-3);
    assert_relative_eq!(interaction.power_sum(), 0.82, max_relative = 1e-2);
    assert_eq!(check.outcome(), Outcome::Holds);
}

/// CCD examples A1, A2 and A3: single headed studs in 4,000 psi, `f_uta` 65 ksi. Their breakout in
/// shear has the 8 for studs welded to a stiff plate (17.7.2.2.2) where this room has the safe 7.
#[test]
fn single_studs() {
    let check = |diameter: f64, area: f64, head: f64, embedment, edge: f64, demand: &Demand| {
        let edges = Edges {
            y_minus: Edge::At(inches(edge)),
            ..Edges::FAR
        };
        let anchorage = Anchorage {
            base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(18.0))),
            fixing: Fixing::CastIn {
                shape: CastInShape::HeadedStud,
                head_bearing: Some(square_inches(head)),
            },
            diameter: inches(diameter),
            embedment: Some(inches(embedment)),
            steel: Steel {
                area: Some(square_inches(area)),
                ultimate: Some(psi(65_000.0)),
                yield_strength: Some(psi(51_000.0)),
                ductility: Some(Ductility::Ductile),
            },
            bedding: Bedding::Direct,
            group: AnchorGroup::single(edges).unwrap(),
            shear_case: ShearCase::FrontRow,
        };
        anchorage.check(demand).unwrap()
    };
    let area = |diameter: f64| std::f64::consts::PI * diameter * diameter / 4.0;

    let first = check(0.5, area(0.5), 0.59, 4.69, 12.0, &tension(8_000.0, 1));
    let of = |mode| nominal(first.tension.mode(mode).unwrap());
    assert_relative_eq!(of(Mode::SteelTension), 12_762.7, max_relative = 1e-4);
    assert_relative_eq!(of(Mode::TensionBreakout), 15_417.0, max_relative = 1e-4);
    assert_relative_eq!(of(Mode::Pullout), 18_880.0, max_relative = 1e-6);

    let second = check(
        0.5,
        area(0.5),
        0.589,
        3.06,
        10.0,
        &shear(Side::YMinus, 6_000.0, 1),
    );
    let of = |mode| nominal(second.shear.mode(mode).unwrap());
    assert_relative_eq!(of(Mode::SteelShear), 12_762.7, max_relative = 1e-4);
    assert_relative_eq!(of(TOWARD), 16_253.8 * 7.0 / 8.0, max_relative = 1e-4);
    assert_relative_eq!(of(Mode::Pryout), 16_250.0, max_relative = 1e-3);

    let both = Demand {
        tension: Some(TensionDemand::even(pounds(8_000.0), 1)),
        shear: Some(ShearDemand::even(Side::YMinus, pounds(6_000.0), 1)),
    };
    let third = check(0.625, area(0.625), 0.92, 6.63, 12.0, &both);
    let of = |mode| nominal(third.tension.mode(mode).unwrap());
    assert_relative_eq!(of(Mode::SteelTension), 19_941.76, max_relative = 1e-4);
    assert_relative_eq!(of(Mode::TensionBreakout), 25_912.6, max_relative = 1e-4);
    assert_relative_eq!(of(Mode::Pullout), 29_440.0, max_relative = 1e-6);
    let of = |mode| nominal(third.shear.mode(mode).unwrap());
    assert_relative_eq!(of(TOWARD), 25_202.86 * 7.0 / 8.0, max_relative = 1e-4);
    assert_relative_eq!(of(Mode::Pryout), 51_825.24, max_relative = 1e-4);
}

/// Guide B pp. 98, 201 and 300 (Tables 17.5.3(a) to (c)).
#[test]
fn strength_reduction_factors() {
    let of = |category, supplementary| {
        let approval = Approval {
            category: Some(category),
            pullout: Pullout::Stated(pounds(5000.0)),
            ..Approval::default()
        };
        let anchorage = Anchorage {
            base: BaseMaterial::Concrete(Concrete {
                supplementary,
                ..thick(4000.0)
            }),
            fixing: Fixing::PostInstalled {
                system: AnchorSystem::Screw,
                approval,
            },
            diameter: inches(0.5),
            embedment: Some(inches(4.0)),
            steel: Steel::default(),
            bedding: Bedding::Direct,
            shear_case: ShearCase::FrontRow,
            group: AnchorGroup::single(Edges::FAR).unwrap(),
        };
        let check = anchorage.check(&tension(100.0, 1)).unwrap();
        [Mode::TensionBreakout, Mode::Pullout]
            .map(|mode| check.tension.mode(mode).unwrap().strength.phi())
    };
    for (category, absent, present) in [
        (Category::One, 0.65, 0.75),
        (Category::Two, 0.55, 0.65),
        (Category::Three, 0.45, 0.55),
    ] {
        for (supplementary, breakout) in [
            (SupplementaryReinforcement::Absent, absent),
            (SupplementaryReinforcement::Present, present),
        ] {
            let [of_breakout, of_pullout] = of(category, supplementary);
            assert_abs_diff_eq!(of_breakout, breakout, epsilon = 1e-12);
            assert_abs_diff_eq!(of_pullout, absent, epsilon = 1e-12);
        }
    }
}
