//! A post that stands free: a cantilever from its base plate, or propped by a brace.

use super::DesignRules;
use super::post_forces::{BaseForces, BraceForces};
use super::water::CaseLoad;
use crate::barrier::member::{Member, MemberDemand};
use crate::barrier::{Basis, Brace, Check, DesignError, Post};
use crate::beam::{Beam, Response};
use crate::quantity::Length;
use crate::quantity::unit::{Force, Moment};
use crate::site::BraceSide;

/// Where a free-standing post stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Upright {
    /// Between two planks of one leg.
    Intermediate,
    /// Where two legs meet.
    Corner,
}

impl Upright {
    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Intermediate => "intermediate post",
            Self::Corner => "corner post",
        }
    }
}

/// What the water asks of a free-standing post, and whether it holds.
#[derive(Clone, Debug, PartialEq)]
pub struct UprightDesign {
    /// Where it stands.
    pub role: Upright,
    /// How many such posts there are.
    pub count: u32,
    /// Width of barrier whose water it carries; at a corner the vector sum of both legs'.
    pub tributary: Length,
    /// At a corner, the width that it carries of each leg.
    pub of_legs: Option<[Length; 2]>,
    /// Whether it is braced.
    pub brace: Option<BraceForces>,
    /// The forces at its base plate, in each case, without load factors.
    pub base: Vec<BaseForces>,
    /// Bending, shear and deflection in each case.
    pub checks: Vec<Check>,
}

impl UprightDesign {
    /// Whether the post holds, and its brace what its maker allows, where he says.
    pub(super) fn holds(&self) -> bool {
        let carried = self.brace.is_none_or(|forces| forces.holds());
        carried && self.checks.iter().all(Check::holds)
    }
}

/// A post before its checks.
pub(super) struct UprightTask<'a> {
    pub(super) role: Upright,
    pub(super) count: u32,
    pub(super) post: &'a Post,
    pub(super) tributary: Length,
    pub(super) of_legs: Option<[Length; 2]>,
    pub(super) height: Length,
    pub(super) loads: &'a [CaseLoad],
    pub(super) rules: &'a DesignRules,
}

impl UprightTask<'_> {
    /// The post with or without a brace.
    ///
    /// Without: a cantilever, V = ∫w, M = ∫w·z. With: fixed at its foot and held at the brace
    /// (propped cantilever); the brace does not give way. The post is as high as the barrier.
    pub(super) fn design(
        &self,
        brace: Option<(&Brace, BraceSide)>,
    ) -> Result<UprightDesign, DesignError> {
        let basis = Basis::of(
            &self.post.material,
            &self.rules.combination,
            self.rules.zone,
            &self.rules.deflection,
        )?;
        let prop = brace.map(|(brace, _)| self.height * brace.attachment.value);
        let mut design = UprightDesign {
            role: self.role,
            count: self.count,
            tributary: self.tributary,
            of_legs: self.of_legs,
            brace: None,
            base: Vec::new(),
            checks: Vec::new(),
        };
        let member = Member {
            name: self.role.name(),
            section: &self.post.section,
            material: &self.post.material,
            length: self.height,
            measure: "height",
        };
        for load in self.loads {
            let worst = self.worst(load, prop)?;
            let checks = member.checks(worst.member, &basis, load.case)?;
            design.checks.extend(checks);
            let forces = brace.map(|(brace, side)| {
                let factor = basis.factor;
                BraceForces::of(load.case, brace, side, self.height, worst.on_prop, factor)
            });
            design.base.push(BaseForces {
                case: load.case,
                shear: worst.base_shear,
                moment: worst.base_moment,
                uplift: forces.map_or(Force::default(), BraceForces::uplift_of_post),
            });
            if let Some(forces) = forces
                && design.brace.is_none_or(|found| forces.along > found.along)
            {
                design.brace = Some(forces);
            }
        }
        Ok(design)
    }

    /// The greatest of every response, without load factors, wherever debris strikes.
    fn worst(&self, load: &CaseLoad, prop: Option<Length>) -> Result<Worst, DesignError> {
        let rigidity = self.post.material.modulus * self.post.section.second_moment;
        let beam = match prop {
            Some(at) => Beam::propped(self.height, rigidity, at),
            None => Beam::cantilever(self.height, rigidity),
        }
        .with_loads(load.water_on_upright(self.tributary));
        let places = prop.map_or(Vec::new(), |at| {
            vec![Length::default(), at * WORST_FOR_BASE, at / 2.0]
        });
        let mut worst = Worst::default();
        for strike in load.strikes_on_upright(self.tributary, self.height, &places) {
            worst.take(&beam.clone().with_loads(strike).response()?);
        }
        Ok(worst)
    }
}

/// A force on a member fixed at its foot and propped turns the foot most at 1 − 1/√3 of the
/// height of the prop (where b·(a² − b²) is greatest, b being its distance from the prop).
const WORST_FOR_BASE: f64 = 0.422_649_730_810_374_2;

/// The greatest responses of a post, without load factors.
#[derive(Clone, Copy, Default)]
struct Worst {
    member: MemberDemand,
    base_shear: Force,
    base_moment: Moment,
    on_prop: Force,
}

impl Worst {
    fn take(&mut self, response: &Response) {
        let (start, member) = (response.start(), &mut self.member);
        member.moment = member.moment.max(response.greatest_moment().value);
        member.shear = member.shear.max(response.greatest_shear().value);
        member.deflection = member.deflection.max(response.greatest_deflection().value);
        self.base_shear = self.base_shear.max(start.force.abs());
        if start.moment.abs() > self.base_moment.abs() {
            self.base_moment = start.moment;
        }
        self.on_prop = self.on_prop.max(response.other().abs());
    }
}
