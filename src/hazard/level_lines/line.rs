//! One line of a layer.

use std::sync::Arc;

use super::{LineKind, LineRemark};
use crate::gis::Fetched;
use crate::quantity::{AnnualChance, Elevation, LengthUnit};
use crate::statement::printable;

/// A cross-section or flood-level line as its layer states it, with what could be made of it.
#[derive(Clone, Debug, PartialEq)]
pub struct LevelLine {
    /// What it is.
    pub kind: LineKind,
    /// The layer's name.
    pub layer: String,
    /// The feature's own identifier where the layer has one, else its number in the file.
    pub feature: String,
    /// What a reader calls it on its watercourse, such as the letter of a section.
    pub label: Option<String>,
    /// The river or stream.
    pub watercourse: Option<String>,
    /// Distance along the watercourse as the layer writes it.
    pub station: Option<String>,
    /// Water-surface elevation, where it is known with its datum and unit.
    pub level: Option<Elevation>,
    /// The unit that the level is written in; it was rounded in this unit.
    pub unit: Option<LengthUnit>,
    /// Annual chance of the event that the level belongs to.
    pub annual_chance: AnnualChance,
    /// The service that the line was fetched from; `None` where it was none.
    pub fetched: Option<Arc<Fetched>>,
    /// What was odd about the feature, or refused.
    pub remarks: Vec<LineRemark>,
}

impl LevelLine {
    /// The line in words: its label or identifier, and its watercourse where it has one.
    #[must_use]
    pub fn title(&self) -> String {
        let name = self.label.as_ref().unwrap_or(&self.feature);
        printable(&match &self.watercourse {
            Some(watercourse) => format!("{} {name} of {watercourse}", self.kind.singular()),
            None => format!("{} {name}", self.kind.singular()),
        })
    }

    /// Where the line stands, for the trail: layer and feature, and the service that it was
    /// fetched from.
    #[must_use]
    pub fn record(&self) -> String {
        let record = format!("{}, feature {}", self.layer, self.feature);
        printable(&match &self.fetched {
            Some(fetched) => format!("{record}, of {fetched}"),
            None => record,
        })
    }

    /// Whether both lines name the same watercourse; lines without a name share none.
    #[must_use]
    pub fn shares_watercourse(&self, other: &Self) -> bool {
        match (&self.watercourse, &other.watercourse) {
            (Some(one), Some(two)) => one.eq_ignore_ascii_case(two),
            _ => false,
        }
    }
}
