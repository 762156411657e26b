//! Whether a member can be computed.

use super::{Beam, BeamError, LinearLoad, PointLoad, Supports};
use crate::quantity::unit::Length;

/// By how much of the member's length a place may pass its ends: what sums of lengths lose to
/// rounding. Such a place is taken at the end.
const ROUNDING: f64 = 1e-9;

/// The member as it is computed, with what passes an end by rounding put there; refuses what
/// cannot be a member, a support of it or a load on it.
pub(super) fn checked(beam: &Beam) -> Result<Beam, BeamError> {
    let length = beam.length;
    if !(length.is_finite() && length.value > 0.0) {
        return Err(BeamError::Length(length));
    }
    if !(beam.rigidity.is_finite() && beam.rigidity.value > 0.0) {
        return Err(BeamError::Rigidity(beam.rigidity));
    }
    if let Supports::Propped { at } | Supports::PinnedAndPropped { at } = beam.supports
        && !(at.value > 0.0 && is_on(at, length))
    {
        return Err(BeamError::PropOutside { at, length });
    }
    for load in &beam.loads {
        check_linear(load, length)?;
    }
    for load in &beam.points {
        check_point(load, length)?;
    }
    Ok(between_the_ends(beam.clone()))
}

fn between_the_ends(mut beam: Beam) -> Beam {
    let length = beam.length;
    let put = |place: &mut Length| *place = place.max(Length::default()).min(length);
    if let Supports::Propped { at } | Supports::PinnedAndPropped { at } = &mut beam.supports {
        put(at);
    }
    for load in &mut beam.loads {
        put(&mut load.from);
        put(&mut load.to);
    }
    for load in &mut beam.points {
        put(&mut load.at);
    }
    beam
}

fn check_linear(load: &LinearLoad, length: Length) -> Result<(), BeamError> {
    let LinearLoad {
        from,
        to,
        at_from,
        at_to,
    } = *load;
    if !(is_on(from, length) && is_on(to, length)) {
        return Err(BeamError::LoadOutside { from, to, length });
    }
    if from > to {
        return Err(BeamError::LoadReversed { from, to });
    }
    if !(at_from.is_finite() && at_to.is_finite()) {
        return Err(BeamError::LoadNotFinite { at_from, at_to });
    }
    Ok(())
}

fn check_point(load: &PointLoad, length: Length) -> Result<(), BeamError> {
    if !is_on(load.at, length) {
        let at = load.at;
        return Err(BeamError::PointOutside { at, length });
    }
    if !load.force.is_finite() {
        return Err(BeamError::PointNotFinite(load.force));
    }
    Ok(())
}

/// False for what is not a number, too.
fn is_on(at: Length, length: Length) -> bool {
    at >= -ROUNDING * length && at <= (1.0 + ROUNDING) * length
}
