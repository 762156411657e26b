//! Factors that a choice switches, each against the same check without it.

use approx::assert_relative_eq;
use sillmark::anchor::{
    Anchorage, BaseMaterial, Bedding, Cracking, Ductility, Edge, FactorValue, Fixing, Mode,
    ModeCheck, Pullout, ShearCase, Side,
};

use sillmark::quantity::unit::inch;

use super::{check, expansion, four_bolts, inches, pounds, psi};

fn mode(anchorage: &Anchorage, mode: Mode) -> ModeCheck {
    let found = check(anchorage);
    let checks = found.tension.mode(mode).or(found.shear.mode(mode));
    checks.unwrap().clone()
}

/// Nominal strength after over before.
fn ratio(before: &Anchorage, after: &Anchorage, of: Mode) -> f64 {
    (mode(after, of).strength.nominal() / mode(before, of).strength.nominal()).value
}

fn uncracked(mut anchorage: Anchorage) -> Anchorage {
    if let BaseMaterial::Concrete(concrete) = &mut anchorage.base {
        concrete.cracking = Cracking::Uncracked;
    }
    anchorage
}

/// 17.6.2.5.1: 1.25 for cast-in anchors, 1.4 for post-installed ones with the code's 17;
/// 17.6.3.3.1: 1.4 for pullout; 17.7.2.5.1: 1.4.
#[test]
fn uncracked_concrete() {
    let cast_in = four_bolts();
    let better = uncracked(cast_in.clone());
    assert_relative_eq!(
        ratio(&cast_in, &better, Mode::TensionBreakout),
        1.25,
        epsilon = 1e-12
    );
    assert_relative_eq!(
        ratio(&cast_in, &better, Mode::Pullout),
        1.4,
        epsilon = 1e-12
    );
    let toward = Mode::ShearBreakout {
        edge: Side::YPlus,
        toward: true,
    };
    assert_relative_eq!(ratio(&cast_in, &better, toward), 1.4, epsilon = 1e-12);

    let mut anchors = Anchorage {
        fixing: expansion(),
        ..four_bolts()
    };
    if let Fixing::PostInstalled { approval, .. } = &mut anchors.fixing {
        // So that splitting takes no part.
        approval.critical_edge = Some(inches(7.5));
    }
    let better = uncracked(anchors.clone());
    assert_relative_eq!(
        ratio(&anchors, &better, Mode::TensionBreakout),
        1.4,
        epsilon = 1e-12
    );
}

/// The approval's `c_ac` goes before that of the table: the nearest edge of the pulled row is
/// 9 in of 18.
#[test]
fn the_approvals_critical_edge_counts() {
    let with = |critical| {
        let mut anchorage = Anchorage {
            fixing: expansion(),
            ..four_bolts()
        };
        if let Fixing::PostInstalled { approval, .. } = &mut anchorage.fixing {
            approval.critical_edge = Some(inches(critical));
        }
        uncracked(anchorage)
    };
    let ratio = ratio(&with(9.0), &with(18.0), Mode::TensionBreakout);
    assert_relative_eq!(ratio, 0.5, epsilon = 1e-12);
}

/// 17.7.1.2.1, and Table 17.5.3(a) for brittle steel.
#[test]
fn grout_and_brittle_steel() {
    let direct = four_bolts();
    let on_grout = Anchorage {
        bedding: Bedding::GroutPad,
        ..four_bolts()
    };
    assert_relative_eq!(
        ratio(&direct, &on_grout, Mode::SteelShear),
        0.8,
        epsilon = 1e-12
    );
    assert_relative_eq!(
        ratio(&direct, &on_grout, Mode::SteelTension),
        1.0,
        epsilon = 1e-12
    );
    let mut brittle = four_bolts();
    brittle.steel.ductility = Some(Ductility::Brittle);
    for (of, ductile, less) in [
        (Mode::SteelTension, 0.75, 0.65),
        (Mode::SteelShear, 0.65, 0.60),
    ] {
        assert_relative_eq!(mode(&direct, of).strength.phi(), ductile, epsilon = 1e-12);
        assert_relative_eq!(mode(&brittle, of).strength.phi(), less, epsilon = 1e-12);
    }
}

/// `f_uta` counts to 1.9 `f_ya` and to 125,000 psi (17.6.1.2).
#[test]
fn steel_counts_to_its_limits() {
    let with = |ultimate, yielding| {
        let mut anchorage = four_bolts();
        anchorage.steel.ultimate = Some(psi(ultimate));
        anchorage.steel.yield_strength = Some(psi(yielding));
        anchorage
    };
    let base = with(50_000.0, 36_000.0);
    for (ultimate, yielding, counted) in [
        (60_000.0, 36_000.0, 60_000.0),
        (80_000.0, 36_000.0, 68_400.0),
        (150_000.0, 130_000.0, 125_000.0),
    ] {
        let ratio = ratio(&base, &with(ultimate, yielding), Mode::SteelTension);
        assert_relative_eq!(ratio, counted / 50_000.0, epsilon = 1e-12);
    }
}

/// Welded rows may count on the back one; the sides are not affected. (One corner is taken
/// away, or the member would be narrow and thin for the back row.)
#[test]
fn a_welded_back_row_is_farther_from_the_edge() {
    let mut front = four_bolts();
    front.group.edges.x_plus = Edge::Far;
    let back = Anchorage {
        shear_case: ShearCase::WeldedBackRow,
        ..front.clone()
    };
    let toward = Mode::ShearBreakout {
        edge: Side::YPlus,
        toward: true,
    };
    for (anchorage, expected) in [(&front, 8.0), (&back, 14.0)] {
        match mode(anchorage, toward).strength.factor("c_a1") {
            Some(FactorValue::Length(distance)) => {
                assert_relative_eq!(distance.get::<inch>(), expected, epsilon = 1e-9);
            }
            other => panic!("{other:?}"),
        }
    }

    let beside = Mode::ShearBreakout {
        edge: Side::XMinus,
        toward: false,
    };
    assert_relative_eq!(ratio(&front, &back, beside), 1.0, epsilon = 1e-12);
}

/// The bond strength limits pryout of glued anchors, and has to be stated for it.
#[test]
fn bond_limits_pryout() {
    let glued = |bond| {
        let mut anchorage = Anchorage {
            fixing: expansion(),
            ..four_bolts()
        };
        if let Fixing::PostInstalled { system, approval } = &mut anchorage.fixing {
            *system = sillmark::anchor::AnchorSystem::Adhesive;
            approval.pullout = Pullout::Unstated;
            approval.bond = Some(pounds(bond));
        }
        anchorage
    };
    let weak = mode(&glued(5000.0), Mode::Pryout);
    assert_relative_eq!(
        weak.strength.nominal().value,
        pounds(10_000.0).value,
        epsilon = 1e-6
    );
    let strong = ratio(&glued(1e6), &glued(2e6), Mode::Pryout);
    assert_relative_eq!(strong, 1.0, epsilon = 1e-12);
}

/// An edge that is far makes no breakout in shear.
#[test]
fn a_far_edge_makes_no_wedge() {
    let mut anchorage = four_bolts();
    anchorage.group.edges.y_plus = Edge::Far;
    let found = check(&anchorage);
    let toward = Mode::ShearBreakout {
        edge: Side::YPlus,
        toward: true,
    };
    assert!(found.shear.mode(toward).is_none());
    assert!(found.shear.unchecked.is_empty());
}
