//! Fitting in time: how long it takes, against the warning.

use crate::quantity::unit::{Time, hour};
use crate::quantity::{Impossible, not_negative};

/// What is stated of the fitting of a barrier.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fitting {
    /// How many planks.
    pub planks: u32,
    /// Time for one plank, as the maker or a drill states it.
    pub time_a_plank: Option<Time>,
    /// How many posts.
    pub posts: u32,
    /// Time for one post.
    pub time_a_post: Option<Time>,
    /// How many parties work side by side; each has the people that the heaviest piece needs.
    pub parties: u32,
    /// Time between the warning and the water.
    pub warning: Option<Time>,
    /// Whether [`twelve_hours`] of warning are asked for.
    pub twelve_hour_rule: bool,
}

/// What is missing for an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FittingMissing {
    /// The time for one plank.
    TimeAPlank,
    /// The time for one post.
    TimeAPost,
    /// Anybody to do it.
    Parties,
    /// The time between the warning and the water.
    WarningTime,
}

/// Whether a barrier is up in time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum InTime {
    /// It is.
    Enough {
        /// Warning that is left over.
        spare: Time,
    },
    /// The fitting takes longer than the warning.
    TooShort {
        /// By how much.
        by: Time,
    },
    /// The fitting is done in time, but the warning is shorter than the rule for closures
    /// that people have to fit asks for.
    TwelveHourRule {
        /// How much warning is wanting.
        by: Time,
    },
    /// No answer.
    NotStated {
        /// What is missing.
        what: FittingMissing,
    },
}

/// The warning time that ASCE 24-14 asks for where people have to fit closures (from memory,
/// not seen).
#[must_use]
pub fn twelve_hours() -> Time {
    Time::new::<hour>(12.0)
}

impl Fitting {
    /// How long the fitting takes: each party fits its share of the posts and of the planks,
    /// rounded up to whole pieces. Fetching the pieces and cleaning the sill are not in it
    /// unless the stated times hold them.
    ///
    /// # Errors
    /// [`Impossible`] for a time that is negative or not finite.
    pub fn duration(&self) -> Result<Result<Time, FittingMissing>, Impossible> {
        for (what, time) in [
            ("time for a plank", self.time_a_plank),
            ("time for a post", self.time_a_post),
        ] {
            if let Some(time) = time {
                not_negative(what, time.value, "s")?;
            }
        }
        let share = |count: u32, time: Option<Time>, missing| match (count, time) {
            (0, _) => Ok(Time::default()),
            (_, None) => Err(missing),
            (_, Some(_)) if self.parties == 0 => Err(FittingMissing::Parties),
            (count, Some(time)) => Ok(time * f64::from(count.div_ceil(self.parties))),
        };
        Ok(
            share(self.planks, self.time_a_plank, FittingMissing::TimeAPlank).and_then(|planks| {
                let posts = share(self.posts, self.time_a_post, FittingMissing::TimeAPost)?;
                Ok(planks + posts)
            }),
        )
    }

    /// The fitting held against the warning.
    ///
    /// # Errors
    /// [`Impossible`] for a time that is negative or not finite.
    ///
    /// ```
    /// use sillmark::barrier::{Fitting, InTime};
    /// use sillmark::quantity::unit::{Time, hour, minute};
    /// let minutes = Time::new::<minute>;
    /// let fitting = Fitting {
    ///     planks: 12, time_a_plank: Some(minutes(5.0)),
    ///     posts: 2, time_a_post: Some(minutes(15.0)),
    ///     parties: 2, warning: Some(minutes(120.0)), twelve_hour_rule: false,
    /// };
    /// assert_eq!(fitting.in_time()?, InTime::Enough { spare: minutes(75.0) });
    /// # Ok::<(), sillmark::quantity::Impossible>(())
    /// ```
    pub fn in_time(&self) -> Result<InTime, Impossible> {
        if let Some(warning) = self.warning {
            not_negative("warning time", warning.value, "s")?;
        }
        let takes = match self.duration()? {
            Ok(takes) => takes,
            Err(what) => return Ok(InTime::NotStated { what }),
        };
        let Some(warning) = self.warning else {
            let what = FittingMissing::WarningTime;
            return Ok(InTime::NotStated { what });
        };
        Ok(if takes > warning {
            InTime::TooShort {
                by: takes - warning,
            }
        } else if self.twelve_hour_rule && warning < twelve_hours() {
            InTime::TwelveHourRule {
                by: twelve_hours() - warning,
            }
        } else {
            InTime::Enough {
                spare: warning - takes,
            }
        })
    }
}
