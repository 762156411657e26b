//! The anchors under the base plates: demand always, capacity where enough was stated.

use super::DesignRules;
use super::upright::{BaseForces, UprightDesign};
use crate::anchor::{
    AnchorCheck, AnchorGroup, Anchorage, BasePlateForces, PlateDemand, PlatePattern, ShearCase,
    Side, base_plate,
};
use crate::barrier::{AnchorPattern, DesignError};
use crate::site::AnchorSetting;

/// The anchors of one base plate.
#[derive(Clone, Debug, PartialEq)]
pub struct PlateAnchors {
    /// The post that stands on it.
    pub post: &'static str,
    /// Factor on the load of the water: anchors in concrete are designed for factored loads.
    pub factor: f64,
    /// Where the factor stands.
    pub reference: String,
    /// Forces at the plate in the case that asks most of the anchors, without the factor.
    pub forces: BaseForces,
    /// What the anchors have to carry, with the factor.
    pub demand: PlateDemand,
    /// Every way of failing, as far as it could be checked; `None` where nobody stated what
    /// the plate stands on or how the anchors are fixed.
    pub check: Option<AnchorCheck>,
}

impl PlateAnchors {
    /// The anchors of a post that stands free, in the case that asks most of them.
    pub(super) fn of(
        upright: &UprightDesign,
        pattern: &AnchorPattern,
        setting: Option<&AnchorSetting>,
        rules: &DesignRules,
    ) -> Result<Option<Self>, DesignError> {
        let mut worst: Option<Self> = None;
        for forces in &upright.base {
            let found = Self::in_case(upright, *forces, pattern, setting, rules)?;
            if worst
                .as_ref()
                .is_none_or(|known| found.asks_more_than(known))
            {
                worst = Some(found);
            }
        }
        Ok(worst)
    }

    fn in_case(
        upright: &UprightDesign,
        forces: BaseForces,
        pattern: &AnchorPattern,
        setting: Option<&AnchorSetting>,
        rules: &DesignRules,
    ) -> Result<Self, DesignError> {
        let factors = rules.combination.factors(rules.zone);
        let factor = factors.strength;
        let factored = BasePlateForces {
            moment: forces.moment * factor,
            shear: forces.shear * factor,
            uplift: forces.uplift * factor,
        };
        let plate = PlatePattern {
            rows: pattern.rows,
            per_row: pattern.per_row,
            row_spacing: pattern.row_spacing,
        };
        let demand = base_plate(&factored, &plate)?;
        let check = match setting {
            Some(setting) => anchorage(setting, pattern)?
                .map(|anchorage| anchorage.check(&demand.toward(Side::YPlus)))
                .transpose()?,
            None => None,
        };
        Ok(Self {
            post: upright.role.name(),
            factor,
            reference: format!(
                "load × {factor} by {} ({}); ACI 318-19 chapter 17",
                rules.combination.id, factors.strength_citation
            ),
            forces,
            demand,
            check,
        })
    }

    /// By the check where there is one in both cases; else by tension, then by shear. Under a
    /// braced post the greatest moment is not the greatest tension: the brace lifts the plate.
    fn asks_more_than(&self, other: &Self) -> bool {
        let used = |plate: &Self| plate.check.as_ref().and_then(AnchorCheck::utilisation);
        let (tension, shear) = (
            self.demand.tension_on_row.value,
            self.demand.shear_on_anchor.value,
        );
        let (other_tension, other_shear) = (
            other.demand.tension_on_row.value,
            other.demand.shear_on_anchor.value,
        );
        let by_forces = tension
            .total_cmp(&other_tension)
            .then(shear.total_cmp(&other_shear));
        match (used(self), used(other)) {
            (Some(one), Some(two)) => one.total_cmp(&two).then(by_forces).is_gt(),
            _ => by_forces.is_gt(),
        }
    }
}

/// The kit's pattern in the site's concrete; `None` where nobody says how it is fixed. The
/// front row takes all the shear: plates have clearance holes.
fn anchorage(
    setting: &AnchorSetting,
    pattern: &AnchorPattern,
) -> Result<Option<Anchorage>, DesignError> {
    let Some(fixing) = &setting.fixing else {
        return Ok(None);
    };
    Ok(Some(Anchorage {
        base: setting.base.clone(),
        fixing: fixing.clone(),
        diameter: pattern.diameter,
        embedment: setting.embedment,
        steel: setting.steel.clone(),
        bedding: setting.bedding,
        group: AnchorGroup::grid(
            (pattern.per_row, pattern.anchor_spacing),
            (pattern.rows, pattern.row_spacing),
            setting.edges,
        )?,
        shear_case: ShearCase::FrontRow,
    }))
}
