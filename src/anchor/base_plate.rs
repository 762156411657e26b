//! From the forces at a base plate to the anchors under it.

use super::error::{AnchorError, above_zero, not_negative};
use super::{Demand, ShearDemand, Side, TensionDemand};
use crate::quantity::Length;
use crate::quantity::unit::{Force, Moment};

/// Factored forces at the centre of a base plate.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BasePlateForces {
    /// The moment of the water about the plate; its sign does not matter.
    pub moment: Moment,
    /// The shear, in the direction of the water; its sign does not matter.
    pub shear: Force,
    /// The force along the post: above 0 lifts the plate, below 0 presses on it.
    pub uplift: Force,
}

/// Where the anchors stand under a plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlatePattern {
    /// Rows, one behind the other in the direction of the water.
    pub rows: u32,
    /// Anchors in each row.
    pub per_row: u32,
    /// From row to row.
    pub row_spacing: Length,
}

/// What the anchors under a plate have to carry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateDemand {
    /// Tension on the row at the wet side, together.
    pub tension_on_row: Force,
    /// Tension on each anchor of it.
    pub tension_on_anchor: Force,
    /// Shear on each anchor of the plate.
    pub shear_on_anchor: Force,
    /// From the row in tension to the row in compression; `None` for a single row.
    pub lever_arm: Option<Length>,
    pattern: PlatePattern,
    shear: Force,
    all: Option<(Force, Length)>,
}

/// Tension and shear on the anchors of a base plate.
///
/// The lever arm runs from the outermost row at the wet side to the one at the dry side, and
/// only the former is counted in tension: the centre of pressure lies beyond the latter, so the
/// tension is not underestimated by a stiff plate. Force along the post is halved between the
/// two. With s the arm, P the uplift: T = M/s + P/2, at least 0; a single row has no arm and
/// carries T = P alone. Where the row at the dry side is lifted too, P/2 > M/s, all anchors are
/// in tension under P, M/P off their middle. Shear is even. Common practice, no source.
///
/// # Errors
/// [`AnchorError`] where a number is 0 or not finite, or a moment acts on a single row.
///
/// ```
/// use sillmark::anchor::{BasePlateForces, PlatePattern, base_plate};
/// use sillmark::quantity::unit::{Force, Length, kilonewton, meter};
/// let kilonewtons = Force::new::<kilonewton>;
/// let metres = Length::new::<meter>;
/// let pattern = PlatePattern { rows: 2, per_row: 2, row_spacing: metres(0.2) };
/// let forces = BasePlateForces {
///     moment: kilonewtons(3.0) * metres(1.0),
///     shear: kilonewtons(8.0),
///     uplift: kilonewtons(0.0),
/// };
/// let demand = base_plate(&forces, &pattern)?;
/// assert!((demand.tension_on_anchor.get::<kilonewton>() - 7.5).abs() < 1e-9);
/// assert!((demand.shear_on_anchor.get::<kilonewton>() - 2.0).abs() < 1e-9);
/// # Ok::<(), sillmark::anchor::AnchorError>(())
/// ```
pub fn base_plate(
    forces: &BasePlateForces,
    pattern: &PlatePattern,
) -> Result<PlateDemand, AnchorError> {
    if pattern.rows == 0 || pattern.per_row == 0 {
        let what = if pattern.rows == 0 {
            "rows"
        } else {
            "anchors in a row"
        };
        return Err(AnchorError::NoAnchors { what });
    }
    let moment = forces.moment.abs();
    let shear = forces.shear.abs();
    not_negative("shear", shear)?;
    not_negative("force along the post", forces.uplift.abs())?;
    if !moment.value.is_finite() {
        return Err(AnchorError::Negative {
            what: "moment",
            value: format!("{} N·m", moment.value),
        });
    }
    let (lever_arm, tension) = if pattern.rows > 1 {
        above_zero("row spacing", pattern.row_spacing)?;
        let arm = pattern.row_spacing * f64::from(pattern.rows - 1);
        (Some(arm), moment / arm + forces.uplift / 2.0)
    } else if moment.value > 0.0 {
        return Err(AnchorError::NoLeverArm {
            moment: format!("{} N·m", moment.value),
        });
    } else {
        (None, forces.uplift)
    };
    let tension_on_row = tension.max(Force::default());
    let all = lever_arm
        .filter(|arm| forces.uplift / 2.0 > moment / *arm)
        .map(|_| (forces.uplift, moment / forces.uplift));
    Ok(PlateDemand {
        tension_on_row,
        tension_on_anchor: tension_on_row / f64::from(pattern.per_row),
        shear_on_anchor: shear / (f64::from(pattern.per_row) * f64::from(pattern.rows)),
        lever_arm,
        pattern: *pattern,
        shear,
        all,
    })
}

impl PlateDemand {
    /// As the demand on a group whose water pushes toward a side: the row at the opposite side
    /// is in tension, or all of them where the plate lifts as a whole.
    #[must_use]
    pub fn toward(&self, dry: Side) -> Demand {
        let all = self.pattern.per_row * self.pattern.rows;
        let tension = (self.tension_on_row > Force::default()).then(|| match self.all {
            None => {
                TensionDemand::on_row(dry.opposite(), self.tension_on_row, self.pattern.per_row)
            }
            Some((force, off)) => {
                let mut tension = TensionDemand::even(force, all);
                tension.greatest = self.tension_on_anchor;
                if dry.across_x() {
                    tension.eccentricity_x = off;
                } else {
                    tension.eccentricity_y = off;
                }
                tension
            }
        });
        let shear =
            (self.shear > Force::default()).then(|| ShearDemand::even(dry, self.shear, all));
        Demand { tension, shear }
    }
}
