//! What every step of an assessment needs at hand.

use super::{AssessError, Method, Sources, Trail, Value};
use crate::quantity::Elevation;
use crate::site::{Location, Site};

/// One assessment under way.
pub(super) struct Study<'a> {
    pub(super) site: &'a Site,
    pub(super) sources: &'a Sources,
    pub(super) method: &'a Method,
    pub(super) trail: Trail,
    /// The threshold, once the ground under it is known.
    pub(super) threshold: Option<Elevation>,
}

/// A place under study: where it is, and how the trail names it.
#[derive(Clone, Copy)]
pub(super) struct Spot<'a> {
    pub(super) location: Location,
    /// Empty for the site; ` at "front door"` for an opening that stands elsewhere.
    pub(super) whose: &'a str,
}

impl Study<'_> {
    /// Whether a place is that of the building itself, where its surveyed grades hold.
    pub(super) fn is_at_site(&self, spot: Spot<'_>) -> bool {
        spot.location == self.site.location
    }

    /// An elevation on the datum of the threshold, converted where it stands on another.
    ///
    /// # Errors
    /// [`AssessError::Datum`] where it cannot be converted: never a shift of nothing.
    pub(super) fn on_threshold_datum(
        &mut self,
        elevation: Elevation,
        spot: Spot<'_>,
        what: &dyn Fn() -> String,
    ) -> Result<Elevation, AssessError> {
        let datum = self.site.threshold.datum();
        if elevation.datum() == datum {
            return Ok(elevation);
        }
        match self.sources.datums.convert(elevation, datum, spot.location) {
            Ok(conversion) => {
                self.trail.note(|trail| {
                    trail.add(
                        format!(
                            "shift of {}{} from {} to {datum}",
                            what(),
                            spot.whose,
                            elevation.datum()
                        ),
                        Value::Length(conversion.shift),
                        conversion.how,
                        conversion.reference,
                    );
                });
                Ok(conversion.elevation)
            }
            Err(error) => Err(AssessError::other_datum(
                self.site,
                &what(),
                elevation,
                error,
            )),
        }
    }
}
