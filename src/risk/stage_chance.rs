//! Levels of several floods as one curve: the level at any chance, the chance at any level.

use std::fmt;

use super::normal;
use crate::quantity::{AnnualChance, Elevation, IncomparableDatums, Length, unit::meter};

/// How levels and chances between two given ones are found, in words for a trail.
pub const INTERPOLATION: &str = "log-probability interpolation: elevation is linear in the standard normal deviate of the annual chance";

/// The level of one flood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChanceLevel {
    /// How often it is reached or passed.
    pub chance: AnnualChance,
    /// Its water-surface elevation.
    pub elevation: Elevation,
    /// Standard deviation of the elevation, where one is known.
    pub sd: Option<Length>,
}

/// Levels of several annual chances at one place, from the most frequent to the rarest.
///
/// Between two of them the elevation is linear in the standard normal deviate of the chance
/// (log-probability paper with an arithmetic stage axis). Another custom, linear in the
/// logarithm of the mean years between floods, differs by 0.05 to 0.12 ft on common curves;
/// so the method is named wherever a number of it is shown ([`INTERPOLATION`]). Beyond the
/// given chances there is no answer, only [`Beyond`].
///
/// ```
/// use sillmark::quantity::{parse_annual_chance, parse_elevation, unit::foot};
/// use sillmark::risk::{ChanceLevel, StageChance};
/// let level = |chance: &str, elevation: &str| -> Result<_, sillmark::quantity::QuantityError> {
///     Ok(ChanceLevel {
///         chance: parse_annual_chance(chance)?,
///         elevation: parse_elevation(elevation)?,
///         sd: None,
///     })
/// };
/// let curve = StageChance::new([
///     level("10%", "100.0 ft NAVD88")?,
///     level("2%", "103.2 ft NAVD88")?,
/// ])?;
/// let four = curve.level_at(parse_annual_chance("4%")?)?;
/// assert!((four.elevation.height().get::<foot>() - 101.944).abs() < 5e-4);
/// let beyond = curve.level_at(parse_annual_chance("1%")?).unwrap_err();
/// assert_eq!(beyond.to_string(), "rarer than 2 %");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct StageChance {
    /// In order, the first and the last of them once more beside them.
    levels: Vec<ChanceLevel>,
    most_frequent: ChanceLevel,
    rarest: ChanceLevel,
}

/// Levels that make no curve.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum StageChanceError {
    /// Not one level.
    #[error("no level of any annual chance is given; accepted: at least one")]
    Empty,
    /// Two levels whose heights cannot be compared.
    #[error(transparent)]
    Datums(#[from] IncomparableDatums),
    /// A chance with two levels.
    #[error("the {chance} annual chance flood has two levels; accepted: one level for each chance")]
    Twice {
        /// The chance.
        chance: AnnualChance,
    },
    /// A rarer flood that lies lower.
    #[error(
        "the {} annual chance level lies {by:.3} m below the {} one; accepted: a rarer flood at least as high as a more frequent one",
        rarer.chance,
        frequent.chance,
        by = fall.get::<meter>()
    )]
    Falls {
        /// The more frequent flood.
        frequent: Box<ChanceLevel>,
        /// The rarer flood.
        rarer: Box<ChanceLevel>,
        /// By how much it lies lower.
        fall: Length,
    },
}

/// What lies outside the given chances: nothing is extrapolated.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum Beyond {
    /// Rarer than the rarest of the given floods.
    #[error("rarer than {0}")]
    Rarer(AnnualChance),
    /// More frequent than the most frequent of the given floods.
    #[error("more frequent than {0}")]
    MoreFrequent(AnnualChance),
}

/// The floods that an answer was read from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ReadFrom {
    /// One of the given floods.
    Given(AnnualChance),
    /// Between two neighbours, by [`INTERPOLATION`].
    Between {
        /// The more frequent one.
        frequent: AnnualChance,
        /// The rarer one.
        rarer: AnnualChance,
    },
}

/// The level at a chance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelAtChance {
    /// The level.
    pub elevation: Elevation,
    /// Its standard deviation, where both neighbours have one.
    pub sd: Option<Length>,
    /// How it was read.
    pub from: ReadFrom,
}

/// The chance at a level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ChanceAtLevel {
    /// The water reaches or passes the level with this chance in any one year.
    Known {
        /// The chance.
        chance: AnnualChance,
        /// How it was read.
        from: ReadFrom,
    },
    /// Outside the given floods.
    Beyond(Beyond),
}

/// Levels nearer to each other than this are equal: digits of a conversion.
const SAME_METRES: f64 = 1e-6;

impl StageChance {
    /// Brings levels in any order into a curve. They have to stand on one datum, one for each
    /// chance, and a rarer flood may not lie below a more frequent one. Equal levels are fine:
    /// whole-foot levels often are.
    ///
    /// # Errors
    /// [`StageChanceError`] with the pair at fault.
    pub fn new(levels: impl IntoIterator<Item = ChanceLevel>) -> Result<Self, StageChanceError> {
        let mut levels: Vec<_> = levels.into_iter().collect();
        levels.sort_by(|one, two| {
            let chances = (two.chance.probability(), one.chance.probability());
            chances.0.total_cmp(&chances.1)
        });
        let (Some(&most_frequent), Some(&rarest)) = (levels.first(), levels.last()) else {
            return Err(StageChanceError::Empty);
        };
        // A lone level has to stand on one surface too.
        rarest.elevation.above(most_frequent.elevation)?;
        for (frequent, rarer) in levels.iter().zip(levels.iter().skip(1)) {
            if frequent.chance.same_event(rarer.chance) {
                return Err(StageChanceError::Twice {
                    chance: rarer.chance,
                });
            }
            let fall = frequent.elevation.above(rarer.elevation)?;
            if fall.get::<meter>() > SAME_METRES {
                return Err(StageChanceError::Falls {
                    frequent: Box::new(*frequent),
                    rarer: Box::new(*rarer),
                    fall,
                });
            }
        }
        Ok(Self {
            levels,
            most_frequent,
            rarest,
        })
    }

    /// The given levels, from the most frequent to the rarest.
    #[must_use]
    pub fn levels(&self) -> &[ChanceLevel] {
        &self.levels
    }

    /// The level that is reached or passed with a chance.
    ///
    /// The standard deviation is taken between those of the neighbours, as if their errors
    /// went together: they mostly share a model and a terrain, and apart they would be less.
    ///
    /// # Errors
    /// [`Beyond`] where the chance lies outside the given ones.
    pub fn level_at(&self, chance: AnnualChance) -> Result<LevelAtChance, Beyond> {
        if let Some(given) = self.levels.iter().find(|one| one.chance.same_event(chance)) {
            return Ok(LevelAtChance {
                elevation: given.elevation,
                sd: given.sd,
                from: ReadFrom::Given(given.chance),
            });
        }
        if chance.probability() > self.most_frequent.chance.probability() {
            return Err(Beyond::MoreFrequent(self.most_frequent.chance));
        }
        let mut pairs = self.pairs();
        let (frequent, rarer) = pairs
            .find(|(_, rarer)| rarer.chance.probability() < chance.probability())
            .ok_or(Beyond::Rarer(self.rarest.chance))?;
        let deviate = |chance: AnnualChance| normal::deviate(chance.probability());
        let (low, high) = (deviate(frequent.chance), deviate(rarer.chance));
        let share = (deviate(chance) - low) / (high - low);
        let rise = rarer.elevation.height() - frequent.elevation.height();
        Ok(LevelAtChance {
            elevation: frequent.elevation.raised(rise * share),
            sd: frequent
                .sd
                .zip(rarer.sd)
                .map(|(low, high)| low * (1.0 - share) + high * share),
            from: ReadFrom::Between {
                frequent: frequent.chance,
                rarer: rarer.chance,
            },
        })
    }

    /// The chance that the water reaches or passes a level in any one year.
    ///
    /// Where several given floods share the level, the most frequent of them reaches it.
    ///
    /// # Errors
    /// [`IncomparableDatums`] where the level stands on another datum than the curve.
    pub fn chance_at(&self, level: Elevation) -> Result<ChanceAtLevel, IncomparableDatums> {
        let mut below = None;
        for one in &self.levels {
            let above = one.elevation.above(level)?.get::<meter>();
            if above.abs() <= SAME_METRES {
                return Ok(ChanceAtLevel::Known {
                    chance: one.chance,
                    from: ReadFrom::Given(one.chance),
                });
            }
            if above > 0.0 {
                return Ok(below.map_or(
                    ChanceAtLevel::Beyond(Beyond::MoreFrequent(one.chance)),
                    |frequent| between(frequent, one, above),
                ));
            }
            below = Some(one);
        }
        Ok(ChanceAtLevel::Beyond(Beyond::Rarer(self.rarest.chance)))
    }

    fn pairs(&self) -> impl Iterator<Item = (&ChanceLevel, &ChanceLevel)> {
        self.levels.iter().zip(self.levels.iter().skip(1))
    }
}

/// The chance at a level that lies `above` metres below the rarer of two levels.
fn between(frequent: &ChanceLevel, rarer: &ChanceLevel, above: f64) -> ChanceAtLevel {
    let rise = (rarer.elevation.height() - frequent.elevation.height()).get::<meter>();
    let deviate = |level: &ChanceLevel| normal::deviate(level.chance.probability());
    let (low, high) = (deviate(frequent), deviate(rarer));
    let chance = normal::tail(high - (high - low) * (above / rise).clamp(0.0, 1.0));
    ChanceAtLevel::Known {
        // Between two chances lies a chance.
        chance: AnnualChance::new(chance).unwrap_or(rarer.chance),
        from: ReadFrom::Between {
            frequent: frequent.chance,
            rarer: rarer.chance,
        },
    }
}

impl fmt::Display for ReadFrom {
    /// Such as `between 10 % and 2 % by log-probability interpolation: …`.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Given(chance) => write!(formatter, "given for {chance}"),
            Self::Between { frequent, rarer } => {
                write!(
                    formatter,
                    "between {frequent} and {rarer} by {INTERPOLATION}"
                )
            }
        }
    }
}

impl fmt::Display for ChanceAtLevel {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Known { chance, .. } => chance.fmt(formatter),
            Self::Beyond(beyond) => beyond.fmt(formatter),
        }
    }
}
