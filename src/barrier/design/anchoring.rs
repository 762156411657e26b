//! The anchors under the base plates: demand always, capacity where enough was stated.

use super::DesignRules;
use super::corner_plate::at_corner;
use super::post_forces::{BaseForces, BraceForces};
use super::upright::UprightDesign;
use crate::anchor::{
    AnchorCheck, AnchorGroup, Anchorage, BasePlateForces, PlateDemand, PlatePattern, ShearCase,
    Side, TensionAnchors, base_plate,
};
use crate::barrier::{AnchorPattern, DesignError};
use crate::quantity::unit::Moment;
use crate::site::AnchorSetting;

/// The anchors of one base plate.
#[derive(Clone, Debug, PartialEq)]
pub struct PlateAnchors {
    /// What stands on it: a kind of post, or the brace.
    pub post: &'static str,
    /// Factor on the load of the water: anchors in concrete are designed for factored loads.
    pub factor: f64,
    /// Where the factor stands.
    pub reference: String,
    /// Forces at the plate in the case that asks most of its anchors, without the factor.
    pub forces: BaseForces,
    /// What the anchors have to carry, with the factor.
    pub demand: PlateDemand,
    /// Every way of failing, as far as it could be checked; `None` where nobody stated what
    /// the plate stands on or how the anchors are fixed.
    pub check: Option<AnchorCheck>,
}

impl PlateAnchors {
    /// What [`post`](Self::post) says of the foot of a brace.
    pub const BRACE: &'static str = "brace";

    /// The anchors of a post that stands free, in the case that asks most of them; `None`
    /// where a moment meets a single row of anchors, which cannot take it.
    pub(super) fn of(
        upright: &UprightDesign,
        pattern: &AnchorPattern,
        setting: Option<&AnchorSetting>,
        rules: &DesignRules,
    ) -> Result<Option<Self>, DesignError> {
        if !takes_moment(upright, pattern) {
            return Ok(None);
        }
        let mut worst: Option<Self> = None;
        for forces in &upright.base {
            let found = Self::in_case(upright, *forces, pattern, setting, rules)?;
            if worst
                .as_ref()
                .is_none_or(|worst| found.asks_more_than(worst))
            {
                worst = Some(found);
            }
        }
        Ok(worst)
    }

    /// The anchors at the foot of a brace. Their strength is not checked: the edges that
    /// somebody stated are those around the post.
    pub(super) fn of_brace(
        forces: &BraceForces,
        pattern: &AnchorPattern,
        rules: &DesignRules,
    ) -> Result<Self, DesignError> {
        let forces = BaseForces {
            case: forces.case,
            shear: forces.horizontal,
            moment: Moment::default(),
            uplift: forces.uplift_of_foot(),
        };
        let (factor, reference) = factor(rules);
        Ok(Self {
            post: Self::BRACE,
            factor,
            reference,
            demand: base_plate(&factored(&forces, factor), &plate(pattern))?,
            forces,
            check: None,
        })
    }

    fn in_case(
        upright: &UprightDesign,
        forces: BaseForces,
        pattern: &AnchorPattern,
        setting: Option<&AnchorSetting>,
        rules: &DesignRules,
    ) -> Result<Self, DesignError> {
        let (factor, reference) = factor(rules);
        let factored = factored(&forces, factor);
        let (demand, mut group) = if let Some(of_legs) = upright.of_legs {
            at_corner(&factored, pattern, of_legs)?
        } else {
            let demand = base_plate(&factored, &plate(pattern))?;
            (demand, demand.toward(Side::YPlus))
        };
        // A brace that holds the post low turns its foot the other way.
        if forces.moment.value < 0.0
            && let Some(tension) = &mut group.tension
            && tension.anchors == TensionAnchors::Outermost(Side::YMinus)
        {
            tension.anchors = TensionAnchors::Outermost(Side::YPlus);
        }
        let setting = setting.filter(|_| rules.has_anchor_strengths());
        let check = match setting {
            Some(setting) => anchorage(setting, pattern)?
                .map(|anchorage| anchorage.check(&group))
                .transpose()?,
            None => None,
        };
        Ok(Self {
            post: upright.role.name(),
            factor,
            reference,
            forces,
            demand,
            check,
        })
    }

    /// By how far the strength is used where it is known, else by tension, then by shear.
    fn asks_more_than(&self, other: &Self) -> bool {
        let used = |anchors: &Self| {
            let check = anchors.check.as_ref();
            check.and_then(AnchorCheck::utilisation).unwrap_or_default()
        };
        let by_use = used(self).total_cmp(&used(other));
        let tension = |anchors: &Self| anchors.demand.tension_on_anchor.value;
        let by_tension = tension(self).total_cmp(&tension(other));
        let shear = |anchors: &Self| anchors.demand.shear_on_anchor.value;
        let by_shear = shear(self).total_cmp(&shear(other));
        by_use.then(by_tension).then(by_shear).is_gt()
    }
}

/// Whether the pattern has a lever arm in every direction that a moment acts in.
pub(super) fn takes_moment(upright: &UprightDesign, pattern: &AnchorPattern) -> bool {
    let turned = upright.base.iter().any(|forces| forces.moment.value != 0.0);
    let across_too = upright.of_legs.is_none() || pattern.per_row > 1;
    !turned || (pattern.rows > 1 && across_too)
}

fn factor(rules: &DesignRules) -> (f64, String) {
    let factors = rules.combination.factors(rules.zone);
    let factor = factors.strength;
    let strengths = if rules.has_anchor_strengths() {
        "; ACI 318-19 chapter 17"
    } else {
        ""
    };
    let reference = format!(
        "load × {factor} by {} ({}){strengths}",
        rules.combination.id, factors.strength_citation
    );
    (factor, reference)
}

fn factored(forces: &BaseForces, factor: f64) -> BasePlateForces {
    BasePlateForces {
        moment: forces.moment * factor,
        shear: forces.shear * factor,
        uplift: forces.uplift * factor,
    }
}

pub(super) fn plate(pattern: &AnchorPattern) -> PlatePattern {
    PlatePattern {
        rows: pattern.rows,
        per_row: pattern.per_row,
        row_spacing: pattern.row_spacing,
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
