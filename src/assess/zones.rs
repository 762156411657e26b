//! Which zones hold a place, in the trail.

use super::Value;
use super::study::{Spot, Study};
use crate::hazard::ZonesHere;

impl Study<'_> {
    pub(super) fn trail_zones(&mut self, spot: Spot<'_>, here: &ZonesHere<'_>) {
        let no_maps = self.sources.zones.is_empty();
        self.trail.note(|trail| {
            let quantity = format!("flood zone{}", spot.whose);
            match here.zones.first() {
                Some(zone) => trail.add(
                    quantity,
                    Value::Words(zone.title().to_string()),
                    match here.zones.len() {
                        1 => "the polygon that holds the place".to_owned(),
                        count => format!("the worst of {count} polygons that hold the place"),
                    },
                    zone.record().as_ref(),
                ),
                None if no_maps => {
                    trail.add(quantity, Value::Unknown, "no flood zones were given", "");
                }
                None => trail.add(quantity, Value::Unknown, "no polygon holds the place", ""),
            }
        });
    }
}
