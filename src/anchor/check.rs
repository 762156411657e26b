//! The outcome of a check.

use super::{Interaction, Mode, Remark, Strength, Unchecked};
use crate::quantity::unit::Force;

/// One mode: what it can carry, and what it has to.
#[derive(Clone, Debug, PartialEq)]
pub struct ModeCheck {
    /// The mode.
    pub mode: Mode,
    /// The strength.
    pub strength: Strength,
    /// The factored force to compare with the design strength: of one anchor, of the group, or
    /// of those of its anchors that fail together.
    pub demand: Force,
}

impl ModeCheck {
    /// Demand over design strength; above 1 it does not hold.
    #[must_use]
    pub fn utilisation(&self) -> f64 {
        if self.demand.value > 0.0 {
            (self.demand / self.strength.design()).value
        } else {
            0.0
        }
    }
}

/// All modes in tension, or in shear.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Direction {
    /// The modes that were checked.
    pub checked: Vec<ModeCheck>,
    /// Those that were not, with what to state.
    pub unchecked: Vec<Unchecked>,
}

impl Direction {
    /// Files the result of a mode.
    pub(super) fn add(&mut self, mode: Result<ModeCheck, Unchecked>) {
        match mode {
            Ok(check) => self.checked.push(check),
            Err(unchecked) => self.unchecked.push(unchecked),
        }
    }

    /// The mode of the greatest utilisation among those checked.
    #[must_use]
    pub fn governing(&self) -> Option<&ModeCheck> {
        self.checked
            .iter()
            .max_by(|one, other| one.utilisation().total_cmp(&other.utilisation()))
    }

    /// The result of one mode, where it was checked.
    #[must_use]
    pub fn mode(&self, mode: Mode) -> Option<&ModeCheck> {
        self.checked.iter().find(|check| check.mode == mode)
    }
}

/// What the check of an anchorage found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AnchorCheck {
    /// Modes in tension; empty without tension.
    pub tension: Direction,
    /// Modes in shear; empty without shear.
    pub shear: Direction,
    /// Both together, where both have a mode that was checked.
    pub interaction: Option<Interaction>,
    /// What else to know.
    pub remarks: Vec<Remark>,
}

/// What the check comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Every mode was checked and holds, alone and together.
    Holds,
    /// A mode, or tension and shear together, does not hold.
    Fails,
    /// What was checked holds, but modes were not checked: no proof.
    Open,
    /// No mode could be checked: the demand is all there is.
    DemandOnly,
    /// There is no demand.
    NoDemand,
}

impl AnchorCheck {
    /// What the check comes to.
    #[must_use]
    pub fn outcome(&self) -> Outcome {
        let directions = [&self.tension, &self.shear];
        let checked = directions
            .iter()
            .any(|direction| !direction.checked.is_empty());
        let open = directions
            .iter()
            .any(|direction| !direction.unchecked.is_empty());
        if self
            .utilisation()
            .is_some_and(|utilisation| utilisation > 1.0)
        {
            return Outcome::Fails;
        }
        match (checked, open) {
            (true, false) => Outcome::Holds,
            (true, true) => Outcome::Open,
            (false, true) => Outcome::DemandOnly,
            (false, false) => Outcome::NoDemand,
        }
    }

    /// The greatest utilisation of any mode that was checked, or of both directions together.
    #[must_use]
    pub fn utilisation(&self) -> Option<f64> {
        let governing = [self.tension.governing(), self.shear.governing()];
        let alone = governing.into_iter().flatten().map(ModeCheck::utilisation);
        let together = self.interaction.iter().map(Interaction::utilisation);
        alone.chain(together).max_by(f64::total_cmp)
    }
}
