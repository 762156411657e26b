//! The anchors under a corner post.

use super::anchoring::plate;
use crate::anchor::{
    BasePlateForces, Demand, PlateDemand, PlatePattern, Side, TensionAnchors, base_plate,
};
use crate::barrier::{AnchorPattern, DesignError};
use crate::quantity::Length;
use crate::quantity::unit::Force;

/// The anchors of a corner post, which both legs turn: the moments of the legs are the parts
/// of their vector sum, each pulls on a row of its own, and the anchor that stands in both
/// rows carries both. Of the two ways that the plate may lie, the one that asks more.
pub(super) fn at_corner(
    forces: &BasePlateForces,
    pattern: &AnchorPattern,
    of_legs: [Length; 2],
) -> Result<(PlateDemand, Demand), DesignError> {
    let [one, other] = of_legs;
    let lying = corner_lying(forces, pattern, [one, other])?;
    let turned = corner_lying(forces, pattern, [other, one])?;
    let more = turned.0.tension_on_anchor > lying.0.tension_on_anchor;
    Ok(if more { turned } else { lying })
}

/// The same with the first leg turning the plate across its rows, the second along them.
fn corner_lying(
    forces: &BasePlateForces,
    pattern: &AnchorPattern,
    [across, along]: [Length; 2],
) -> Result<(PlateDemand, Demand), DesignError> {
    let sum = across.value.hypot(along.value);
    let part = |leg: Length| {
        if sum > 0.0 { leg.value / sum } else { 0.0 }
    };
    let of_rows = BasePlateForces {
        moment: forces.moment * part(across),
        ..*forces
    };
    let of_columns = BasePlateForces {
        moment: forces.moment * part(along),
        uplift: Force::default(),
        ..*forces
    };
    let columns = PlatePattern {
        rows: pattern.per_row,
        per_row: pattern.rows,
        row_spacing: pattern.anchor_spacing,
    };
    let mut demand = base_plate(&of_rows, &plate(pattern))?;
    let more = base_plate(&of_columns, &columns)?.tension_on_anchor;
    demand.tension_on_anchor += more;
    let mut group = demand.toward(Side::YPlus);
    if let Some(tension) = &mut group.tension {
        tension.greatest = tension.greatest.max(demand.tension_on_anchor);
        // Anchors at one end of the row are pulled more, those at the other as much less.
        let rows = match tension.anchors {
            TensionAnchors::All => pattern.rows,
            TensionAnchors::Outermost(_) => 1,
        };
        let off = pattern.along() * (more * f64::from(rows) / tension.force).value;
        tension.eccentricity_x = off.min(pattern.along() / 2.0);
    }
    Ok((demand, group))
}
