//! An opening in a wall.

use std::fmt;

use super::{AnchorSetting, BraceSide, Location, Mount, SillGap, WallKind};
use crate::load::SoilGroup;
use crate::quantity::{Elevation, Length};
use crate::statement::{Choice, Place};

/// An opening that water could enter by.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Name, different for each opening of a building.
    pub id: String,
    /// What it is.
    pub kind: Option<OpeningKind>,
    /// Clear width; the length of the run where only that is stated. `None` for a threshold
    /// of which no opening is known: water has a height there, a barrier has no span.
    pub width: Option<Length>,
    /// Clear height, where a barrier could be too high for it.
    pub height: Option<Length>,
    /// Legs of a barrier that stands out from the wall, each to the middle of its corner
    /// posts; empty for a straight barrier across the opening.
    pub run: Vec<Length>,
    /// The lowest edge where water would enter.
    pub sill: Sill,
    /// Where the sill was stated; `None` where it was not.
    pub sill_place: Option<Place>,
    /// Depth of the reveal that an inside mount could use.
    pub reveal: Option<Length>,
    /// Flat wall at each side that an outside mount could use.
    pub face: Option<Length>,
    /// The mount that the user asks for.
    pub mount: Option<Mount>,
    /// The side on which a brace may stand.
    pub brace: Option<BraceSide>,
    /// The soil against it, where its sill lies below the ground.
    pub soil: Option<SoilGroup>,
    /// An open gap along the sill of its barrier.
    pub gap: Option<SillGap>,
    /// What the anchors under its base plates are set in, where that differs from the site's.
    pub floor: Option<AnchorSetting>,
    /// What the anchors up its jambs are set in, where that differs from the site's.
    pub jamb: Option<AnchorSetting>,
    /// The wall around it.
    pub wall: Option<WallKind>,
    /// Where it is, if not where the site is: a long building can reach into another zone.
    pub location: Option<Location>,
}

impl Opening {
    /// An opening of which nothing is stated but its name: its sill is the threshold.
    pub(crate) const fn named(id: String) -> Self {
        Self {
            id,
            kind: None,
            width: None,
            height: None,
            run: Vec::new(),
            sill: Sill::Threshold,
            sill_place: None,
            reveal: None,
            face: None,
            mount: None,
            brace: None,
            soil: None,
            gap: None,
            floor: None,
            jamb: None,
            wall: None,
            location: None,
        }
    }
}

/// How high a sill lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sill {
    /// Surveyed.
    Elevation(Elevation),
    /// Measured from the threshold; negative below it.
    AboveThreshold(Length),
    /// Nothing was stated: an opening's sill is then the building's threshold.
    Threshold,
    /// The user says that nobody has measured it.
    Unknown,
}

/// What an opening is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpeningKind {
    /// A door for people.
    Door,
    /// A garage door.
    Garage,
    /// A loading bay.
    Bay,
    /// A gate in a wall.
    Gate,
    /// A window.
    Window,
    /// A vent or an air brick.
    Vent,
    /// A hatch, such as a cellar's.
    Hatch,
    /// Anything else.
    Other,
}

impl Choice for OpeningKind {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("door", Self::Door),
        ("garage", Self::Garage),
        ("bay", Self::Bay),
        ("gate", Self::Gate),
        ("window", Self::Window),
        ("vent", Self::Vent),
        ("hatch", Self::Hatch),
        ("other", Self::Other),
    ];
}

impl fmt::Display for OpeningKind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(self.word())
    }
}
