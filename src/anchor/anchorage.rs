//! An anchorage as it is known, and its check.

use super::error::AnchorError;
use super::need::{Need, Unchecked};
use super::{AnchorCheck, AnchorGroup, AnchorSystem, BaseMaterial, Bedding, Concrete, Demand};
use super::{Direction, Fixing, Interaction, Mode, Remark, ShearCase, ShearDemand};
use super::{Side, Steel, TensionDemand};
use super::{breakout, coefficient, pryout, pullout, shear_breakout, side_face, steel_modes};
use crate::quantity::Length;

/// Anchors, what they are set in, and how they stand.
#[derive(Clone, Debug, PartialEq)]
pub struct Anchorage {
    /// What the anchors are set in.
    pub base: BaseMaterial,
    /// How they are fixed.
    pub fixing: Fixing,
    /// Outside diameter `d_a` of an anchor; of a drop-in sleeve, the sleeve's.
    pub diameter: Length,
    /// Effective embedment `h_ef`.
    pub embedment: Option<Length>,
    /// The steel of an anchor.
    pub steel: Steel,
    /// What lies between plate and concrete.
    pub bedding: Bedding,
    /// Where they stand.
    pub group: AnchorGroup,
    /// Which row breaks out in shear.
    pub shear_case: ShearCase,
}

impl Anchorage {
    /// Checks every failure mode that the demand calls for, by ACI 318-19 chapter 17.
    ///
    /// 1. Tension (17.6): steel, breakout, pullout or bond, side-face blowout at each edge.
    /// 2. Shear (17.7): steel, breakout toward the edge before the force and to the edges beside
    ///    it, pryout.
    /// 3. Both together (17.8).
    ///
    /// A mode for which something is unstated is [`Unchecked`] and says what to state. In
    /// masonry, or where the base is unstated, no mode is checked.
    ///
    /// # Errors
    /// [`AnchorError`] where a number cannot be: not finite, negative, out of the range of its
    /// clause.
    pub fn check(&self, demand: &Demand) -> Result<AnchorCheck, AnchorError> {
        self.validate()?;
        demand.validate(&self.group)?;
        let concrete = match &self.base {
            BaseMaterial::Concrete(concrete) => concrete,
            BaseMaterial::Masonry => {
                return Ok(self.demand_only(demand, Need::MasonryTestAndEngineer));
            }
            BaseMaterial::Unstated => return Ok(self.demand_only(demand, Need::BaseMaterial)),
        };
        let tension = demand.tension.as_ref();
        let tension = tension
            .map(|tension| self.tension(concrete, tension))
            .unwrap_or_default();
        let shear = demand.shear.as_ref();
        let shear = shear
            .map(|shear| self.shear(concrete, shear))
            .unwrap_or_default();
        let governing = (tension.governing(), shear.governing());
        let interaction = match governing {
            (Some(tension), Some(shear)) => Some(Interaction {
                tension: tension.utilisation(),
                shear: shear.utilisation(),
            }),
            _ => None,
        };
        Ok(AnchorCheck {
            tension,
            shear,
            interaction,
            remarks: self.remarks(concrete),
        })
    }

    fn tension(&self, concrete: &Concrete, demand: &TensionDemand) -> Direction {
        let mut direction = Direction::default();
        direction.add(steel_modes::tension(self, demand.greatest));
        direction.add(breakout::check(self, concrete, demand));
        let pullout = pullout::check(self, concrete, demand);
        let faces = Side::ALL.map(|edge| side_face::check(self, concrete, demand, edge));
        for mode in pullout.into_iter().chain(faces.into_iter().flatten()) {
            direction.add(mode);
        }
        direction
    }

    fn shear(&self, concrete: &Concrete, demand: &ShearDemand) -> Direction {
        let mut direction = Direction::default();
        direction.add(steel_modes::shear(self, demand.greatest));
        let [left, right] = demand.toward.beside();
        for edge in [demand.toward, left, right] {
            if let Some(mode) = shear_breakout::check(self, concrete, demand, edge) {
                direction.add(mode);
            }
        }
        direction.add(pryout::check(self, concrete, demand));
        direction
    }

    /// No mode is checked, each for the same need.
    fn demand_only(&self, demand: &Demand, need: Need) -> AnchorCheck {
        let open = |modes: &[Mode]| Direction {
            checked: Vec::new(),
            unchecked: modes
                .iter()
                .map(|mode| Unchecked {
                    mode: *mode,
                    state: vec![need],
                })
                .collect(),
        };
        let hold = match self.fixing.system() {
            Some(AnchorSystem::Adhesive) => Mode::Bond,
            _ => Mode::Pullout,
        };
        let mut check = AnchorCheck::default();
        if demand.tension.is_some() {
            check.tension = open(&[Mode::SteelTension, Mode::TensionBreakout, hold]);
        }
        if let Some(shear) = &demand.shear {
            let breakout = Mode::ShearBreakout {
                edge: shear.toward,
                toward: true,
            };
            check.shear = open(&[Mode::SteelShear, breakout, Mode::Pryout]);
        }
        check
    }

    fn remarks(&self, concrete: &Concrete) -> Vec<Remark> {
        let mut remarks = vec![Remark::LeastDistancesNotChecked];
        let limit = coefficient::strength_limit(&self.fixing);
        if let Some(stated) = concrete.strength.filter(|strength| *strength > limit) {
            remarks.push(Remark::ConcreteStrengthLimited {
                stated,
                used: limit,
                needs_testing: self.fixing.approval().is_some(),
            });
        }
        if let (Some(stated), Some(yielding)) = (self.steel.ultimate, self.steel.yield_strength) {
            let used = steel_modes::counted(stated, yielding);
            if used < stated {
                remarks.push(Remark::SteelStrengthLimited { stated, used });
            }
        }
        remarks
    }
}
