//! Pryout (17.7.3).

use super::breakout;
use super::demand::number;
use super::factor::Factor;
use super::need::{Need, Needs};
use super::{AnchorSystem, Anchorage, Concrete, Mode, ModeCheck};
use super::{ShearDemand, Strength, Unchecked, phi};
use crate::quantity::Length;
use crate::quantity::unit::{Force, inch};

/// The check of pryout: `k_cp` times the breakout strength in tension of the anchors in shear; of
/// adhesive anchors, times the bond strength where that is less.
pub(super) fn check(
    anchorage: &Anchorage,
    concrete: &Concrete,
    demand: &ShearDemand,
) -> Result<ModeCheck, Unchecked> {
    let mode = Mode::Pryout;
    let across = [Length::default(), demand.eccentricity];
    let eccentricity = if demand.toward.across_x() {
        across
    } else {
        [demand.eccentricity, Length::default()]
    };
    let mut needs = Needs::default();
    let embedment = needs.take(anchorage.embedment, Need::Embedment);
    let group = &anchorage.group;
    let breakout = needs.append(breakout::strength(anchorage, concrete, group, eccentricity));
    let bond = needs.append(bond_limit(anchorage));
    let (Some(embedment), Some(mut breakout), Some(bond)) = (embedment, breakout, bond) else {
        return Err(needs.unchecked(mode));
    };
    let lever = factor(embedment);
    let single = breakout.nominal;
    breakout
        .factors
        .push(Factor::seen("N_cb", single, "17.6.2.1"));
    let mut pried = single;
    if let Some(bond) = bond {
        let part = number(breakout.anchors) / number(group.count());
        let bond = bond * part;
        breakout.factors.push(Factor::stated("N_a", bond, "17.6.5"));
        pried = pried.min(bond);
    }
    breakout
        .factors
        .push(Factor::seen("k_cp", lever, "17.7.3.1"));
    Ok(ModeCheck {
        mode,
        demand: breakout.demand(demand.force, demand.greatest),
        strength: Strength::new(pried * lever, phi::pryout(), breakout.factors),
    })
}

/// `k_cp`: 1 below an embedment of 2.5 in, else 2.
fn factor(embedment: Length) -> f64 {
    if embedment < Length::new::<inch>(2.5) {
        1.0
    } else {
        2.0
    }
}

/// The bond strength of adhesive anchors, which has to be stated; `None` for all others.
fn bond_limit(anchorage: &Anchorage) -> Result<Option<Force>, Needs> {
    if anchorage.fixing.system() != Some(AnchorSystem::Adhesive) {
        return Ok(None);
    }
    let bond = anchorage
        .fixing
        .approval()
        .and_then(|approval| approval.bond);
    bond.map(Some).ok_or(Needs::from(Need::BondStrength))
}
