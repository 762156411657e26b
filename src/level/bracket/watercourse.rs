//! Lines of one watercourse go together.

use super::choose::partner;
use super::view::{Sight, View};
use super::{BracketRemark, SKIP_FACTOR};
use crate::quantity::IncomparableDatums;

/// Two lines that bound the water, as the watercourses allow.
pub(super) struct Bound<'map> {
    pub(super) nearest: Sight<'map>,
    pub(super) other: Sight<'map>,
    pub(super) remarks: Vec<BracketRemark>,
    /// How far a nearer line that was set aside stands above `nearest`, metres.
    pub(super) doubt: f64,
    /// Whether the watercourse of the nearest line has its part in it; if not, a line of it
    /// may still follow at any distance.
    pub(super) is_of_nearest: bool,
}

/// Step 7: the two lines where the watercourse of the nearest line, or another about as near,
/// has lines on both sides of the place; `None` where none has.
pub(super) fn bound<'map>(
    view: &View<'map>,
    nearest: &Sight<'map>,
) -> Result<Option<Bound<'map>>, IncomparableDatums> {
    if nearest.line.watercourse.is_none() {
        return Ok(None);
    }
    match own_partner(view, nearest)? {
        Some(own) => refined(view, nearest, own).map(Some),
        None => by_another(view, nearest),
    }
}

fn own_partner<'map>(
    view: &View<'map>,
    nearest: &Sight<'map>,
) -> Result<Option<Sight<'map>>, IncomparableDatums> {
    partner(view, nearest, |line| nearest.line.shares_watercourse(line))
}

/// A nearer line of another watercourse takes the place of the own one, where it leaves the
/// level in the range of the own lines.
fn refined<'map>(
    view: &View<'map>,
    nearest: &Sight<'map>,
    own: Sight<'map>,
) -> Result<Bound<'map>, IncomparableDatums> {
    let mut bound = Bound {
        nearest: *nearest,
        other: own,
        remarks: Vec::new(),
        doubt: 0.0,
        is_of_nearest: true,
    };
    let any = partner(view, nearest, |_| true)?;
    if let Some(other) = any.filter(|other| !nearest.line.shares_watercourse(other.line)) {
        let share = nearest.distance / (nearest.distance + other.distance);
        let rise = share * nearest.rise_to(&other)?;
        let range = nearest.rise_to(&own)?;
        if (range.min(0.0)..=range.max(0.0)).contains(&rise) {
            bound.other = other;
            let remark = BracketRemark::between_watercourses(nearest, &other);
            bound.remarks.push(remark);
        } else {
            let remark = BracketRemark::other_watercourse(nearest, &other);
            bound.remarks.push(remark);
        }
    }
    Ok(bound)
}

/// The nearest watercourse with lines on both sides, when that of the nearest line has not.
fn by_another<'map>(
    view: &View<'map>,
    nearest: &Sight<'map>,
) -> Result<Option<Bound<'map>>, IncomparableDatums> {
    let limit = SKIP_FACTOR * nearest.distance;
    let mut tried = vec![nearest];
    for sight in &view.sights {
        if sight.distance > limit {
            break;
        }
        let known = |known: &&Sight<'_>| known.line.shares_watercourse(sight.line);
        if sight.line.watercourse.is_none() || tried.iter().any(known) || !view.sees(sight) {
            continue;
        }
        if let Some(other) = own_partner(view, sight)? {
            return Ok(Some(Bound {
                nearest: *sight,
                other,
                remarks: vec![BracketRemark::set_aside(sight, nearest)],
                doubt: sight.rise_to(nearest)?.max(0.0),
                is_of_nearest: false,
            }));
        }
        tried.push(sight);
    }
    Ok(None)
}
