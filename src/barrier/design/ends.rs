//! The end posts and the wall that holds them.

use super::DesignRules;
use super::water::CaseLoad;
use crate::anchor::{
    AnchorCheck, AnchorGroup, AnchorShare, Anchorage, Demand, ShearCase, ShearDemand, Side,
    tributary_shares,
};
use crate::barrier::{DesignError, LoadCase, Post, WallAnchors};
use crate::beam::LinearLoad;
use crate::quantity::unit::{Force, Moment};
use crate::quantity::{Length, LineLoad, Pressure};
use crate::site::{AnchorSetting, Mount};

/// How the ends of a barrier meet the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// End posts in the reveal or on the face.
    Mounted(Mount),
    /// The ends of a run that stands out from the wall: their posts stand with their backs to
    /// its face.
    AgainstWall,
}

/// What one end post hands over to the wall, without load factors.
#[derive(Clone, Debug, PartialEq)]
pub struct EndPostDesign {
    /// How it meets the wall; `None` until somebody has measured on site.
    pub ends: Option<Ends>,
    /// Width of barrier whose water it carries.
    pub tributary: Length,
    /// In each case.
    pub forces: Vec<EndForces>,
    /// Its anchors; `None` where the post bears on the face of the wall, which needs them only
    /// to keep it in its place, and where the kit does not say where they are.
    pub anchors: Option<EndAnchors>,
}

/// Forces on the jamb at one end of a barrier, without load factors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndForces {
    /// The case.
    pub case: LoadCase,
    /// The whole force.
    pub force: Force,
    /// Height over the sill at which it acts.
    pub height: Length,
    /// The greatest force on a unit of the jamb's height.
    pub greatest: LineLoad,
    /// The greatest pressure of the post on the face of the wall; none in the reveal, where
    /// anchors carry the force.
    pub bearing: Option<Pressure>,
}

/// The anchors up an end post, under the load that asks most of them.
#[derive(Clone, Debug, PartialEq)]
pub struct EndAnchors {
    /// Their heights over the post's foot.
    pub heights: Vec<Length>,
    /// Shear on the one that carries most, without load factors, by tributary height.
    pub greatest_shear: Force,
    /// Factor on the load for the check: anchors are designed for factored loads.
    pub factor: f64,
    /// Every way of failing, as far as it could be checked; `None` where nobody stated what
    /// they are set in or how they are fixed.
    pub check: Option<AnchorCheck>,
}

/// An end post before its design.
pub(super) struct EndTask<'a> {
    pub(super) ends: Option<Ends>,
    pub(super) post: &'a Post,
    pub(super) tributary: Length,
    pub(super) height: Length,
    pub(super) loads: &'a [CaseLoad],
    pub(super) rules: &'a DesignRules,
}

impl EndTask<'_> {
    /// What an end post hands over.
    ///
    /// In the reveal, and against the wall, the water slides the post along the wall: its
    /// anchors carry shear toward the dry edge, each the force nearer to it than to its
    /// neighbours. On the face the water presses the post onto the wall: it bears over its
    /// width, the anchors only keep it in its place, and nothing lifts.
    pub(super) fn design(
        &self,
        jamb: Option<&AnchorSetting>,
    ) -> Result<EndPostDesign, DesignError> {
        let on_face = self.ends == Some(Ends::Mounted(Mount::Outside));
        let forces = self.loads.iter().map(|load| self.forces(load, on_face));
        let pattern = self.post.wall_anchors.filter(|_| !on_face);
        Ok(EndPostDesign {
            ends: self.ends,
            tributary: self.tributary,
            forces: forces.collect(),
            anchors: pattern
                .map(|pattern| self.anchors(pattern, jamb))
                .transpose()?
                .flatten(),
        })
    }

    /// The water, and debris that strikes the post at the surface; the greatest force on a
    /// unit of height is where debris strikes at the height of the greatest water.
    fn forces(&self, load: &CaseLoad, on_face: bool) -> EndForces {
        let water = load.on_barrier.resultant();
        let strikes = load.strikes_on_upright(self.tributary, self.height, &[]);
        let debris = strikes.into_iter().flatten().next();
        let struck = debris.map_or(Force::default(), |band| {
            band.at_from * (band.to - band.from)
        });
        let force = water.force * self.tributary + struck;
        let moment = water.moment * self.tributary
            + debris.map_or(Moment::default(), |band| {
                struck * (band.from + band.to) / 2.0
            });
        let (pressure, _) = load.on_barrier.greatest();
        let greatest =
            pressure * self.tributary + debris.map_or(LineLoad::default(), |band| band.at_from);
        EndForces {
            case: load.case,
            force,
            height: if force.value > 0.0 {
                moment / force
            } else {
                Length::default()
            },
            greatest,
            bearing: on_face.then(|| greatest / self.post.width),
        }
    }

    /// The anchors under the load that asks most of them, wherever debris strikes.
    fn anchors(
        &self,
        pattern: WallAnchors,
        jamb: Option<&AnchorSetting>,
    ) -> Result<Option<EndAnchors>, DesignError> {
        let heights = pattern.heights(self.height);
        let factor = self.rules.combination.factors(self.rules.zone).strength;
        let mut worst: Option<(Force, Vec<AnchorShare>)> = None;
        for load in self.loads {
            for strike in load.strikes_on_upright(self.tributary, self.height, &heights) {
                let bands = self.bands(load, strike);
                let shares = tributary_shares(&heights, &bands)?;
                let shears = shares.iter().map(|share| share.shear);
                let greatest = shears.fold(Force::default(), Force::max);
                if worst.as_ref().is_none_or(|(found, _)| greatest > *found) {
                    worst = Some((greatest, shares));
                }
            }
        }
        let Some((greatest_shear, shares)) = worst else {
            return Ok(None);
        };
        let demand = shear_demand(&shares, greatest_shear, factor);
        let setting = jamb.filter(|_| self.rules.has_anchor_strengths());
        let check = match setting {
            Some(setting) => anchorage(setting, pattern, &heights)?
                .map(|anchorage| anchorage.check(&demand))
                .transpose()?,
            None => None,
        };
        Ok(Some(EndAnchors {
            heights,
            greatest_shear,
            factor,
            check,
        }))
    }

    fn bands(&self, load: &CaseLoad, strike: Option<LinearLoad>) -> Vec<LinearLoad> {
        load.water_on_upright(self.tributary)
            .into_iter()
            .chain(strike)
            .filter(|band| band.to > band.from)
            .collect()
    }
}

/// The shear on the group: the whole force, where it acts relative to the middle of the
/// anchors, and the greatest share.
fn shear_demand(shares: &[AnchorShare], greatest: Force, factor: f64) -> Demand {
    let force: Force = shares.iter().map(|share| share.shear).sum();
    let moment = shares
        .iter()
        .fold(Force::default() * Length::default(), |sum, share| {
            sum + share.shear * share.height
        });
    let all: Length = shares.iter().map(|share| share.height).sum();
    #[allow(clippy::cast_precision_loss)] // a post has a handful of anchors
    let middle = all / shares.len() as f64;
    let eccentricity = if force.value > 0.0 {
        (moment / force - middle).abs()
    } else {
        Length::default()
    };
    Demand {
        tension: None,
        shear: (force.value > 0.0).then_some(ShearDemand {
            toward: Side::YPlus,
            force: force * factor,
            eccentricity,
            greatest: greatest * factor,
        }),
    }
}

/// The kit's anchors in the site's jamb, x running up the post; `None` where nobody says how
/// they are fixed.
fn anchorage(
    setting: &AnchorSetting,
    pattern: WallAnchors,
    heights: &[Length],
) -> Result<Option<Anchorage>, DesignError> {
    let Some(fixing) = &setting.fixing else {
        return Ok(None);
    };
    let spacings = heights.windows(2).map(|pair| pair[1] - pair[0]);
    Ok(Some(Anchorage {
        base: setting.base.clone(),
        fixing: fixing.clone(),
        diameter: pattern.diameter,
        embedment: setting.embedment,
        steel: setting.steel.clone(),
        bedding: setting.bedding,
        group: AnchorGroup::new(spacings, [], setting.edges)?,
        shear_case: ShearCase::FrontRow,
    }))
}
