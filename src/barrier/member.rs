//! The three checks of a member that bends: a plank between posts, a post on its foot.

use super::{
    Amount, Basis, Capacity, Check, DesignError, LoadCase, Material, Section, bending_capacity,
    shear_capacity,
};
use crate::quantity::Length;
use crate::quantity::unit::{Force, Moment};

/// What the loads make of a member, without load factors.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct MemberDemand {
    pub(super) moment: Moment,
    pub(super) shear: Force,
    pub(super) deflection: Length,
}

/// What a member can carry.
pub(super) struct MemberCapacity {
    pub(super) bending: Capacity<Moment>,
    pub(super) shear: Capacity<Force>,
}

impl MemberCapacity {
    pub(super) fn of(
        section: &Section,
        material: &Material,
        basis: &Basis,
    ) -> Result<Self, DesignError> {
        Ok(Self {
            bending: bending_capacity(section, material, basis.strength)?,
            shear: shear_capacity(section, material, basis.strength)?,
        })
    }
}

/// A member and what its deflection is a part of.
pub(super) struct Member<'a> {
    pub(super) name: &'a str,
    pub(super) section: &'a Section,
    pub(super) material: &'a Material,
    pub(super) length: Length,
    /// `span` or `height`.
    pub(super) measure: &'static str,
}

impl Member<'_> {
    /// Bending, shear and deflection. The member is elastic, so that a factor on the load is
    /// one on moment and shear; deflection has none.
    pub(super) fn checks(
        &self,
        demand: MemberDemand,
        basis: &Basis,
        case: LoadCase,
    ) -> Result<[Check; 3], DesignError> {
        let MemberCapacity { bending, shear } =
            MemberCapacity::of(self.section, self.material, basis)?;
        let check = |what, demand, capacity, reference| Check {
            part: self.name.to_owned(),
            what,
            case,
            demand,
            capacity,
            reference,
        };
        Ok([
            check(
                "bending",
                Amount::Moment(demand.moment * basis.factor),
                Amount::Moment(bending.value),
                basis.strength_reference(&bending),
            ),
            check(
                "shear",
                Amount::Force(demand.shear * basis.factor),
                Amount::Force(shear.value),
                basis.strength_reference(&shear),
            ),
            check(
                "deflection",
                Amount::Deflection(demand.deflection),
                Amount::Deflection(basis.deflection.of(self.length)),
                basis.deflection.reference(self.measure),
            ),
        ])
    }
}
