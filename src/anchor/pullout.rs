//! Pullout (17.6.3) and bond (17.6.5): what one anchor holds in its hole.

use super::factor::Factor;
use super::need::{Need, Needs};
use super::{AnchorSystem, Anchorage, Approval, Concrete, Cracking, Fixing, Mode, ModeCheck};
use super::{Pullout, Strength, TensionDemand, Unchecked, coefficient, phi};
use crate::quantity::unit::{Area, Force};

/// The check of pullout, or of bond for adhesive anchors; `None` where the approval says that
/// pullout does not govern.
pub(super) fn check(
    anchorage: &Anchorage,
    concrete: &Concrete,
    demand: &TensionDemand,
) -> Option<Result<ModeCheck, Unchecked>> {
    match &anchorage.fixing {
        Fixing::CastIn { head_bearing, .. } => {
            Some(headed(anchorage, concrete, *head_bearing, demand.greatest))
        }
        Fixing::PostInstalled {
            system: AnchorSystem::Adhesive,
            approval,
        } => Some(bond(anchorage, concrete, approval, demand.force)),
        Fixing::PostInstalled { approval, .. } | Fixing::DropInSleeve { approval } => {
            tested(anchorage, approval, demand.greatest)
        }
    }
}

/// `N_pn` = `ψ_c,P` · 8 `A_brg` f'c.
fn headed(
    anchorage: &Anchorage,
    concrete: &Concrete,
    head_bearing: Option<Area>,
    demand: Force,
) -> Result<ModeCheck, Unchecked> {
    let mode = Mode::Pullout;
    let mut needs = Needs::default();
    let strength = needs.take(concrete.strength, Need::ConcreteStrength);
    let area = needs.take(head_bearing, Need::HeadBearing);
    let phi = needs.append(phi::pullout(&anchorage.fixing).map_err(Needs::from));
    let (Some(strength), Some(area), Some(phi)) = (strength, area, phi) else {
        return Err(needs.unchecked(mode));
    };
    let used = strength.min(coefficient::strength_limit(&anchorage.fixing));
    let cracking = match concrete.cracking {
        Cracking::Cracked => 1.0,
        Cracking::Uncracked => 1.4,
    };
    let factors = vec![
        Factor::seen("f'c", used, "17.3.1"),
        Factor::stated("A_brg", area, "17.6.3.2.2a"),
        Factor::seen("psi_c,P", cracking, "17.6.3.3.1"),
    ];
    let nominal: Force = area * used * 8.0 * cracking;
    Ok(ModeCheck {
        mode,
        demand,
        strength: Strength::new(nominal, phi, factors),
    })
}

/// `N_p` of the approval, which is for the concrete at hand.
fn tested(
    anchorage: &Anchorage,
    approval: &Approval,
    demand: Force,
) -> Option<Result<ModeCheck, Unchecked>> {
    let stated = match approval.pullout {
        Pullout::DoesNotGovern => return None,
        Pullout::Stated(strength) => Some(strength),
        Pullout::Unstated => None,
    };
    let mut needs = Needs::default();
    let nominal = needs.take(stated, Need::PulloutStrength);
    let phi = needs.append(phi::pullout(&anchorage.fixing).map_err(Needs::from));
    let (Some(nominal), Some(phi)) = (nominal, phi) else {
        return Some(Err(needs.unchecked(Mode::Pullout)));
    };
    let factors = vec![Factor::stated("N_p", nominal, "17.6.3.2.1")];
    Some(Ok(ModeCheck {
        mode: Mode::Pullout,
        demand,
        strength: Strength::new(nominal, phi, factors),
    }))
}

/// The bond strength as stated: the room does not calculate it.
fn bond(
    anchorage: &Anchorage,
    concrete: &Concrete,
    approval: &Approval,
    demand: Force,
) -> Result<ModeCheck, Unchecked> {
    let mut needs = Needs::default();
    let nominal = needs.take(approval.bond, Need::BondStrength);
    let phi = phi::breakout_tension(&anchorage.fixing, concrete.supplementary);
    let phi = needs.append(phi.map_err(Needs::from));
    let (Some(nominal), Some(phi)) = (nominal, phi) else {
        return Err(needs.unchecked(Mode::Bond));
    };
    let factors = vec![Factor::stated("N_a", nominal, "17.6.5")];
    Ok(ModeCheck {
        mode: Mode::Bond,
        demand,
        strength: Strength::new(nominal, phi, factors),
    })
}
