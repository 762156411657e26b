//! Beyond the last line.

use super::view::Sight;
use super::{BEYOND_LIMIT_FEET, LineRefusal};
use crate::quantity::{Length, UnitSystem, unit::foot, unit::meter};

/// How the level goes on behind the last line.
pub(super) struct Extension<'map> {
    /// The line behind the last one.
    pub(super) behind: Sight<'map>,
    /// How far the level is raised above that of the last line, metres.
    pub(super) rise: f64,
    /// Standard deviation of that, metres: as much as the water rises or falls on the way.
    pub(super) sd: f64,
    pub(super) is_upstream: bool,
}

/// Step 9: upstream the slope between the last two lines goes on, but never by more than the
/// difference between them; downstream the level of the last line holds, which is too high
/// rather than too low.
pub(super) fn extend<'map>(
    nearest: &Sight<'map>,
    behind: Option<(Sight<'map>, f64)>,
) -> Result<Extension<'map>, LineRefusal> {
    let distance = Length::new::<meter>(nearest.distance);
    let units = units_of(nearest);
    let Some((behind, gap)) = behind else {
        return Err(LineRefusal::OneLine {
            line: nearest.line.title(),
            distance,
            units,
        });
    };
    let fall = -nearest.rise_to(&behind)?;
    let is_upstream = fall > 0.0;
    let limit = Length::new::<foot>(BEYOND_LIMIT_FEET);
    if distance > limit {
        return Err(LineRefusal::BeyondLast {
            direction: if is_upstream {
                "upstream"
            } else {
                "downstream"
            },
            line: nearest.line.title(),
            distance,
            limit,
            units,
        });
    }
    let change = fall.abs() * nearest.distance / gap.max(nearest.distance);
    Ok(Extension {
        behind,
        rise: if is_upstream { change } else { 0.0 },
        sd: change,
        is_upstream,
    })
}

pub(super) fn units_of(sight: &Sight<'_>) -> UnitSystem {
    match sight.line.unit {
        Some(unit) if !unit.is_customary() => UnitSystem::Si,
        _ => UnitSystem::Us,
    }
}
