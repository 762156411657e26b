//! How dangerous moving water is for people: those who fit or remove a barrier stand in it.

use std::fmt;

use crate::quantity::unit::{meter, meter_per_second};
use crate::quantity::{Impossible, Length, Velocity, finite, not_negative};
use crate::statement::{Choice, Citation, Confidence};

/// What the water may carry against people.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Debris {
    /// 1 where the water is deeper than 0.25 m or faster than 2 m/s, 0 elsewhere (seen).
    Conservative,
    /// By the land around (table from memory).
    From(LandUse),
    /// As stated.
    Stated(f64),
}

/// The land that debris comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LandUse {
    /// Pasture and arable land.
    Pasture,
    /// Woodland.
    Woodland,
    /// Built-up land.
    Urban,
}

impl Choice for LandUse {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("pasture", Self::Pasture),
        ("woodland", Self::Woodland),
        ("urban", Self::Urban),
    ];
}

/// The edition that classes are read from: they differ in where the highest class begins.
/// Their limits are from memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HazardEdition {
    /// Supplementary note to FD2320 and FD2321, May 2008: danger for all above 2.0.
    Note2008,
    /// FD2321, March 2006: danger for all above 2.5.
    Fd2321,
}

impl Choice for HazardEdition {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("note-2008", Self::Note2008), ("fd2321", Self::Fd2321)];
}

impl HazardEdition {
    /// The edition, which stands beside every class.
    #[must_use]
    pub fn citation(self) -> Citation {
        Citation {
            source: match self {
                Self::Note2008 => {
                    "Defra/Environment Agency supplementary note to FD2320 and FD2321, May 2008, class limits"
                }
                Self::Fd2321 => "FD2321/TR1, March 2006, class limits",
            }
            .into(),
            confidence: Confidence::FromMemory,
        }
    }
}

/// Whom the water endangers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HazardClass {
    /// Caution: below 0.75.
    Low,
    /// Some: children, the elderly, the infirm; from 0.75.
    Some,
    /// Most, the public at large; from 1.25.
    Most,
    /// All, the emergency services too; above the limit of the edition.
    All,
}

impl fmt::Display for HazardClass {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(match self {
            Self::Low => "low hazard",
            Self::Some => "danger for some",
            Self::Most => "danger for most",
            Self::All => "danger for all",
        })
    }
}

/// A hazard rating with its parts.
#[derive(Clone, Debug, PartialEq)]
pub struct HazardRating {
    /// d·(v + 0.5) + DF, with d in m and v in m/s.
    pub value: f64,
    /// The debris factor DF.
    pub debris_factor: f64,
    /// Where formula and factor stand.
    pub citation: Citation,
}

/// Depths and speeds at which the debris factor changes, in m and m/s.
const SHALLOW: f64 = 0.25;
const DEEP: f64 = 0.75;
const FAST: f64 = 2.0;

/// The hazard rating of water for people, HR = d·(v + 0.5) + DF.
///
/// Formula and conservative debris factor: Defra/Environment Agency supplementary note to
/// FD2320 and FD2321, May 2008, as quoted on a technical page. Without water there is no
/// rating above zero.
///
/// # Errors
/// [`Impossible`] for a depth, speed or stated factor that cannot be.
///
/// ```
/// use sillmark::quantity::unit::{Length, Velocity, meter, meter_per_second};
/// use sillmark::risk::{Debris, HazardClass, HazardEdition, hazard_rating};
/// let (depth, speed) = (Length::new::<meter>(0.5), Velocity::new::<meter_per_second>(1.0));
/// let rating = hazard_rating(depth, speed, Debris::Conservative)?;
/// assert!((rating.value - 1.75).abs() < 1e-12);
/// assert_eq!(rating.class(HazardEdition::Note2008), HazardClass::Most);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn hazard_rating(
    depth: Length,
    speed: Velocity,
    debris: Debris,
) -> Result<HazardRating, Impossible> {
    let (d, v) = (depth.get::<meter>(), speed.get::<meter_per_second>());
    not_negative("water depth", d, "m")?;
    not_negative("speed of the water", v, "m/s")?;
    if let Debris::Stated(factor) = debris {
        not_negative("debris factor", factor, "")?;
    }
    let debris_factor = if d > 0.0 { factor(d, v, debris) } else { 0.0 };
    let value = d * (v + 0.5) + debris_factor;
    finite("hazard rating", value, "")?;
    Ok(HazardRating {
        value,
        debris_factor,
        citation: citation(debris),
    })
}

fn factor(depth: f64, speed: f64, debris: Debris) -> f64 {
    let land = match debris {
        Debris::Stated(factor) => return factor,
        Debris::Conservative => {
            return if depth > SHALLOW || speed > FAST {
                1.0
            } else {
                0.0
            };
        }
        Debris::From(land) => land,
    };
    if depth > DEEP || speed > FAST {
        match land {
            LandUse::Pasture => 0.5,
            LandUse::Woodland | LandUse::Urban => 1.0,
        }
    } else if depth > SHALLOW {
        match land {
            LandUse::Pasture => 0.0,
            LandUse::Woodland => 0.5,
            LandUse::Urban => 1.0,
        }
    } else {
        0.0
    }
}

fn citation(debris: Debris) -> Citation {
    let (source, confidence) = match debris {
        Debris::Conservative => (
            "Defra/Environment Agency supplementary note, May 2008: HR = d·(v + 0.5) + DF, conservative DF, as quoted on a technical page",
            Confidence::Seen,
        ),
        Debris::From(_) => (
            "FD2320 table 3.1 and supplementary note, May 2008: HR = d·(v + 0.5) + DF, DF by land use",
            Confidence::FromMemory,
        ),
        Debris::Stated(_) => (
            "HR = d·(v + 0.5) + DF (Defra/Environment Agency supplementary note, May 2008), DF as stated",
            Confidence::Stated,
        ),
    };
    Citation {
        source: source.into(),
        confidence,
    }
}

impl HazardRating {
    /// The class by an edition, which has to be named beside it. A rating at the limit of two
    /// of the lower classes is in the more dangerous one; only above the highest limit are
    /// all in danger, as both editions have it.
    #[must_use]
    pub fn class(&self, edition: HazardEdition) -> HazardClass {
        let highest = match edition {
            HazardEdition::Note2008 => 2.0,
            HazardEdition::Fd2321 => 2.5,
        };
        if self.value > highest {
            HazardClass::All
        } else if self.value >= 1.25 {
            HazardClass::Most
        } else if self.value >= 0.75 {
            HazardClass::Some
        } else {
            HazardClass::Low
        }
    }
}
