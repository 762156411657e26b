//! How high a sill lies, in the three ways that it can be stated.

use super::super::Sill;
use super::elevation_on;
use crate::quantity::{Elevation, Length, parse_signed_length, unit::meter};
use crate::statement::{Place, Stated, StatementError, Table};

/// No sill of one building lies higher above or deeper below its threshold than this.
const FARTHEST_SILL_METRES: f64 = 100.0;

pub(super) fn sill(
    table: &Table<'_, '_>,
    threshold: Elevation,
) -> Result<(Sill, Option<Place>), StatementError> {
    let surveyed = table.optional("sill")?;
    let above = table.optional("sill_above_threshold")?;
    let near = |stated: &Stated<'_>, above: Length| {
        let limit = Length::new::<meter>(FARTHEST_SILL_METRES);
        if (-limit..=limit).contains(&above) {
            return Ok(Some(stated.place().clone()));
        }
        Err(stated.refuse(
            "it is not a sill of the same building: the threshold lies too far above or below it",
            format!("a sill within {FARTHEST_SILL_METRES} m (328 ft) of the threshold's height"),
        ))
    };
    match (surveyed, above) {
        (Some(surveyed), Some(_)) => Err(surveyed.refuse(
            "both sill and sill_above_threshold are stated",
            "one of the two",
        )),
        (Some(surveyed), None) if surveyed.text().trim() == "unknown" => {
            Ok((Sill::Unknown, Some(surveyed.place().clone())))
        }
        (Some(surveyed), None) => {
            let sill = elevation_on(&surveyed, threshold.datum())?;
            let place = near(&surveyed, sill.height() - threshold.height())?;
            Ok((Sill::Elevation(sill), place))
        }
        (None, Some(above)) => {
            let height = above.read(parse_signed_length)?;
            let place = near(&above, height)?;
            Ok((Sill::AboveThreshold(height), place))
        }
        (None, None) => Ok((Sill::Threshold, None)),
    }
}
