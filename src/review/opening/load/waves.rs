//! The load of breaking waves, right and wrong.

use super::formula::{Formula, Load, Quantity, other, weight};
use super::still::UNITS;
use crate::load::{Behind, BreakingWave, RiskCategory, Salinity};
use crate::quantity::unit::{Length, meter};
use crate::review::{LoadSlip, WAVE_REFERENCE};
use crate::statement::Choice;

/// The right formula, which is the assessment's own, and its slips; `None` for the moment, for
/// which the code gives an arm and no formula.
pub(super) fn formula<'a>(
    quantity: Quantity,
    salinity: Salinity,
    category: RiskCategory,
) -> Option<Formula<'a>> {
    if quantity == Quantity::MomentPerWidth {
        return None;
    }
    let (other_water, name) = other(salinity);
    let mut slips: Vec<(LoadSlip, Load<'a>)> = RiskCategory::CHOICES
        .iter()
        .map(|(_, each)| *each)
        .filter(|each| *each != category)
        .map(|each| {
            (
                LoadSlip::WaveOtherCategory(each),
                right(quantity, salinity, each),
            )
        })
        .collect();
    slips.push((
        LoadSlip::OtherSalinity(name),
        right(quantity, other_water, category),
    ));
    if quantity != Quantity::Pressure {
        slips.extend(force_slips(weight(salinity), category));
    }
    Some(Formula {
        right: right(quantity, salinity, category),
        slips,
        reference: WAVE_REFERENCE,
    })
}

fn right<'a>(quantity: Quantity, salinity: Salinity, category: RiskCategory) -> Load<'a> {
    Box::new(move |depth| {
        let wave = BreakingWave {
            stillwater_depth: Length::new::<meter>(depth),
            sill_above_ground: Length::default(),
            category,
            weight: salinity.specific_weight(),
            behind: Behind::Dry,
        };
        match quantity {
            Quantity::Pressure => wave.greatest_pressure().value,
            _ => wave.code_force().value,
        }
    })
}

/// Slips of 1.1·Cp·γ·d² + 2.4·γ·d², `gamma` in N/m³; `one` is one unit of depth in metres.
fn force_slips<'a>(gamma: f64, category: RiskCategory) -> Vec<(LoadSlip, Load<'a>)> {
    let blow = 1.1 * category.wave_pressure_coefficient() * gamma;
    let standing = 2.4 * gamma;
    let mut slips: Vec<(LoadSlip, Load<'a>)> = vec![
        (
            LoadSlip::WaveStillWaterAgain,
            Box::new(move |d| (blow + standing + gamma / 2.0) * d * d),
        ),
        (
            LoadSlip::StillWaterForWaves,
            Box::new(move |d| gamma * d * d / 2.0),
        ),
    ];
    for unit in UNITS {
        let one = unit.length(1.0).value;
        slips.push((
            LoadSlip::WaveDepthForSquare(unit),
            Box::new(move |d| (blow + standing) * d * one),
        ));
        slips.push((
            LoadSlip::WaveBlowDepthForSquare(unit),
            Box::new(move |d| blow * d * one + standing * d * d),
        ));
        slips.push((
            LoadSlip::WaveStandingDepthForSquare(unit),
            Box::new(move |d| blow * d * d + standing * d * one),
        ));
    }
    slips
}
