//! The shifts between vertical datums that are known at a site.

use crate::quantity::{Elevation, Length, VerticalDatum};

/// The shifts onto the datum of an assessment that are known at its site. The review reads no
/// grid: whoever calls it does.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shifts {
    /// Those that are known.
    pub known: Vec<KnownShift>,
    /// Those that were looked for and are not, with the reason.
    pub unknown: Vec<UnknownShift>,
}

/// A shift between two datums at the site.
#[derive(Clone, Debug, PartialEq)]
pub struct KnownShift {
    /// The datum it starts from.
    pub from: VerticalDatum,
    /// The datum of the assessment.
    pub to: VerticalDatum,
    /// Height on `to` less height on `from`.
    pub shift: Length,
    /// Its standard deviation, where one is known.
    pub sd: Option<Length>,
    /// Grid or statement that it comes from.
    pub source: String,
}

/// A shift that is not known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownShift {
    /// The datum it would start from.
    pub from: VerticalDatum,
    /// Why it is not known, and what would give it.
    pub why: String,
}

/// An elevation of the proposal on the datum of the assessment.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Shifted {
    pub(super) elevation: Elevation,
    /// The shift that was applied, if the datums differ.
    pub(super) by: Option<KnownShift>,
}

impl Shifts {
    /// Puts an elevation onto a datum.
    ///
    /// # Errors
    /// What is missing, where the shift is not known.
    pub(super) fn convert(
        &self,
        elevation: Elevation,
        to: VerticalDatum,
    ) -> Result<Shifted, String> {
        let from = elevation.datum();
        if from == to && from.is_one_surface() {
            return Ok(Shifted {
                elevation,
                by: None,
            });
        }
        let known = self
            .known
            .iter()
            .find(|shift| (shift.from, shift.to) == (from, to));
        if let Some(shift) = known {
            return Ok(Shifted {
                elevation: Elevation::new(elevation.height() + shift.shift, to),
                by: Some(shift.clone()),
            });
        }
        let unknown = self.unknown.iter().find(|shift| shift.from == from);
        Err(unknown.map_or_else(
            || format!("the shift from {from} to {to} at the site is not known"),
            |shift| format!("the shift from {from} to {to}: {}", shift.why),
        ))
    }
}
