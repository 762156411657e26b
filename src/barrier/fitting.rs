//! Fitting in time: how long it takes, against the warning.

use crate::quantity::unit::{Time, hour};
use crate::quantity::{Impossible, not_negative};
use crate::statement::{Citation, Confidence};

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
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum FittingMissing {
    /// The time for one plank.
    #[error("the time to fit a plank is not stated")]
    TimeAPlank,
    /// The time for one post.
    #[error("the time to fit a post is not stated")]
    TimeAPost,
    /// Anybody to do it.
    #[error("no party of fitters is stated")]
    Parties,
    /// The time between the warning and the water.
    #[error("the time between the warning and the water is not stated")]
    WarningTime,
}

/// Why there is no duration.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum FittingError {
    /// A time that cannot be.
    #[error(transparent)]
    Impossible(#[from] Impossible),
    /// Something is missing.
    #[error("{0}; accepted: a time such as \"10 min\", one party or more")]
    NotStated(FittingMissing),
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

/// Where the twelve hours stand.
#[must_use]
pub fn twelve_hour_citation() -> Citation {
    Citation {
        source: "ASCE 24-14, dry floodproofing that depends on human intervention: at least 12 hours of warning".into(),
        confidence: Confidence::FromMemory,
    }
}

impl Fitting {
    /// How long the fitting takes: each party fits its share of the posts and of the planks,
    /// rounded up to whole pieces. Fetching the pieces and cleaning the sill are not in it
    /// unless the stated times hold them.
    ///
    /// # Errors
    /// [`FittingError`] for a time that cannot be or is not stated.
    pub fn duration(&self) -> Result<Time, FittingError> {
        use FittingMissing::{Parties, TimeAPlank, TimeAPost};
        let planks = self.share(
            "time for a plank",
            self.planks,
            self.time_a_plank,
            TimeAPlank,
        );
        let posts = self.share("time for a post", self.posts, self.time_a_post, TimeAPost);
        let takes: Time = planks? + posts?;
        not_negative("duration of the fitting", takes.value, "s")?;
        if self.planks.max(self.posts) > 0 && self.parties == 0 {
            return Err(FittingError::NotStated(Parties));
        }
        Ok(takes)
    }

    fn share(
        &self,
        what: &'static str,
        count: u32,
        time: Option<Time>,
        missing: FittingMissing,
    ) -> Result<Time, FittingError> {
        match time {
            Some(time) => {
                not_negative(what, time.value, "s")?;
                Ok(time * f64::from(count.div_ceil(self.parties.max(1))))
            }
            None if count == 0 => Ok(Time::default()),
            None => Err(FittingError::NotStated(missing)),
        }
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
        let takes = match self.duration() {
            Ok(takes) => takes,
            Err(FittingError::NotStated(what)) => return Ok(InTime::NotStated { what }),
            Err(FittingError::Impossible(error)) => return Err(error),
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
