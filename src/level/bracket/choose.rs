//! Which lines bound the water at a place.

use super::view::{Sight, View};
use super::watercourse;
use super::{BracketRemark, ON_LINE_METRES, SKIP_FACTOR, STEP_FACTOR};
use crate::hazard::{LevelLine, LineKind};
use crate::quantity::IncomparableDatums;

/// Where the place stands among the lines, and what was set aside on the way.
pub(super) struct Choice<'map> {
    pub(super) nearest: Sight<'map>,
    pub(super) standing: Standing<'map>,
    pub(super) remarks: Vec<BracketRemark>,
    /// How far a nearer line that was set aside stands above `nearest`, metres.
    pub(super) doubt: f64,
    /// Nothing farther away than this can change the choice, metres.
    pub(super) reach: f64,
}

/// How the other line, if any, stands to the nearest.
pub(super) enum Standing<'map> {
    /// The place is on the nearest line.
    On,
    /// The other line bounds the water on the other side.
    Between(Sight<'map>),
    /// No other line; the next one behind the nearest, and how far behind it.
    Beyond(Option<(Sight<'map>, f64)>),
}

/// Steps 3 to 7 of the method; `None` where no line is in view.
pub(super) fn choose<'map>(view: &View<'map>) -> Result<Option<Choice<'map>>, IncomparableDatums> {
    let Some(&nearest) = view.sights.first() else {
        return Ok(None);
    };
    if nearest.distance <= ON_LINE_METRES {
        return on_line(view, nearest).map(Some);
    }
    if let Some(bound) = watercourse::bound(view, &nearest)? {
        let behind = view.behind(&bound.nearest);
        let mut remarks = bound.remarks;
        remarks.extend(not_monotone(&bound.nearest, &bound.other, behind)?);
        return Ok(Some(Choice {
            nearest: bound.nearest,
            standing: Standing::Between(bound.other),
            remarks,
            doubt: bound.doubt,
            reach: if bound.is_of_nearest {
                bounds(&bound.nearest, &bound.other, behind)
            } else {
                f64::INFINITY
            },
        }));
    }
    without_watercourse(view, nearest).map(Some)
}

/// Steps 4 to 6, and the end of 7: no watercourse is known to have lines on both sides.
fn without_watercourse<'map>(
    view: &View<'map>,
    nearest: Sight<'map>,
) -> Result<Choice<'map>, IncomparableDatums> {
    let behind = view.behind(&nearest);
    let is_named = nearest.line.watercourse.is_some();
    let mut chosen = partner(view, &nearest, |_| true)?;
    let mut remarks = Vec::new();
    if let Some(other) = &chosen {
        let refused =
            if is_crest(&nearest, other, behind)? || is_out_of_step(&nearest, other, behind)? {
                Some(BracketRemark::across_land(&nearest, other))
            } else if is_named && nearest.rise_to(other)? < 0.0 {
                Some(BracketRemark::other_watercourse(&nearest, other))
            } else {
                None
            };
        if refused.is_some() {
            chosen = None;
        } else {
            remarks.extend(not_monotone(&nearest, other, behind)?);
            if is_named {
                remarks.push(BracketRemark::between_watercourses(&nearest, other));
            }
        }
        remarks.extend(refused);
    }
    let (standing, reach) = match chosen {
        // A line of the own watercourse may follow at any distance.
        Some(other) if is_named => (Standing::Between(other), f64::INFINITY),
        Some(other) => (Standing::Between(other), bounds(&nearest, &other, behind)),
        None => (Standing::Beyond(behind), f64::INFINITY),
    };
    Ok(Choice {
        nearest,
        standing,
        remarks,
        doubt: 0.0,
        reach,
    })
}

/// Step 3.
fn on_line<'map>(
    view: &View<'map>,
    nearest: Sight<'map>,
) -> Result<Choice<'map>, IncomparableDatums> {
    let on = view
        .sights
        .iter()
        .take_while(|sight| sight.distance <= ON_LINE_METRES);
    let mut highest = nearest;
    let mut remarks = Vec::new();
    for sight in on {
        let rise = highest.rise_to(sight)?;
        if rise != 0.0 {
            remarks.push(BracketRemark::crossing(&highest, sight));
        }
        if rise > 0.0 {
            highest = *sight;
        }
    }
    Ok(Choice {
        nearest: highest,
        standing: Standing::On,
        remarks,
        doubt: 0.0,
        reach: 0.0,
    })
}

/// Steps 4 and 5: the line on the other side, of those that fit.
///
/// For sections the nearest; for contours the nearest of another level, or of the same level
/// where there is no other.
pub(super) fn partner<'map>(
    view: &View<'map>,
    nearest: &Sight<'map>,
    fits: impl Fn(&LevelLine) -> bool,
) -> Result<Option<Sight<'map>>, IncomparableDatums> {
    let mut fitting = view.opposite(nearest).filter(|sight| fits(sight.line));
    if nearest.line.kind == LineKind::CrossSections {
        return Ok(fitting.next().copied());
    }
    let mut same = None;
    let mut chosen: Option<&Sight<'_>> = None;
    for sight in fitting {
        let rise = nearest.rise_to(sight)?;
        match chosen {
            Some(chosen) if sight.distance > SKIP_FACTOR * chosen.distance => break,
            _ if rise == 0.0 => {
                same.get_or_insert(sight);
            }
            None => chosen = Some(sight),
            Some(farther) => {
                if rise * sight.rise_to(farther)? > 0.0 {
                    chosen = Some(sight);
                }
            }
        }
    }
    Ok(chosen.or(same).copied())
}

/// Step 6: whether the nearest line stands above both the other and the one behind it, which
/// is no farther than the other.
fn is_crest(
    nearest: &Sight<'_>,
    other: &Sight<'_>,
    behind: Option<(Sight<'_>, f64)>,
) -> Result<bool, IncomparableDatums> {
    let Some((behind, distance)) = behind else {
        return Ok(false);
    };
    Ok(nearest.rise_to(other)? < 0.0
        && nearest.rise_to(&behind)? < 0.0
        && distance < nearest.distance + other.distance)
}

/// Step 6: whether the step from one contour to the other is out of proportion to the step
/// behind.
fn is_out_of_step(
    nearest: &Sight<'_>,
    other: &Sight<'_>,
    behind: Option<(Sight<'_>, f64)>,
) -> Result<bool, IncomparableDatums> {
    let Some((behind, _)) = behind.filter(|_| nearest.line.kind == LineKind::LevelLines) else {
        return Ok(false);
    };
    let step = nearest.rise_to(&behind)?.abs();
    Ok(step > 0.0 && nearest.rise_to(other)?.abs() > STEP_FACTOR * step)
}

/// Says so where the line behind and the other are both lower, or both higher, than the
/// nearest, all three being of one water: of one watercourse, or, where they have no names,
/// the line behind nearer than the other.
fn not_monotone(
    nearest: &Sight<'_>,
    other: &Sight<'_>,
    behind: Option<(Sight<'_>, f64)>,
) -> Result<Option<BracketRemark>, IncomparableDatums> {
    let is_own = |sight: &Sight<'_>| nearest.line.shares_watercourse(sight.line);
    let is_nameless = nearest.line.watercourse.is_none();
    let Some((behind, _)) = behind.filter(|(behind, gap)| {
        (is_own(other) && is_own(behind))
            || (is_nameless && *gap < nearest.distance + other.distance)
    }) else {
        return Ok(None);
    };
    let turns = nearest.rise_to(other)? * nearest.rise_to(&behind)? > 0.0;
    Ok(turns.then(|| BracketRemark::not_monotone(nearest)))
}

/// How far away something could still change the choice of `other`, metres.
fn bounds(nearest: &Sight<'_>, other: &Sight<'_>, behind: Option<(Sight<'_>, f64)>) -> f64 {
    let crest = 2.0 * nearest.distance + other.distance;
    if nearest.line.kind == LineKind::CrossSections {
        return crest;
    }
    // Another level may follow at any distance, and so may the line behind that tells what a
    // step is.
    let Some((_, gap)) = behind.filter(|_| !other.is_level_with(nearest)) else {
        return f64::INFINITY;
    };
    let bounds = [crest, SKIP_FACTOR * other.distance, nearest.distance + gap];
    bounds.into_iter().fold(0.0, f64::max)
}
