//! Step 1: which zones hold a place.

use super::study::{Spot, Study};
use super::{AssessError, Value};
use crate::crs::CrsError;
use crate::hazard::ZonesHere;

impl<'a> Study<'a> {
    pub(super) fn zones(&mut self, spot: Spot<'_>) -> Result<ZonesHere<'a>, AssessError> {
        let maps = &self.sources.zones;
        let mut found = Vec::with_capacity(maps.len());
        for map in maps {
            match map.at(spot.location) {
                Ok(here) => found.push(here),
                // What a layer's coordinates cannot express, its polygons do not hold.
                Err(CrsError::OutsideDomain { .. }) => {}
                Err(error) => return Err(error.into()),
            }
        }
        let here = ZonesHere::join(found);
        let quantity = format!("flood zone{}", spot.whose);
        match here.zones.first() {
            Some(zone) => self.trail.add(
                quantity,
                Value::Words(zone.title().to_string()),
                match here.zones.len() {
                    1 => "the polygon that holds the place".to_owned(),
                    count => format!("the worst of {count} polygons that hold the place"),
                },
                zone.record().as_ref(),
            ),
            None if maps.is_empty() => {
                self.trail
                    .add(quantity, Value::Unknown, "no flood zones were given", "");
            }
            None => self
                .trail
                .add(quantity, Value::Unknown, "no polygon holds the place", ""),
        }
        Ok(here)
    }
}
