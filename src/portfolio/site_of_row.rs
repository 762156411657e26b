//! A row as a site with one opening: the threshold, or what the row states of an opening.

use super::row::{OpeningRow, Row};
use crate::quantity::{Elevation, Length, UnitSystem, VerticalDatum};
use crate::site::{
    Conditions, Location, Opening, Sill, Site, StatedUncertainty, SurveyedGrade, Threshold,
};
use crate::statement::Place;

/// The id of an opening that the row does not name.
const UNNAMED: &str = "threshold";

/// A site that is filled anew for each row, so that nothing is allocated a million times.
pub(super) fn empty() -> Option<Site> {
    Some(Site {
        name: String::new(),
        location: Location::from_degrees(0.0, 0.0).ok()?,
        threshold: Threshold::Stated(Elevation::new(Length::default(), VerticalDatum::Navd88)),
        units: UnitSystem::Si,
        threshold_place: Place::Option("row".into()),
        occupancy: None,
        footprint: None,
        grade: SurveyedGrade::default(),
        conditions: Conditions::default(),
        flood_levels: Vec::new(),
        uncertainty: StatedUncertainty::default(),
        datum_offsets: Vec::new(),
        rule: None,
        openings: vec![Opening::named(UNNAMED.to_owned())],
    })
}

/// Puts a row into the site; everything that a row can state is set, so that nothing of the
/// row before is left.
pub(super) fn fill(site: &mut Site, row: &Row<&OpeningRow>) {
    site.location = row.location;
    site.threshold = row.threshold;
    site.units = row.units;
    let Some(stated) = &row.opening else { return };
    site.name.clone_from(&stated.building);
    site.occupancy = stated.occupancy;
    let Some(opening) = site.openings.first_mut() else {
        return;
    };
    opening.id.clear();
    opening.id.push_str(match stated.opening.as_str() {
        "" => UNNAMED,
        named => named,
    });
    opening.width = stated.width;
    opening.height = stated.height;
    opening.sill = match stated.above_threshold {
        Some(height) => Sill::AboveThreshold(height),
        None => Sill::Threshold,
    };
    opening.reveal = stated.reveal;
    opening.face = stated.face;
    opening.wall = stated.wall;
}
