//! Which parts of the edge of a zone are a shore.

use geo::{Coord, Distance, Euclidean, Point};

use super::edge::{self, EdgePoint};
use crate::crs::LocalFrame;
use crate::hazard::{Zone, ZoneArea, ZoneClass, ZoneMap};
use crate::quantity::AnnualChance;

/// The map around a place, and the water whose shore is looked for.
pub(super) struct Water<'map> {
    map: &'map ZoneMap,
    zones: Vec<(&'map Zone, &'map ZoneArea)>,
    frame: LocalFrame,
    annual_chance: AnnualChance,
    /// Whether the map names the land outside its floods: then a gap in it is not land.
    covers_land: bool,
}

/// What lies across an edge.
enum Across {
    /// Land: the edge is a shore.
    Land,
    /// The same water in another zone.
    Water(usize),
    /// Something that the map does not say.
    NotSaid,
}

impl<'map> Water<'map> {
    pub(super) fn new(map: &'map ZoneMap, frame: LocalFrame, annual_chance: AnnualChance) -> Self {
        let zones: Vec<_> = map.zones().collect();
        let covers_land = zones
            .iter()
            .any(|(zone, _)| matches!(zone.class, ZoneClass::Minimal | ZoneClass::Unspecified));
        Self {
            map,
            zones,
            frame,
            annual_chance,
            covers_land,
        }
    }

    /// The points of the shore of the water at the place, the nearest first.
    ///
    /// It is one water over all zones of the event that touch: their common edges are not
    /// shores, and the shore goes on along the neighbour.
    pub(super) fn shore(&self, zone: usize, spacing: f64, radius: f64) -> Vec<EdgePoint> {
        // Each by the zone's number and its own within the zone.
        let mut parts: Vec<(usize, usize)> = Vec::new();
        parts.extend(self.nearest_part(zone).map(|part| (zone, part)));
        let (mut shore, mut next, mut stretch) = (Vec::new(), 0, 0);
        while let Some((zone, part)) = parts.get(next) {
            let mut points = Vec::new();
            if let Some(part) = self.zones.get(*zone).and_then(|(_, area)| area.part(*part)) {
                stretch = edge::points(&part, &self.frame, spacing, radius, stretch, &mut points);
            }
            for point in points {
                let beside = self.frame.at(point.outside.x, point.outside.y);
                match self.across(beside) {
                    Across::Land => shore.push(point),
                    Across::Water(zone) => self.join(zone, beside, &mut parts),
                    Across::NotSaid => {}
                }
            }
            next += 1;
        }
        shore.sort_by(|one, two| one.distance.total_cmp(&two.distance));
        shore
    }

    /// The part of a zone that holds the place, or lies nearest to it.
    fn nearest_part(&self, zone: usize) -> Option<usize> {
        let place = Point::from(self.frame.origin());
        let (_, area) = self.zones.get(zone)?;
        let mut nearest = None;
        for number in 0..area.part_count() {
            let distance = Euclidean.distance(&place, &area.part(number)?);
            if nearest.is_none_or(|(known, _)| distance < known) {
                nearest = Some((distance, number));
            }
        }
        nearest.map(|(_, number)| number)
    }

    fn join(&self, zone: usize, beside: Coord<f64>, parts: &mut Vec<(usize, usize)>) {
        let Some((_, area)) = self.zones.get(zone) else {
            return;
        };
        let part = match area.part_count() {
            1 => Some(0),
            several => (0..several).find(|part| area.part_holds(*part, beside)),
        };
        if let Some(part) = part.filter(|part| !parts.contains(&(zone, *part))) {
            parts.push((zone, part));
        }
    }

    fn across(&self, beside: Coord<f64>) -> Across {
        let mut across = if self.covers_land {
            Across::NotSaid
        } else {
            Across::Land
        };
        for number in self.map.holding(beside) {
            let Some((zone, _)) = self.zones.get(number) else {
                continue;
            };
            match zone.class {
                ZoneClass::BehindLevee | ZoneClass::Unknown => return Across::NotSaid,
                // Shallow water that the map leaves out: the edge of the zone is no shore.
                ZoneClass::Limited if self.is_as_frequent(zone) => return Across::NotSaid,
                _ if self.is_as_frequent(zone) && floods(zone.class) => {
                    return Across::Water(number);
                }
                _ => across = Across::Land,
            }
        }
        across
    }

    fn is_as_frequent(&self, zone: &Zone) -> bool {
        zone.annual_chance >= self.annual_chance
            || zone.annual_chance.same_event(self.annual_chance)
    }
}

/// Whether a zone of this class is under the water of its event.
pub(in crate::level) fn floods(class: ZoneClass) -> bool {
    class.is_inside() || matches!(class, ZoneClass::Rare | ZoneClass::Limited)
}
