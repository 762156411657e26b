//! Steel in tension (17.6.1) and in shear (17.7.1), of the most loaded anchor.

use super::factor::Factor;
use super::need::{Need, Needs};
use super::{Anchorage, Bedding, CastInShape, Fixing, Mode, ModeCheck, Steel, Strength};
use super::{Unchecked, phi};
use crate::quantity::unit::{Force, Pressure, pound_per_square_inch};

/// The check of steel in tension.
pub(super) fn tension(anchorage: &Anchorage, demand: Force) -> Result<ModeCheck, Unchecked> {
    let approval = anchorage.fixing.approval();
    let stated = approval.and_then(|approval| approval.steel_tension);
    let mut needs = Needs::default();
    let nominal = needs.append(nominal(anchorage, stated, Need::SleeveTension, None));
    let ductility = needs.take(anchorage.steel.ductility, Need::Ductility);
    let (Some((nominal, factors)), Some(ductility)) = (nominal, ductility) else {
        return Err(needs.unchecked(Mode::SteelTension));
    };
    Ok(ModeCheck {
        mode: Mode::SteelTension,
        demand,
        strength: Strength::new(nominal, phi::steel_tension(ductility), factors),
    })
}

/// The check of steel in shear.
pub(super) fn shear(anchorage: &Anchorage, demand: Force) -> Result<ModeCheck, Unchecked> {
    let approval = anchorage.fixing.approval();
    let stated = approval.and_then(|approval| approval.steel_shear);
    let part = part_in_shear(&anchorage.fixing);
    let mut needs = Needs::default();
    let nominal = needs.append(nominal(anchorage, stated, Need::SleeveShear, Some(part)));
    let ductility = needs.take(anchorage.steel.ductility, Need::Ductility);
    let (Some((nominal, mut factors)), Some(ductility)) = (nominal, ductility) else {
        return Err(needs.unchecked(Mode::SteelShear));
    };
    let bedding = match anchorage.bedding {
        Bedding::Direct => 1.0,
        Bedding::GroutPad => 0.8,
    };
    factors.push(Factor::seen("grout pad", bedding, "17.7.1.2.1"));
    Ok(ModeCheck {
        mode: Mode::SteelShear,
        demand,
        strength: Strength::new(nominal * bedding, phi::steel_shear(ductility), factors),
    })
}

/// The part of `A_se` `f_uta` that counts in shear: all for a cast-in stud, 0.6 for bolts and for
/// post-installed anchors.
fn part_in_shear(fixing: &Fixing) -> f64 {
    match fixing {
        Fixing::CastIn {
            shape: CastInShape::HeadedStud,
            ..
        } => 1.0,
        _ => 0.6,
    }
}

/// The nominal strength of one anchor: stated by an approval, or of the bolt; of a drop-in
/// sleeve both have to be known, and the lesser counts.
fn nominal(
    anchorage: &Anchorage,
    stated: Option<Force>,
    need: Need,
    part_in_shear: Option<f64>,
) -> Result<(Force, Vec<Factor>), Needs> {
    let sleeve = matches!(anchorage.fixing, Fixing::DropInSleeve { .. });
    if let (Some(stated), false) = (stated, sleeve) {
        let factors = vec![Factor::stated("stated", stated, "17.6.1.1, 17.7.1.1")];
        return Ok((stated, factors));
    }
    let mut needs = Needs::default();
    let bolt = needs.append(bolt(&anchorage.steel));
    let sleeve_strength = sleeve.then(|| needs.take(stated, need));
    let Some((whole, mut factors)) = bolt else {
        return Err(needs);
    };
    let mut bolt = whole;
    if let Some(part) = part_in_shear {
        factors.push(Factor::seen("V_sa / (A_se f_uta)", part, "17.7.1.2"));
        bolt *= part;
    }
    match sleeve_strength {
        None => Ok((bolt, factors)),
        Some(None) => Err(needs),
        Some(Some(strength)) => {
            factors.push(Factor::stated("sleeve", strength, "17.6.1.1, 17.7.1.1"));
            Ok((bolt.min(strength), factors))
        }
    }
}

/// `A_se` `f_uta`.
fn bolt(steel: &Steel) -> Result<(Force, Vec<Factor>), Needs> {
    let mut needs = Needs::default();
    let area = needs.take(steel.area, Need::SteelArea);
    let ultimate = needs.take(steel.ultimate, Need::UltimateStrength);
    let yielding = needs.take(steel.yield_strength, Need::YieldStrength);
    let (Some(area), Some(ultimate), Some(yielding)) = (area, ultimate, yielding) else {
        return Err(needs);
    };
    let used = counted(ultimate, yielding);
    let factors = vec![
        Factor::stated("A_se", area, "17.6.1.2, 17.7.1.2"),
        Factor::seen("f_uta", used, "17.6.1.2, 17.7.1.2"),
    ];
    Ok((area * used, factors))
}

/// The tensile strength that counts: at most 1.9 `f_ya` and 125,000 psi.
pub(super) fn counted(ultimate: Pressure, yielding: Pressure) -> Pressure {
    let most = Pressure::new::<pound_per_square_inch>(125_000.0);
    ultimate.min(yielding * 1.9).min(most)
}
