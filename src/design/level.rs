//! The design level: what a rule makes of the known flood levels.

use super::{Base, FloodEvent, Occupancy, Rule, StatedLevel};
use crate::quantity::{AnnualChance, Elevation, IncomparableDatums, Length};

/// The flood levels that a rule can start from.
#[derive(Clone, Copy, Debug)]
pub struct KnownLevels<'a> {
    /// Level of the assessed event.
    pub flood: BaseLevel,
    /// Levels of other events, as stated.
    pub stated: &'a [StatedLevel],
}

/// What is known of the assessed event at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BaseLevel {
    /// Its level.
    Known(Elevation),
    /// By the map, no flood with this annual chance or a greater one reaches the place: a term
    /// on such a flood drops out.
    NotReached(AnnualChance),
}

/// A design level and how it came about.
#[derive(Clone, Debug, PartialEq)]
pub struct DesignLevel {
    /// The level up to which openings are to be kept dry.
    pub elevation: Elevation,
    /// Design level less flood level; `None` where the assessed event does not reach the place.
    pub freeboard: Option<Length>,
    /// The base of the term that is highest.
    pub governing: Base,
    /// What the governing term adds.
    pub added: Length,
    /// Optional terms whose level nobody stated, so they were not compared.
    pub not_compared: Vec<Base>,
}

/// Why a rule gives no design level.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DesignGap {
    /// A level that the rule always compares with is not known.
    #[error("the rule also compares with the {base}, which nobody stated")]
    MissingLevel {
        /// The base that is missing.
        base: Base,
        /// The highest of the terms that are known; the design level is not lower.
        at_least: Option<Elevation>,
    },
    /// No term of the rule is about a flood that reaches the place.
    #[error("no flood that the rule is about reaches the place")]
    NotReached,
    /// The rule depends on the use of the building, which nobody stated.
    #[error("the rule depends on the use of the building, which is not stated")]
    MissingOccupancy,
    /// The levels stand on different datums.
    #[error(transparent)]
    Datums(#[from] IncomparableDatums),
}

/// Applies `rule`:
///
/// 1. leave out the terms that do not hold for the use of the building, and those on a flood
///    that the map says does not reach the place;
/// 2. add each remaining term's height to its level;
/// 3. take the highest.
///
/// # Errors
/// [`DesignGap`] where a level or the use that the rule needs is not known.
///
/// ```
/// use sillmark::design::{BaseLevel, KnownLevels, design_level, rules};
/// use sillmark::quantity::{parse_elevation, unit::foot};
/// let rules = rules()?;
/// let rule = rules.iter().find(|rule| rule.id == "us-nfip-floodproofing").unwrap();
/// let levels = KnownLevels { flood: BaseLevel::Known(parse_elevation("9 ft NAVD88")?), stated: &[] };
/// let design = design_level(rule, None, levels)?;
/// assert!((design.elevation.height().get::<foot>() - 10.0).abs() < 1e-12);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn design_level(
    rule: &Rule,
    occupancy: Option<Occupancy>,
    levels: KnownLevels<'_>,
) -> Result<DesignLevel, DesignGap> {
    let mut highest: Option<(Elevation, Base, Length)> = None;
    let mut missing = None;
    let mut not_compared = Vec::new();
    for term in &rule.terms {
        if !term
            .holds_for(occupancy)
            .ok_or(DesignGap::MissingOccupancy)?
        {
            continue;
        }
        match levels.of(term.base) {
            None if levels.rule_out(term.base) => {}
            Some(level) => {
                let candidate = level.raised(term.add);
                let higher = match highest {
                    Some((best, ..)) => candidate.above(best)? > Length::default(),
                    None => true,
                };
                if higher {
                    highest = Some((candidate, term.base, term.add));
                }
            }
            None if term.optional => not_compared.push(term.base),
            None => missing = Some(term.base),
        }
    }
    match (highest, missing) {
        (Some((elevation, governing, added)), None) => Ok(DesignLevel {
            elevation,
            freeboard: match levels.flood {
                BaseLevel::Known(flood) => Some(elevation.above(flood)?),
                BaseLevel::NotReached(_) => None,
            },
            governing,
            added,
            not_compared,
        }),
        (known, Some(base)) => Err(DesignGap::MissingLevel {
            base,
            at_least: known.map(|(elevation, ..)| elevation),
        }),
        (None, None) => Err(DesignGap::NotReached),
    }
}

impl KnownLevels<'_> {
    fn of(&self, base: Base) -> Option<Elevation> {
        match base {
            Base::FloodLevel => match self.flood {
                BaseLevel::Known(level) => Some(level),
                BaseLevel::NotReached(_) => None,
            },
            Base::Event(event) => self
                .stated
                .iter()
                .find(|level| level.event.same_event(event))
                .map(|level| level.elevation),
        }
    }

    /// Whether the map says that the base's flood does not reach the place.
    fn rule_out(&self, base: Base) -> bool {
        let BaseLevel::NotReached(limit) = self.flood else {
            return false;
        };
        match base {
            Base::FloodLevel => true,
            Base::Event(FloodEvent::Chance(chance)) => chance >= limit || chance.same_event(limit),
            Base::Event(FloodEvent::Record | FloodEvent::Community) => false,
        }
    }
}
