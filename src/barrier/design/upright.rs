//! A post that stands free: a cantilever from its base plate, or propped by a brace.

use super::DesignRules;
use super::water::CaseLoad;
use crate::barrier::{
    Amount, Basis, Brace, Check, DesignError, LoadCase, Post, bending_capacity, shear_capacity,
};
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
    /// Whether it is braced.
    pub brace: Option<BraceForces>,
    /// The forces at its base plate, in each case, without load factors.
    pub base: Vec<BaseForces>,
    /// Bending, shear and deflection in each case.
    pub checks: Vec<Check>,
}

/// Forces at the foot of a post, without load factors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BaseForces {
    /// The case.
    pub case: LoadCase,
    /// Shear in the direction of the water.
    pub shear: Force,
    /// Moment about the base plate.
    pub moment: Moment,
    /// Force along the post that lifts the plate; negative where it presses.
    pub uplift: Force,
}

/// What a brace carries, without load factors, in the case that asks most of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BraceForces {
    /// The case.
    pub case: LoadCase,
    /// The side of the barrier that it stands on.
    pub side: BraceSide,
    /// Height over the sill where it holds the post.
    pub at: Length,
    /// Horizontal force that it takes from the post.
    pub horizontal: Force,
    /// Force along it: thrust on the dry side, pull on the water side.
    pub along: Force,
    /// Vertical force at its foot: down on the dry side, up on the water side.
    pub vertical: Force,
    /// What its maker allows along it, where it is stated.
    pub capacity: Option<Force>,
}

/// A post before its checks.
pub(super) struct UprightTask<'a> {
    pub(super) role: Upright,
    pub(super) count: u32,
    pub(super) post: &'a Post,
    pub(super) tributary: Length,
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
        let (mut checks, mut base) = (Vec::new(), Vec::new());
        let mut braced: Option<BraceForces> = None;
        for load in self.loads {
            let plain = self.response(load, prop, 1.0)?;
            let factored = self.response(load, prop, basis.factor)?;
            checks.extend(self.checks(&plain, &factored, &basis, load.case)?);
            let forces =
                brace.map(|brace| brace_forces(brace, load.case, self.height, plain.other()));
            let vertical = forces.map_or(Force::default(), |forces| forces.vertical);
            base.push(BaseForces {
                case: load.case,
                shear: plain.start().force.abs(),
                moment: plain.start().moment.abs(),
                // A strut on the dry side pushes the post up, a tie before it pulls it down.
                uplift: match brace {
                    Some((_, BraceSide::Water)) => -vertical,
                    Some((_, BraceSide::Dry)) | None => vertical,
                },
            });
            if let Some(forces) = forces
                && braced.is_none_or(|found| forces.along > found.along)
            {
                braced = Some(forces);
            }
        }
        Ok(UprightDesign {
            role: self.role,
            count: self.count,
            tributary: self.tributary,
            brace: braced,
            base,
            checks,
        })
    }

    fn response(
        &self,
        load: &CaseLoad,
        prop: Option<Length>,
        factor: f64,
    ) -> Result<Response, DesignError> {
        let rigidity = self.post.material.modulus * self.post.section.second_moment;
        let beam = match prop {
            Some(at) => Beam::propped(self.height, rigidity, at),
            None => Beam::cantilever(self.height, rigidity),
        };
        let loads = load.on_upright(self.tributary, self.height);
        let factored = loads.into_iter().map(|mut load| {
            load.at_from *= factor;
            load.at_to *= factor;
            load
        });
        Ok(beam.with_loads(factored).response()?)
    }

    fn checks(
        &self,
        plain: &Response,
        factored: &Response,
        basis: &Basis,
        case: LoadCase,
    ) -> Result<[Check; 3], DesignError> {
        let bending = bending_capacity(&self.post.section, &self.post.material, basis.strength)?;
        let shear = shear_capacity(&self.post.section, &self.post.material, basis.strength)?;
        let check = |what, demand, capacity, reference| Check {
            part: self.role.name().to_owned(),
            what,
            case,
            demand,
            capacity,
            reference,
        };
        Ok([
            check(
                "bending",
                Amount::Moment(factored.greatest_moment().value),
                Amount::Moment(bending.value),
                basis.strength_reference(&bending),
            ),
            check(
                "shear",
                Amount::Force(factored.greatest_shear().value),
                Amount::Force(shear.value),
                basis.strength_reference(&shear),
            ),
            check(
                "deflection",
                Amount::Deflection(plain.greatest_deflection().value),
                Amount::Deflection(basis.deflection.of(self.height)),
                basis.deflection.reference("height"),
            ),
        ])
    }
}

/// The forces in a brace that takes a horizontal force from a post.
fn brace_forces(
    (brace, side): (&Brace, BraceSide),
    case: LoadCase,
    height: Length,
    horizontal: Force,
) -> BraceForces {
    let at = height * brace.attachment.value;
    let horizontal = horizontal.abs();
    let slope = (at / brace.foot).value;
    BraceForces {
        case,
        side,
        at,
        horizontal,
        along: horizontal * slope.hypot(1.0),
        vertical: horizontal * slope,
        capacity: brace.capacity,
    }
}
