//! The building: its outline, and openings that stand elsewhere.

use geo::Coord;

use super::plane::Plane;
use crate::assess::Assessment;
use crate::crs::CrsError;
use crate::site::{Footprint, Site};

/// An opening with a place of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct OpeningPlace {
    /// Its position among the site's openings, from nothing.
    pub number: usize,
    /// Its name.
    pub id: String,
    /// Metres east and north of the site.
    pub at: Coord<f64>,
}

/// The openings that stand elsewhere than the site, in the site's order.
pub(super) fn places(
    assessment: &Assessment<'_>,
    plane: &Plane,
) -> Result<Vec<OpeningPlace>, CrsError> {
    let openings = assessment.site.openings.iter().enumerate();
    openings
        .filter_map(|(number, opening)| Some((number, opening, opening.location?)))
        .map(|(number, opening, place)| {
            Ok(OpeningPlace {
                number,
                id: opening.id.clone(),
                at: plane.metres(place)?,
            })
        })
        .collect()
}

/// The corners of the building.
pub(super) fn outline(site: &Site, plane: &Plane) -> Result<Vec<Coord<f64>>, CrsError> {
    let corners = site.footprint.iter().flat_map(Footprint::corners);
    corners.map(|corner| plane.metres(*corner)).collect()
}
