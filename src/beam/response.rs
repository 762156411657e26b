//! What loads do to a member.

use super::extreme::{Extreme, greatest};
use super::solve::{Bent, Hold, piece_at};
use crate::quantity::unit::{
    FlexuralRigidity, Force, Length, Moment, meter, newton, newton_metres,
};

/// What the support at the start gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reaction {
    /// Its force, against the water where positive.
    pub force: Force,
    /// Its moment, against the turning of the member by the water where positive; 0 at a pin.
    pub moment: Moment,
}

/// The response of a member to its loads, exact along its whole length.
///
/// A position beyond an end reads that end. Signs: see [the room](crate::beam).
#[derive(Clone, Debug, PartialEq)]
pub struct Response {
    hold: Hold,
    /// At least one, from the start on.
    bent: Vec<Bent>,
    length: f64,
    rigidity: f64,
}

impl Response {
    pub(super) fn new(
        (hold, bent): (Hold, Vec<Bent>),
        length: Length,
        rigidity: FlexuralRigidity,
    ) -> Self {
        Self {
            hold,
            bent,
            length: length.value,
            rigidity: rigidity.value,
        }
    }

    /// The shear at a position: the forces of the supports before it less the loads before it.
    /// At a point load or a prop, the value just beyond it.
    #[must_use]
    pub fn shear_at(&self, x: Length) -> Force {
        Force::new::<newton>(self.read(x, |bent, t| bent.shear.at(t)))
    }

    /// The bending moment at a position; positive where the dry side is in tension.
    #[must_use]
    pub fn moment_at(&self, x: Length) -> Moment {
        newton_metres(self.read(x, |bent, t| bent.moment.at(t)))
    }

    /// The deflection at a position, in the direction of the water where positive.
    #[must_use]
    pub fn deflection_at(&self, x: Length) -> Length {
        Length::new::<meter>(self.read(x, |bent, t| bent.deflection.at(t)) / self.rigidity)
    }

    /// What the support at the start gives.
    #[must_use]
    pub fn start(&self) -> Reaction {
        Reaction {
            force: Force::new::<newton>(self.hold.start),
            moment: newton_metres(self.hold.moment),
        }
    }

    /// The force of the far support or of the prop, against the water where positive; 0 for a
    /// cantilever, which has none.
    #[must_use]
    pub fn other(&self) -> Force {
        Force::new::<newton>(self.hold.second)
    }

    /// The greatest shear: at a support or a point load, or where the load changes sign.
    #[must_use]
    pub fn greatest_shear(&self) -> Extreme<Force> {
        let (value, at) = greatest(&self.bent, |bent| &bent.shear, |bent| &bent.piece.load);
        extreme(Force::new::<newton>(value), at)
    }

    /// The greatest bending moment: at a fixed start or a prop, or where the shear changes sign.
    #[must_use]
    pub fn greatest_moment(&self) -> Extreme<Moment> {
        let (value, at) = greatest(&self.bent, |bent| &bent.moment, |bent| &bent.shear);
        extreme(newton_metres(value), at)
    }

    /// The greatest deflection: where the slope changes sign, or at a free end.
    #[must_use]
    pub fn greatest_deflection(&self) -> Extreme<Length> {
        let (value, at) = greatest(&self.bent, |bent| &bent.deflection, |bent| &bent.slope);
        extreme(Length::new::<meter>(value / self.rigidity), at)
    }

    /// Whether all of it is a number. A piece's deflection holds every other response of it.
    pub(super) fn is_finite(&self) -> bool {
        self.bent
            .iter()
            .all(|bent| (bent.deflection.at(1.0) / self.rigidity).is_finite())
    }

    fn read(&self, x: Length, value: impl Fn(&Bent, f64) -> f64) -> f64 {
        let x = x.value.clamp(0.0, self.length);
        piece_at(&self.bent, x).map_or(0.0, |bent| value(bent, bent.piece.t(x)))
    }
}

fn extreme<Quantity>(value: Quantity, at: f64) -> Extreme<Quantity> {
    Extreme {
        value,
        at: Length::new::<meter>(at),
    }
}
