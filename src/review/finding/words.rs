//! Findings in words: what would make the figures equal, never what somebody did.

use super::{DatumSlip, Finding, UnitSlip, Whose, word};
use crate::quantity::{Length, UnitSystem};
use crate::review::KnownShift;

impl Finding {
    /// One sentence without a full stop.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        let height = |length: &Length| units.height(*length);
        match self {
            Self::DatumShift { shift, slip } => shifted(shift, *slip, units),
            Self::Units { slip, figure } => format!(
                "equals ours if {}: {}",
                match slip {
                    UnitSlip::NumberIsMetres => "its number is one of metres",
                    UnitSlip::NumberIsFeet => "its number is one of feet",
                    UnitSlip::ToMetresTwice => {
                        "it was converted from feet to metres once too often"
                    }
                    UnitSlip::ToFeetTwice => "it was converted from metres to feet once too often",
                },
                figure.text(units)
            ),
            Self::FreeboardTwice { freeboard, whose } => format!(
                "equals {} if the freeboard of {} is counted twice",
                figures(*whose),
                height(freeboard)
            ),
            Self::FreeboardForgotten { freeboard } => format!(
                "equals ours if the freeboard of {} was left out",
                height(freeboard)
            ),
            Self::BaseLevelAsDesignLevel { level, whose } => format!(
                "equals {} flood level ({}): the base level may stand where the design level belongs",
                match whose {
                    Whose::Ours => "our",
                    Whose::Theirs => "its own",
                },
                units.elevation(*level)
            ),
            Self::DesignLevelAsFloodLevel { level } => format!(
                "equals our design level ({}): the freeboard may already be in it, and counts twice where it is added",
                units.elevation(*level)
            ),
            Self::FromTheGround {
                sill_above_ground,
                whose,
            } => format!(
                "equals {} if it is measured from the ground instead of the sill, which lies {} higher",
                figures(*whose),
                height(sill_above_ground)
            ),
            Self::LessOverTheSill {
                over_ground,
                over_sill,
            } => format!(
                "it is stated from the ground: of the {} over the ground {} are left over the sill",
                height(over_ground),
                height(over_sill)
            ),
            Self::Load { slip, figure } => {
                format!("equals {} if {}", figure.text(units), slip.words())
            }
            Self::WithinOurUncertainty { by, tolerance } => format!(
                "{} lower than ours, but within the ± {} that ours is known to: it cannot be rejected on that ground; the authority may still hold it to the mapped level",
                height(by),
                height(tolerance)
            ),
            Self::PerhapsAbove { by, tolerance } => format!(
                "its sill lies {} below the design level, less than the ± {} that this is known to: a survey may find it above",
                height(by),
                height(tolerance)
            ),
            Self::OtherOccupancy { theirs, ours } => format!(
                "it is for {} use, and the site file states {}",
                word(*theirs),
                word(*ours)
            ),
            Self::OtherWall { theirs, ours } => format!(
                "it takes the wall for {}, and the site file states {}; the latter is used",
                word(*theirs),
                word(*ours)
            ),
            Self::WavesLeftOut => {
                "it is a load of still water, and by the site file or the map waves break there: their load is greater".to_owned()
            }
            Self::NoSource => {
                "it does not say which study, map or letter its flood level is from".to_owned()
            }
            Self::NearestName { name } => format!("perhaps {name:?} is meant"),
            Self::NoBarrierProposed => {
                "it lies below the design level, and the proposal has no barrier for it".to_owned()
            }
        }
    }
}

fn shifted(shift: &KnownShift, slip: DatumSlip, units: UnitSystem) -> String {
    format!(
        "equals ours if the shift from {} to {} ({}, {}) was {}",
        shift.from,
        shift.to,
        signed(shift.shift, units),
        shift.source,
        match slip {
            DatumSlip::NotApplied => "not applied",
            DatumSlip::WrongWay => "applied the wrong way",
            DatumSlip::OnceTooOften => "applied once too often",
        }
    )
}

const fn figures(whose: Whose) -> &'static str {
    match whose {
        Whose::Ours => "ours",
        Whose::Theirs => "its own figures",
    }
}

fn signed(length: Length, units: UnitSystem) -> String {
    let sign = if length.value > 0.0 { "+" } else { "" };
    format!("{sign}{}", units.height(length))
}
