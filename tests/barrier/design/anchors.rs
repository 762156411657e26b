//! The anchors under a base plate, in concrete that somebody stated.

use super::{about, feet, kit, opening, rules, rules_of};
use sillmark::anchor::{
    AnchorSystem, Approval, BaseMaterial, Bedding, Category, Concrete, Ductility, Edge, Edges,
    Fixing, Mode, Outcome, Pullout, Side, Steel,
};
use sillmark::barrier::{BarrierDesign, Kit, Open, Shortfall, design_barrier};
use sillmark::quantity::unit::{
    Area, Length, Pressure, foot, inch, pound_force, pound_per_square_inch, square_foot,
};
use sillmark::site::AnchorSetting;

/// 4,000 psi, 12 in thick, an edge 12 in behind the plate; torque-controlled anchors of
/// category 1, 4 in deep, 0.334 in² of ductile steel with 58 and 36 ksi.
fn floor() -> AnchorSetting {
    let psi = Pressure::new::<pound_per_square_inch>;
    AnchorSetting {
        base: BaseMaterial::Concrete(Concrete::normal_weight(
            psi(4000.0),
            Length::new::<inch>(12.0),
        )),
        fixing: Some(Fixing::PostInstalled {
            system: AnchorSystem::TorqueControlled,
            approval: Approval {
                category: Some(Category::One),
                coefficient_cracked: Some(17.0),
                pullout: Pullout::DoesNotGovern,
                ..Approval::default()
            },
        }),
        embedment: Some(Length::new::<inch>(4.0)),
        steel: Steel {
            area: Some(Area::new::<square_foot>(0.334 / 144.0)),
            ultimate: Some(psi(58_000.0)),
            yield_strength: Some(psi(36_000.0)),
            ductility: Some(Ductility::Ductile),
        },
        bedding: Bedding::Direct,
        edges: Edges {
            y_plus: Edge::At(Length::new::<inch>(12.0)),
            ..Edges::FAR
        },
    }
}

fn on(floor: Option<&AnchorSetting>, kit: &Kit) -> BarrierDesign {
    let task = opening(Length::new::<foot>(14.0), feet(2.5));
    design_barrier(&task, kit, &rules(), floor, None)
        .unwrap()
        .unwrap()
}

/// The post between two spans of 14 ft (M 1,137.5 ft·lb, V 1,365 lb), loads × 1.6, rows 11 in
/// apart, two anchors in each:
///
/// T = 1.6·1,137.5·12/11 = 1,985.45 lb on the row, 992.73 on an anchor;
/// V = 1.6·1,365/4 = 546 lb on an anchor.
#[test]
fn demand_on_the_base_plate() {
    let found = on(None, &kit());
    let plate = &found.anchors[0];
    about(plate.factor, 1.6);
    about(plate.demand.tension_on_row.get::<pound_force>(), 1985.45);
    about(plate.demand.tension_on_anchor.get::<pound_force>(), 992.73);
    about(plate.demand.shear_on_anchor.get::<pound_force>(), 546.0);
    about(plate.demand.lever_arm.unwrap().get::<inch>(), 11.0);
    assert!(plate.check.is_none());
    let said = |open: &Open| matches!(open, Open::AnchorCapacity { post, .. } if post == "intermediate post");
    assert!(found.open.iter().any(said));
}

/// ACI 318-19 chapter 17, √4,000 = 63.2456:
///
/// * steel: 0.75·0.334·58,000 = 14,529 lb; shear 0.65·0.6·0.334·58,000 = 7,555.1 lb;
/// * tension breakout of the row 7 in long: `A_Nc` (7 + 12)·12 = 228, `A_Nco` 144, `N_b` = 17·63.2456·8
///   = 8,601.4; `N_cbg` = 13,618.9; φ 0.65: 8,852.3 lb, used 1,985.45/8,852.3 = 0.22429;
/// * shear breakout of the front row, `c_a1` 12 in > `h_a`/1.5: `A_Vc` = (7 + 36)·12 = 516, `A_Vco`
///   648, `ψ_h` √(18/12) = 1.22474, `V_b` = 7·(4/0.75)^0.2·√0.75·63.2456·12^1.5 = 22,276.9; φ 0.70;
///   `V_cbg` = 21,725.6, 15,207.9 lb, used 2,184/15,207.9 = 0.14361;
/// * pryout of all four, 2·437/144·8,601.4 = 52,205.7; φ 0.70: 36,544 lb, 0.05976.
///
/// Shear uses less than 0.2, so that tension counts alone (17.8): 0.2243.
#[test]
fn the_full_check() {
    let found = on(Some(&floor()), &kit());
    let check = found.anchors[0].check.as_ref().unwrap();
    let design = |direction: &sillmark::anchor::Direction, mode| {
        let found = direction.mode(mode).unwrap();
        (
            found.strength.design().get::<pound_force>(),
            found.utilisation(),
        )
    };
    about(design(&check.tension, Mode::SteelTension).0, 14_529.0);
    about(design(&check.shear, Mode::SteelShear).0, 7555.1);
    let (strength, used) = design(&check.tension, Mode::TensionBreakout);
    about(strength, 8852.3);
    about(used, 0.224_29);
    let toward = Mode::ShearBreakout {
        edge: Side::YPlus,
        toward: true,
    };
    let (strength, used) = design(&check.shear, toward);
    about(strength, 15_207.9);
    about(used, 0.143_61);
    about(design(&check.shear, Mode::Pryout).1, 0.059_76);
    about(check.utilisation().unwrap(), 0.224_29);
    assert_eq!(check.outcome(), Outcome::Holds);
    let said = |open: &Open| matches!(open, Open::AnchorCapacity { post, .. } if post == "intermediate post");
    assert!(!found.open.iter().any(said));
    assert!(found.shortfalls.is_empty());
}

/// Concrete that is stated and too weak is a shortfall; what nobody stated stays open.
#[test]
fn anchors_that_fail_and_anchors_that_stay_open() {
    let mut shallow = floor();
    shallow.embedment = Some(Length::new::<inch>(1.0));
    let found = on(Some(&shallow), &kit());
    let fails = |shortfall: &Shortfall| matches!(shortfall, Shortfall::AnchorsFail { post: "intermediate post", utilisation } if *utilisation > 1.0);
    assert!(found.shortfalls.iter().any(fails));
    let mut vague = floor();
    vague.embedment = None;
    let found = on(Some(&vague), &kit());
    let check = found.anchors[0].check.as_ref().unwrap();
    assert_eq!(check.outcome(), Outcome::Open);
    let why = found.open.iter().find_map(|open| match open {
        Open::AnchorCapacity { post, why } if post == "intermediate post" => Some(why.join(" ")),
        _ => None,
    });
    assert!(why.unwrap().contains("embedment"));
}

/// A single row has no lever arm for the moment: no error, but no answer without an engineer.
#[test]
fn a_single_row_takes_no_moment() {
    let mut narrow = kit();
    let post = narrow.posts.intermediate.as_mut().unwrap();
    let anchors = post.anchors.as_mut().unwrap();
    anchors.rows = 1;
    anchors.row_spacing = Length::default();
    let found = on(Some(&floor()), &narrow);
    let lacks = |shortfall: &Shortfall| matches!(shortfall, Shortfall::KitLacks { part, .. } if part.contains("row of anchors"));
    assert!(found.shortfalls.iter().any(lacks));
    assert!(found.anchors.is_empty());
}

/// The jamb is checked like the floor: one anchor up the reveal that breaks out is a shortfall.
#[test]
fn the_jamb() {
    let mut jamb = floor();
    jamb.edges.y_plus = Edge::At(Length::new::<inch>(1.0));
    let task = opening(Length::new::<foot>(9.0), feet(4.0));
    let found = design_barrier(&task, &kit(), &rules(), None, Some(&jamb));
    let found = found.unwrap().unwrap();
    let fails = |shortfall: &Shortfall| {
        matches!(
            shortfall,
            Shortfall::AnchorsFail {
                post: "end post",
                ..
            }
        )
    };
    assert!(found.shortfalls.iter().any(fails), "{:?}", found.shortfalls);
}

/// Loads of EN 1990 on strengths of ACI 318 prove nothing: demand only, with the reason.
#[test]
fn partial_factors_are_not_held_against_aci() {
    let task = opening(Length::new::<foot>(14.0), feet(2.5));
    let found = design_barrier(
        &task,
        &super::kits::european(),
        &rules_of("en1990"),
        Some(&floor()),
        Some(&floor()),
    );
    let found = found.unwrap().unwrap();
    assert!(found.anchors.iter().all(|anchors| anchors.check.is_none()));
    assert!(
        found
            .end_post
            .as_ref()
            .unwrap()
            .anchors
            .as_ref()
            .unwrap()
            .check
            .is_none()
    );
    let reasons: Vec<_> = found
        .open
        .iter()
        .filter_map(|open| match open {
            Open::AnchorCapacity { why, .. } => Some(why.join(" ")),
            _ => None,
        })
        .collect();
    assert!(reasons.len() >= 2);
    assert!(
        reasons.iter().all(|why| why.contains("EN 1992-4")),
        "{reasons:?}"
    );
}
