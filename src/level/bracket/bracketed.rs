//! The level between lines, and how it came about.

use super::beyond::{extend, units_of};
use super::choose::{Choice, Standing};
use super::view::{Sight, View};
use super::{BracketRemark, LineRefusal, SHARE_OF_DIFFERENCE, uncertainty};
use crate::hazard::LevelLine;
use crate::quantity::{AnnualChance, Elevation, Length, UnitSystem, unit::meter};

/// A flood level from the lines around a place.
#[derive(Clone, Debug, PartialEq)]
pub struct Bracketed<'map> {
    /// The level.
    pub elevation: Elevation,
    /// Its standard deviation: the rounding of the lines and the interpolation, not the
    /// flood study itself.
    pub sd: Length,
    /// Annual chance of the event.
    pub annual_chance: AnnualChance,
    /// Where the place stands among the lines.
    pub position: Position<'map>,
    /// What was odd.
    pub remarks: Vec<BracketRemark>,
    units: UnitSystem,
}

/// Where a place stands among the lines.
#[derive(Clone, Debug, PartialEq)]
pub enum Position<'map> {
    /// On a line.
    OnLine(Neighbour<'map>),
    /// Between two lines.
    Between {
        /// The line with the higher level (the nearer one where they are equal).
        upstream: Neighbour<'map>,
        /// The line with the lower level.
        downstream: Neighbour<'map>,
    },
    /// Upstream of the last line, with the slope between the last two.
    AboveLast {
        /// The last line.
        last: Neighbour<'map>,
        /// The one behind it.
        behind: Neighbour<'map>,
    },
    /// Downstream of the last line, whose level is an upper bound.
    BelowLast {
        /// The last line.
        last: Neighbour<'map>,
        /// The one behind it.
        behind: Neighbour<'map>,
    },
}

impl<'map> Position<'map> {
    /// The lines that decide: one, or two.
    pub fn lines(&self) -> impl Iterator<Item = &Neighbour<'map>> {
        let (one, other) = match self {
            Self::OnLine(line) => (line, None),
            Self::Between {
                upstream: one,
                downstream: two,
            }
            | Self::AboveLast {
                last: one,
                behind: two,
            }
            | Self::BelowLast {
                last: one,
                behind: two,
            } => (one, Some(two)),
        };
        std::iter::once(one).chain(other)
    }
}

/// A line that a level was read from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neighbour<'map> {
    /// The line.
    pub line: &'map LevelLine,
    /// Its level.
    pub level: Elevation,
    /// The shortest way to it.
    pub distance: Length,
}

impl<'map> Neighbour<'map> {
    fn of(sight: &Sight<'map>) -> Self {
        Self {
            line: sight.line,
            level: sight.level,
            distance: Length::new::<meter>(sight.distance),
        }
    }
}

/// Steps 8 and 9 of the method.
pub(super) fn conclude<'map>(
    view: &View<'map>,
    choice: Choice<'map>,
) -> Result<Bracketed<'map>, LineRefusal> {
    let Choice {
        nearest,
        standing,
        mut remarks,
        doubt,
        ..
    } = choice;
    let near = Neighbour::of(&nearest);
    let rounding = uncertainty::rounding(view);
    let (rise, sd, position) = match standing {
        Standing::On => (0.0, rounding, Position::OnLine(near)),
        Standing::Between(other) => {
            let mut both = [&nearest, &other].into_iter();
            let blank = both.find_map(|sight| view.blank_before(sight));
            remarks.extend(blank.map(BracketRemark::without_level));
            let difference = nearest.rise_to(&other)?;
            let share = nearest.distance / (nearest.distance + other.distance);
            let far = Neighbour::of(&other);
            let (upstream, downstream) = if difference > 0.0 {
                (far, near)
            } else {
                (near, far)
            };
            (
                difference * share,
                uncertainty::between(rounding, difference, share)
                    .hypot(SHARE_OF_DIFFERENCE * (doubt - share * difference).max(0.0)),
                Position::Between {
                    upstream,
                    downstream,
                },
            )
        }
        Standing::Beyond(behind) => {
            let extension = extend(&nearest, behind)?;
            let (last, behind) = (near, Neighbour::of(&extension.behind));
            let position = if extension.is_upstream {
                Position::AboveLast { last, behind }
            } else {
                Position::BelowLast { last, behind }
            };
            (extension.rise, rounding.hypot(extension.sd), position)
        }
    };
    Ok(Bracketed {
        elevation: nearest.level.raised(Length::new::<meter>(rise)),
        sd: Length::new::<meter>(sd),
        annual_chance: nearest.line.annual_chance,
        position,
        remarks,
        units: units_of(&nearest),
    })
}

impl Bracketed<'_> {
    /// How the level was read, in words, with every remark.
    #[must_use]
    pub fn how(&self) -> String {
        let at = |neighbour: &Neighbour<'_>| {
            format!(
                "{} ({}, {} away)",
                neighbour.line.title(),
                self.units.height(neighbour.level.height()),
                self.units.distance(neighbour.distance)
            )
        };
        let read = match &self.position {
            Position::OnLine(line) => format!("on {}", at(line)),
            Position::Between {
                upstream,
                downstream,
            } => format!(
                "between {} and {}, in proportion to the distances",
                at(upstream),
                at(downstream)
            ),
            Position::AboveLast { last, behind } => format!(
                "upstream of the last line, {}, with the slope to {}",
                at(last),
                behind.line.title()
            ),
            Position::BelowLast { last, .. } => format!(
                "downstream of the last line, {}: its level is an upper bound",
                at(last)
            ),
        };
        let remarks = self.remarks.iter().map(ToString::to_string);
        let parts = std::iter::once(read).chain(remarks);
        let parts = parts.chain([uncertainty::SOURCE.to_owned()]);
        parts.collect::<Vec<_>>().join("; ")
    }

    /// Where the level stands: the records of its lines.
    #[must_use]
    pub fn reference(&self) -> String {
        let records = self.position.lines().map(|line| line.line.record());
        records.collect::<Vec<_>>().join("; ")
    }
}
