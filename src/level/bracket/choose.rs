//! Which lines bound the water at a place.

use super::view::{Sight, View};
use super::{BracketRemark, ON_LINE_METRES, SKIP_FACTOR, STEP_FACTOR};
use crate::hazard::LineKind;
use crate::quantity::IncomparableDatums;

/// Where the place stands among the lines, and what was set aside on the way.
pub(super) struct Choice<'map> {
    pub(super) nearest: Sight<'map>,
    pub(super) standing: Standing<'map>,
    pub(super) remarks: Vec<BracketRemark>,
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
        return on_line(view).map(Some);
    }
    let mut remarks = Vec::new();
    let behind = view.behind(&nearest);
    let other = match nearest.line.kind {
        LineKind::LevelLines => next_contour(view, &nearest)?,
        LineKind::CrossSections => view.opposite(&nearest).next(),
    };
    let mut chosen = other.copied();
    let mut searched_all = false;
    if let Some(other) = other
        && !nearest.line.shares_watercourse(other.line)
    {
        if is_crest(&nearest, other, behind)? || is_out_of_step(&nearest, other, behind)? {
            remarks.push(BracketRemark::across_land(&nearest, other));
            chosen = None;
        }
        if nearest.line.watercourse.is_some() {
            let own = view
                .opposite(&nearest)
                .find(|sight| nearest.line.shares_watercourse(sight.line));
            searched_all = own.is_none();
            if let Some(kept) = chosen {
                if may_refine(&nearest, &kept, own)? {
                    remarks.push(BracketRemark::between_watercourses(&nearest, other));
                } else {
                    remarks.push(BracketRemark::other_watercourse(&nearest, other));
                    chosen = None;
                }
            }
            chosen = chosen.or(own.copied());
        }
    }
    let standing = match chosen {
        Some(other) => Standing::Between(other),
        None => Standing::Beyond(behind),
    };
    let reach = match (&standing, searched_all) {
        (Standing::Between(other), false) => bounds(&nearest, other)?,
        _ => f64::INFINITY,
    };
    if let (Standing::Between(other), Some((behind, _))) = (&standing, behind)
        && nearest.rise_to(other)? * nearest.rise_to(&behind)? > 0.0
    {
        remarks.push(BracketRemark::not_monotone(&nearest));
    }
    Ok(Some(Choice {
        nearest,
        standing,
        remarks,
        reach,
    }))
}

/// Step 3.
fn on_line<'map>(view: &View<'map>) -> Result<Choice<'map>, IncomparableDatums> {
    let mut on = view
        .sights
        .iter()
        .take_while(|sight| sight.distance <= ON_LINE_METRES);
    let mut highest = *on.next().unwrap_or(&view.sights[0]);
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
        reach: 0.0,
    })
}

/// Step 5: the nearest contour of another level on the other side, or the nearest of the same
/// level where there is no other.
fn next_contour<'view, 'map>(
    view: &'view View<'map>,
    nearest: &'view Sight<'map>,
) -> Result<Option<&'view Sight<'map>>, IncomparableDatums> {
    let mut same = None;
    let mut chosen: Option<&Sight<'_>> = None;
    for sight in view.opposite(nearest) {
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
    Ok(chosen.or(same))
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

/// Step 7: whether a line of another watercourse may take part.
fn may_refine(
    nearest: &Sight<'_>,
    other: &Sight<'_>,
    own: Option<&Sight<'_>>,
) -> Result<bool, IncomparableDatums> {
    let rise = nearest.rise_to(other)?;
    let Some(own) = own else {
        return Ok(rise >= 0.0);
    };
    let share = nearest.distance / (nearest.distance + other.distance);
    let range = nearest.rise_to(own)?;
    Ok((range.min(0.0)..=range.max(0.0)).contains(&(share * rise)))
}

/// How far away something could still change the choice of `other`.
fn bounds(nearest: &Sight<'_>, other: &Sight<'_>) -> Result<f64, IncomparableDatums> {
    Ok(match nearest.line.kind {
        // Another level may follow at any distance.
        LineKind::LevelLines if nearest.rise_to(other)? == 0.0 => f64::INFINITY,
        LineKind::LevelLines => {
            (SKIP_FACTOR * other.distance).max(2.0 * nearest.distance + other.distance)
        }
        LineKind::CrossSections => 2.0 * nearest.distance + other.distance,
    })
}
