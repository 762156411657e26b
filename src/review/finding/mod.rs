//! What may explain a difference, and what to know of a point.

mod slip;
mod words;

pub use slip::{DatumSlip, LoadSlip, UnitSlip, Whose};
pub(super) use slip::{STILL_REFERENCE, WAVE_REFERENCE};

use super::{Figure, KnownShift};
use crate::design::Occupancy;
use crate::quantity::{Elevation, Length};
use crate::site::WallKind;
use crate::statement::Choice;

/// A possibility that fits the figures: several may fit one difference, and none is proof of
/// what somebody did.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// A shift between two datums, not applied or applied otherwise than it should be.
    DatumShift {
        /// The shift.
        shift: KnownShift,
        /// What happened to it.
        slip: DatumSlip,
    },
    /// Feet and metres.
    Units {
        /// What happened to them.
        slip: UnitSlip,
        /// The figure as it would be.
        figure: Figure,
    },
    /// The freeboard is in it twice.
    FreeboardTwice {
        /// The freeboard.
        freeboard: Length,
        /// Whose it is.
        whose: Whose,
    },
    /// The freeboard is not in it.
    FreeboardForgotten {
        /// The freeboard.
        freeboard: Length,
    },
    /// The flood level stands where the design level belongs.
    BaseLevelAsDesignLevel {
        /// The flood level.
        level: Elevation,
        /// Whose it is.
        whose: Whose,
    },
    /// The design level stands where the flood level belongs: freeboard that is added to it
    /// counts twice.
    DesignLevelAsFloodLevel {
        /// Our design level.
        level: Elevation,
    },
    /// The height is measured from the ground instead of the sill.
    FromTheGround {
        /// Height of the sill over the ground.
        sill_above_ground: Length,
        /// Whose sill and ground.
        whose: Whose,
    },
    /// The height is stated from the ground, and enough if it were from the sill.
    LessOverTheSill {
        /// The height as stated, over the ground.
        over_ground: Length,
        /// What is left of it over the sill.
        over_sill: Length,
    },
    /// A slip in the formula of a load gives the figure.
    Load {
        /// The slip.
        slip: LoadSlip,
        /// What it gives.
        figure: Figure,
    },
    /// It lies lower than ours, within what ours is uncertain by.
    WithinOurUncertainty {
        /// How much lower.
        by: Length,
        /// The tolerance that it lies within.
        tolerance: Length,
    },
    /// The sill of an opening that is left out lies below the design level by less than what
    /// both are uncertain by.
    PerhapsAbove {
        /// How far below.
        by: Length,
        /// The tolerance that it lies within.
        tolerance: Length,
    },
    /// It is for another use than the site's.
    OtherOccupancy {
        /// Theirs.
        theirs: Occupancy,
        /// Ours.
        ours: Occupancy,
    },
    /// The wall is another than the site's.
    OtherWall {
        /// Theirs.
        theirs: WallKind,
        /// Ours.
        ours: WallKind,
    },
    /// The load is of still water, and waves break at the place.
    WavesLeftOut,
    /// The proposal does not say where its flood level comes from.
    NoSource,
    /// Another name that may be meant.
    NearestName {
        /// The name.
        name: String,
    },
    /// The opening lies below the design level, and the proposal has no barrier for it.
    NoBarrierProposed,
}

impl Finding {
    /// Its code in results for programs.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::DatumShift { .. } => "datum-shift",
            Self::Units { .. } => "feet-and-metres",
            Self::FreeboardTwice { .. } => "freeboard-twice",
            Self::FreeboardForgotten { .. } => "freeboard-forgotten",
            Self::BaseLevelAsDesignLevel { .. } => "base-level-as-design-level",
            Self::DesignLevelAsFloodLevel { .. } => "design-level-as-flood-level",
            Self::FromTheGround { .. } => "measured-from-ground",
            Self::LessOverTheSill { .. } => "less-over-the-sill",
            Self::Load { .. } => "load-slip",
            Self::WithinOurUncertainty { .. } => "within-our-uncertainty",
            Self::PerhapsAbove { .. } => "perhaps-above",
            Self::OtherOccupancy { .. } => "other-occupancy",
            Self::OtherWall { .. } => "other-wall",
            Self::WavesLeftOut => "waves-left-out",
            Self::NoSource => "no-source",
            Self::NearestName { .. } => "nearest-name",
            Self::NoBarrierProposed => "no-barrier-proposed",
        }
    }

    /// Where what it rests on stands; empty where that is the figures alone.
    #[must_use]
    pub fn reference(&self) -> String {
        match self {
            Self::DatumShift { shift, .. } => shift.source.clone(),
            Self::Units { .. } => slip::FOOT_REFERENCE.to_owned(),
            Self::Load { slip, .. } => slip.reference().to_owned(),
            Self::WithinOurUncertainty { .. } | Self::PerhapsAbove { .. } => {
                "two standard deviations; sillmark catalog uncertainty".to_owned()
            }
            _ => String::new(),
        }
    }
}

/// The word of a use or of a wall, for a sentence.
fn word(choice: impl Choice) -> &'static str {
    choice.word()
}
