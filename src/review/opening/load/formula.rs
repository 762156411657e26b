//! Formulas of loads as functions of the depth alone, right and wrong.

use super::{still, waves};
use crate::load::Salinity;
use crate::proposal::ProposedLoad;
use crate::review::LoadSlip;
use crate::review::desk::Desk;
use crate::site::Waves;

/// What a formula gives.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Quantity {
    Pressure,
    ForcePerWidth,
    MomentPerWidth,
    /// That on the whole width: the force per width is multiplied by it.
    Force,
}

/// A load from a depth in metres, in coherent SI units.
pub(super) type Load<'a> = Box<dyn Fn(f64) -> f64 + 'a>;

/// The right formula of a quantity and the slips that are known of it.
pub(super) struct Formula<'a> {
    pub(super) right: Load<'a>,
    pub(super) slips: Vec<(LoadSlip, Load<'a>)>,
    pub(super) reference: &'static str,
}

/// The formulas that a proposed load has to follow.
pub(super) struct Formulas {
    pub(super) salinity: Salinity,
    pub(super) kind: Kind,
}

/// What presses.
pub(super) enum Kind {
    Still,
    /// With the coefficient of the risk category.
    Breaking(crate::load::RiskCategory),
}

impl Formulas {
    /// Those of the waves that the proposal states; what is missing where there are none.
    pub(super) fn of(desk: &Desk<'_>, load: &ProposedLoad) -> Result<Self, String> {
        let conditions = &desk.assessment.site.conditions;
        let kind = match load.waves {
            None | Some(Waves::None) => Kind::Still,
            Some(Waves::NonBreaking) => {
                return Err("a method for waves that do not break: there is none here".to_owned());
            }
            Some(Waves::Breaking) => {
                let category = load.risk_category.or(conditions.loads.risk_category);
                Kind::Breaking(category.ok_or_else(|| {
                    "the risk category (load.risk_category, or [loads] risk_category in the site file)".to_owned()
                })?)
            }
        };
        let salinity = conditions.water.salinity.unwrap_or(Salinity::Fresh);
        Ok(Self { salinity, kind })
    }

    /// The formula of one quantity; `None` where no clause gives one.
    pub(super) fn formula(&self, quantity: Quantity) -> Option<Formula<'_>> {
        match self.kind {
            Kind::Still => Some(still::formula(quantity, self.salinity)),
            Kind::Breaking(category) => waves::formula(quantity, self.salinity, category),
        }
    }

    /// How far the weight of water as books print it in newtons lies from that in pounds, as
    /// a part of it: 62.4 lb/ft³ and 9.81 kN/m³ fresh, 64.0 lb/ft³ and 10.05 kN/m³ salt (FEMA
    /// P-55 (2011) vol. II, notes to Eq. 8.6).
    pub(super) fn weight_spread(&self) -> f64 {
        let printed = match self.salinity {
            Salinity::Fresh => 9_810.0,
            Salinity::Salt => 10_050.0,
        };
        (printed / self.salinity.specific_weight().value - 1.0).abs()
    }
}

/// The other water, with its name.
pub(super) const fn other(salinity: Salinity) -> (Salinity, &'static str) {
    match salinity {
        Salinity::Fresh => (Salinity::Salt, "salt, 64.0 lb/ft³"),
        Salinity::Salt => (Salinity::Fresh, "fresh, 62.4 lb/ft³"),
    }
}

/// Weight of a volume of water, N/m³.
pub(super) fn weight(salinity: Salinity) -> f64 {
    salinity.specific_weight().value
}
