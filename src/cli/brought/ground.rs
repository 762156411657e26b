//! Where the terrain is asked for a site.

use std::f64::consts::SQRT_2;

use sillmark::hazard::{Part, ZoneMap};
use sillmark::level::shore_places;
use sillmark::quantity::{AnnualChance, Length, unit::meter};
use sillmark::site::{Footprint, Location, Site};

/// What decides where the ground is asked for.
pub(in crate::cli) struct GroundAsked<'a> {
    pub(in crate::cli) site: &'a Site,
    /// The zones, along whose edges the ground may be asked.
    pub(in crate::cli) zones: &'a [ZoneMap],
    pub(in crate::cli) event: AnnualChance,
    /// How far around a place the lowest ground is looked for.
    pub(in crate::cli) grade_radius: Length,
    /// How far a drawing of the surroundings may reach.
    pub(in crate::cli) drawn: Length,
}

/// How far around a point of a shore the ground is asked: the slope is taken over some metres, and
/// the shore moved by some to lie best on the terrain.
const AROUND_SHORE: f64 = 50.0;

impl GroundAsked<'_> {
    /// The places with their margins, on a terrain of such cells.
    pub(in crate::cli) fn places(&self, cell: Length) -> Vec<(Location, Length)> {
        let site = self.site;
        let corners = site.footprint.iter().flat_map(Footprint::corners);
        let building = corners.map(|corner| site.location.distance_to(*corner));
        let building = building.fold(self.grade_radius, Length::max);
        let openings = site.openings.iter().filter_map(|opening| opening.location);
        // The corners of the square that is drawn, in whatever direction the grid lies.
        let drawn = SQRT_2 * self.drawn;
        let mut places = vec![(site.location, 1.01 * building.max(drawn))];
        places.extend(openings.map(|place| (place, 1.01 * self.grade_radius)));
        let margin = Length::new::<meter>(AROUND_SHORE);
        let asked: Vec<Location> = places.iter().map(|(place, _)| *place).collect();
        for (place, zones) in asked.iter().flat_map(|place| {
            let zones = self.zones.iter();
            zones.map(move |zones| (*place, zones))
        }) {
            // A place without coordinates in the layer has no shore there.
            let shore = shore_places(zones, self.event, place, cell).unwrap_or_default();
            places.extend(shore.into_iter().map(|place| (place, margin)));
        }
        places
    }
}

/// How far around each of many places the ground may be asked: as far as zones are read, or as
/// the lowest ground is looked for.
pub(in crate::cli) fn around_each(
    (places, within): (Vec<Location>, Length),
    grade_radius: Length,
) -> Vec<(Location, Length)> {
    let margin = 1.01 * Part::reach().max(grade_radius) + within;
    places.into_iter().map(|place| (place, margin)).collect()
}
