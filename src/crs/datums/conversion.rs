//! What a conversion gave, and how.

use super::proj_operations::Operation;
use crate::quantity::{Elevation, Length, unit::meter};

/// An elevation on another datum, with what was done to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Conversion {
    /// The elevation on the datum that was asked for.
    pub elevation: Elevation,
    /// How far its number moved: new height less old height.
    pub shift: Length,
    /// Standard deviation of the shift; `None` where neither the EPSG Dataset nor the user
    /// states one.
    ///
    /// The EPSG Dataset's accuracy of an operation is taken as one standard deviation. The
    /// dataset does not say which probability it means, but repeats what the publishers
    /// state, and these are one sigma: VERTCON 2 cm "at the one sigma level" (National
    /// Geodetic Survey, VERTCON; EPSG 7970: 0.02 m), OSGM15 8 mm root mean square in
    /// mainland Britain (Ordnance Survey; EPSG 7711: 0.008 m; both from memory but for the
    /// dataset). Where several steps follow each other PROJ adds their accuracies, which is
    /// more than their root sum square.
    pub standard_deviation: Option<Length>,
    /// What was applied, for the trail.
    pub how: String,
    /// Where it comes from.
    pub reference: String,
    /// Where a stated offset was used although grids are here too, and the two differ by
    /// more than twice their combined standard deviation: stated shift less the grids' shift.
    pub grid_differs: Option<Length>,
}

impl Conversion {
    /// The elevation as it was: it stands on the datum that was asked for.
    pub(super) fn none(elevation: Elevation) -> Self {
        Self {
            elevation,
            shift: Length::new::<meter>(0.0),
            standard_deviation: Some(Length::new::<meter>(0.0)),
            how: "already on the datum asked for".to_owned(),
            reference: "no conversion".to_owned(),
            grid_differs: None,
        }
    }

    /// The outcome of an operation of PROJ; `better` are files by which another one would
    /// have been more accurate.
    pub(super) fn by_operation(
        elevation: Elevation,
        shift: Length,
        operation: &Operation,
        better: &[String],
    ) -> Self {
        let accuracy = operation.accuracy;
        let files: Vec<&str> = operation
            .grids
            .iter()
            .map(|grid| grid.name.as_str())
            .collect();
        let by = if files.is_empty() {
            "by PROJ without a grid: ".to_owned()
        } else {
            format!("by PROJ with {}: ", files.join(", "))
        };
        let better = if better.is_empty() {
            String::new()
        } else {
            format!("; more accurate with {}, not here", better.join(", "))
        };
        let stated = accuracy.map_or_else(
            || "no accuracy stated".to_owned(),
            |accuracy| format!("accuracy {accuracy} m"),
        );
        Self {
            elevation,
            shift,
            standard_deviation: accuracy.map(Length::new::<meter>),
            how: format!("{by}{}{better}", operation.name),
            reference: format!("EPSG Dataset, {}, {stated}", operation.name),
            grid_differs: None,
        }
    }
}
