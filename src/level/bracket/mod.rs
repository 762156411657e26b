//! The flood level between cross-sections or flood-level lines.
//!
//! Between two lines the level is interpolated in a straight line (FEMA, *Guide to Flood
//! Insurance Rate Maps*, May 1988, p. 29). [`bracket`] finds the two lines:
//!
//! 1. The lines around the place are put into the tangent plane at the place, once. All that
//!    follows is plane geometry in metres.
//! 2. The *connector* of a line is the shortest way to it. The place *sees* a line where its
//!    connector crosses no other line that has a level.
//! 3. A place on a line has that line's level; where lines cross, the highest.
//! 4. The nearest line is one of the two. The other is the nearest one that is seen on the
//!    other side: the two connectors are more than a right angle apart.
//! 5. Flood-level lines are contours. Two of one level, seen from between them, are pieces of
//!    one contour (two branches above a confluence), so the next line of another level is
//!    looked for, and the common level holds where there is none. And a contour is passed over
//!    where one of a level between is seen up to [`SKIP_FACTOR`] times as far: in one water
//!    surface no contour can be skipped, so the nearer one is across dry land.
//! 6. Water runs through a line one way. Where the other line *and* the next line behind the
//!    nearest are both lower, the other is none of this water: it is set aside. So is a contour
//!    that is more than [`STEP_FACTOR`] steps away, a step being that to the contour behind.
//! 7. Lines of one watercourse go together, where they have names. The watercourse of the
//!    nearest line governs where it has lines on both sides, else the nearest other one that
//!    has, if its line is at most [`SKIP_FACTOR`] times as far; where the nearest line stands
//!    above that, the difference enters the standard deviation. A nearer line of another
//!    watercourse may refine the level within the range of the own two, never take it out of
//!    that range. Where no watercourse has lines on both sides, a line of another one may raise
//!    the level above that of the nearest line, never lower it.
//! 8. Levels are interpolated by the lengths of the connectors.
//! 9. Beyond the last line, see [`BEYOND_LIMIT_FEET`]: upstream the level rises on with the
//!    slope between the last two lines, downstream the last line's level holds as an upper
//!    bound; farther away there is no answer.
//!
//! The profile baselines of a study are not used: stationing along them was worse on the one
//! town where it could be compared (95 % within 0.84 ft against 0.14 ft).
//!
//! What the standard deviation holds is told at [`SHARE_OF_DIFFERENCE`].

mod beyond;
mod bracketed;
mod choose;
mod refusal;
mod remark;
#[cfg(test)]
mod tests;
mod uncertainty;
mod view;
mod watercourse;

pub use bracketed::{Bracketed, Neighbour, Position};
pub use refusal::LineRefusal;
pub use remark::BracketRemark;
pub use uncertainty::SHARE_OF_DIFFERENCE;

use crate::hazard::LevelLineMap;
use crate::site::Location;
use view::View;

/// A place nearer than this lies on a line, metres: layers are stored to about a centimetre.
pub const ON_LINE_METRES: f64 = 0.01;

/// How many times as far as another line a line may be and still bound the same water. A
/// judgement, no source.
pub const SKIP_FACTOR: f64 = 2.0;

/// How many times the step on one side of a contour the step on its other side may be. A
/// judgement, no source: contours are drawn at intervals of 1, 2, 5 or 10 ft, and the interval
/// changes with the slope.
pub const STEP_FACTOR: f64 = 5.0;

/// How far beyond the last line there is an answer, feet: upstream of a studied reach a level
/// may be extended by 500 ft at similar slope (FEMA 1995, cited in National Research Council,
/// *Mapping the Zone*, 2009, p. 107). The same limit downstream is a judgement, no source.
pub const BEYOND_LIMIT_FEET: f64 = 500.0;

/// The radius of the first search, metres; it is doubled until nothing farther away can
/// change the answer.
const FIRST_RADIUS: f64 = 250.0;

/// The flood level at a place from the lines around it; `None` where there is no line with a
/// level within [`LevelLineMap::SEARCH_LIMIT_METRES`].
///
/// # Errors
/// [`LineRefusal`] where the lines do not tell the level there, with the reason.
pub fn bracket(
    map: &LevelLineMap,
    location: Location,
) -> Result<Option<Bracketed<'_>>, LineRefusal> {
    let frame = map.frame(location)?;
    let mut radius = FIRST_RADIUS;
    loop {
        let view = View::new(map, &frame, radius);
        let last = radius >= LevelLineMap::SEARCH_LIMIT_METRES;
        match choose::choose(&view)? {
            None if last => return Ok(None),
            Some(choice) if last || choice.reach <= radius => {
                return bracketed::conclude(&view, choice).map(Some);
            }
            _ => radius = (2.0 * radius).min(LevelLineMap::SEARCH_LIMIT_METRES),
        }
    }
}
