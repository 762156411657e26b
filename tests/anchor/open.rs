//! What is unstated stays open, and says what to state.

use sillmark::anchor::{
    Approval, BaseMaterial, Category, Concrete, Cracking, Edge, Edges, Fixing, Mode, Need, Outcome,
    Pullout, Remark, Side, Steel,
};

use super::{check, four_bolts, pounds, psi, square_inches, steel};

#[test]
fn all_stated_holds() {
    let found = check(&four_bolts());
    assert_eq!(found.outcome(), Outcome::Holds);
    assert!(found.tension.unchecked.is_empty() && found.shear.unchecked.is_empty());
    assert_eq!(found.remarks, [Remark::LeastDistancesNotChecked]);
}

#[test]
fn masonry_and_an_unstated_base_leave_the_demand_alone() {
    for (base, need) in [
        (BaseMaterial::Masonry, Need::MasonryTestAndEngineer),
        (BaseMaterial::Unstated, Need::BaseMaterial),
    ] {
        let mut anchorage = four_bolts();
        anchorage.base = base;
        let found = check(&anchorage);
        assert_eq!(found.outcome(), Outcome::DemandOnly);
        assert_eq!(found.utilisation(), None);
        for unchecked in found.tension.unchecked.iter().chain(&found.shear.unchecked) {
            assert_eq!(unchecked.state, [need]);
        }
    }
    let mut anchorage = four_bolts();
    anchorage.base = BaseMaterial::Masonry;
    assert_eq!(
        check(&anchorage).shear.unchecked[0].to_string(),
        "steel in shear is not checked; state for masonry, the anchor manufacturer's approval or \
         tests in that masonry, and an engineer's design"
    );
}

#[test]
fn each_missing_value_opens_its_modes_alone() {
    let mut anchorage = four_bolts();
    anchorage.steel = Steel::default();
    let found = check(&anchorage);
    assert_eq!(found.outcome(), Outcome::Open);
    let open: Vec<_> = found.tension.unchecked.iter().map(|one| one.mode).collect();
    assert_eq!(open, [Mode::SteelTension]);
    assert_eq!(
        found.tension.unchecked[0].state,
        [
            Need::SteelArea,
            Need::UltimateStrength,
            Need::YieldStrength,
            Need::Ductility
        ]
    );
    assert!(found.tension.mode(Mode::TensionBreakout).is_some());

    let mut anchorage = four_bolts();
    anchorage.embedment = None;
    let found = check(&anchorage);
    assert!(found.tension.mode(Mode::SteelTension).is_some());
    assert!(found.tension.mode(Mode::TensionBreakout).is_none());
    assert!(found.shear.mode(Mode::Pryout).is_none());
}

#[test]
fn bare_concrete_needs_all_at_once() {
    let mut anchorage = four_bolts();
    anchorage.base = BaseMaterial::Concrete(Concrete::unstated());
    anchorage.embedment = None;
    anchorage.group.edges = Edges::UNSTATED;
    let found = check(&anchorage);
    let breakout = found.tension.unchecked.iter();
    let breakout = breakout
        .into_iter()
        .find(|one| one.mode == Mode::TensionBreakout)
        .unwrap();
    assert_eq!(
        breakout.state[..2],
        [Need::ConcreteStrength, Need::Embedment]
    );
    for side in Side::ALL {
        assert!(breakout.state.contains(&Need::Edge(side)), "{side}");
    }
}

/// An edge that nobody stated is never taken as far; the edge behind the shear takes no part.
#[test]
fn an_unstated_edge_is_not_far() {
    let mut anchorage = four_bolts();
    anchorage.group.edges.y_plus = Edge::Unstated;
    let found = check(&anchorage);
    let toward = Mode::ShearBreakout {
        edge: Side::YPlus,
        toward: true,
    };
    let open = found
        .shear
        .unchecked
        .iter()
        .find(|one| one.mode == toward)
        .unwrap();
    assert_eq!(open.state, [Need::Edge(Side::YPlus)]);
    assert_eq!(found.outcome(), Outcome::Open);

    let mut anchorage = four_bolts();
    anchorage.group.edges.y_minus = Edge::Unstated;
    assert!(check(&anchorage).shear.mode(toward).is_some());
}

/// A drop-in sleeve needs its approval, and the bolt in it.
#[test]
fn a_sleeve_needs_its_approval_and_its_bolt() {
    let mut anchorage = four_bolts();
    anchorage.fixing = Fixing::DropInSleeve {
        approval: Approval::default(),
    };
    let found = check(&anchorage);
    let state = |mode| {
        let mut all = found.tension.unchecked.iter().chain(&found.shear.unchecked);
        all.find(|one| one.mode == mode).unwrap().state.clone()
    };
    assert_eq!(state(Mode::SteelTension), [Need::SleeveTension]);
    assert_eq!(state(Mode::SteelShear), [Need::SleeveShear]);
    assert_eq!(
        state(Mode::TensionBreakout),
        [Need::Category, Need::BreakoutCoefficient]
    );
    assert_eq!(
        state(Mode::Pullout),
        [Need::PulloutStrength, Need::Category]
    );
    assert_eq!(state(Mode::Pryout), [Need::BreakoutCoefficient]);

    let approval = Approval {
        category: Some(Category::Two),
        coefficient_cracked: Some(17.0),
        pullout: Pullout::Stated(pounds(4000.0)),
        steel_tension: Some(pounds(9000.0)),
        steel_shear: Some(pounds(20_000.0)),
        ..Approval::default()
    };
    anchorage.fixing = Fixing::DropInSleeve { approval };
    let found = check(&anchorage);
    assert!(found.tension.unchecked.is_empty() && found.shear.unchecked.is_empty());
    // The sleeve is the weaker in tension, 0.6 of the bolt in shear.
    let nominal = |check: &sillmark::anchor::ModeCheck| check.strength.nominal();
    assert_eq!(
        nominal(found.tension.mode(Mode::SteelTension).unwrap()),
        pounds(9000.0)
    );
    let bolt = square_inches(0.226) * psi(58_000.0) * 0.6;
    assert_eq!(nominal(found.shear.mode(Mode::SteelShear).unwrap()), bolt);
}

/// An anchor approved for uncracked concrete alone is not checked in cracked concrete.
#[test]
fn an_approval_for_uncracked_concrete_is_not_one_for_cracked() {
    let mut anchorage = four_bolts();
    let mut approval = Approval {
        category: Some(Category::One),
        coefficient_uncracked: Some(24.0),
        pullout: Pullout::DoesNotGovern,
        ..Approval::default()
    };
    let fixing = |approval: &Approval| Fixing::PostInstalled {
        system: sillmark::anchor::AnchorSystem::Screw,
        approval: approval.clone(),
    };
    anchorage.fixing = fixing(&approval);
    let open = check(&anchorage).tension.unchecked;
    assert_eq!(open[0].state, [Need::BreakoutCoefficient]);
    approval.coefficient_cracked = Some(17.0);
    anchorage.fixing = fixing(&approval);
    assert!(check(&anchorage).tension.unchecked.is_empty());
    if let BaseMaterial::Concrete(concrete) = &mut anchorage.base {
        concrete.cracking = Cracking::Uncracked;
    }
    let found = check(&anchorage);
    let breakout = found.tension.mode(Mode::TensionBreakout).unwrap();
    assert_eq!(breakout.strength.factor("k_c"), Some(24.0.into()));
    assert_eq!(breakout.strength.factor("psi_c,N"), Some(1.0.into()));
}

/// Strength above the limit is not used, and the check says so.
#[test]
fn strength_above_the_limit_is_remarked() {
    let mut anchorage = four_bolts();
    let nominal = |anchorage: &sillmark::anchor::Anchorage| {
        let found = check(anchorage);
        let breakout = found.tension.mode(Mode::TensionBreakout).unwrap();
        (breakout.strength.nominal(), found.remarks)
    };
    let with = |strength| {
        BaseMaterial::Concrete(Concrete {
            strength: Some(psi(strength)),
            ..match four_bolts().base {
                BaseMaterial::Concrete(concrete) => concrete,
                _ => unreachable!(),
            }
        })
    };
    anchorage.base = with(10_000.0);
    let (at_limit, remarks) = nominal(&anchorage);
    assert_eq!(remarks.len(), 1);
    anchorage.base = with(12_000.0);
    let (above, remarks) = nominal(&anchorage);
    assert_eq!(above, at_limit);
    assert_eq!(
        remarks[1].to_string(),
        "concrete strength 12000 psi counts as 10000 psi (ACI 318-19 17.3.1)"
    );
    anchorage.steel = Steel {
        ultimate: Some(psi(80_000.0)),
        ..steel()
    };
    let (_, remarks) = nominal(&anchorage);
    assert!(
        remarks[2]
            .to_string()
            .contains("80000 psi of the steel counts as 68400 psi")
    );
}
