//! Which parts of the edge of a zone are a shore.

use geo::{Contains, Distance, Euclidean, MultiPolygon, Point, Polygon};

use super::edge::{self, EdgePoint};
use crate::crs::LocalFrame;
use crate::hazard::{Zone, ZoneClass, ZoneMap};
use crate::quantity::AnnualChance;

/// The map around a place, and the water whose shore is looked for.
pub(super) struct Water<'map> {
    map: &'map ZoneMap,
    zones: Vec<(&'map Zone, &'map MultiPolygon<f64>)>,
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
        let mut parts: Vec<(usize, &Polygon<f64>)> = Vec::new();
        parts.extend(self.nearest_part(zone).map(|part| (zone, part)));
        let (mut shore, mut next, mut stretch) = (Vec::new(), 0, 0);
        while let Some((_, part)) = parts.get(next) {
            let mut points = Vec::new();
            stretch = edge::points(part, &self.frame, spacing, radius, stretch, &mut points);
            for point in points {
                let beside = self.frame.at(point.outside.x, point.outside.y);
                match self.across(Point::from(beside)) {
                    Across::Land => shore.push(point),
                    Across::Water(zone) => self.join(zone, Point::from(beside), &mut parts),
                    Across::NotSaid => {}
                }
            }
            next += 1;
        }
        shore.sort_by(|one, two| one.distance.total_cmp(&two.distance));
        shore
    }

    /// The part of a zone that holds the place, or lies nearest to it.
    fn nearest_part(&self, zone: usize) -> Option<&'map Polygon<f64>> {
        let place = Point::from(self.frame.origin());
        let (_, area) = self.zones.get(zone)?;
        let mut nearest = None;
        for part in *area {
            let distance = Euclidean.distance(&place, part);
            if nearest.is_none_or(|(known, _)| distance < known) {
                nearest = Some((distance, part));
            }
        }
        nearest.map(|(_, part)| part)
    }

    fn join(&self, zone: usize, beside: Point<f64>, parts: &mut Vec<(usize, &'map Polygon<f64>)>) {
        let Some((_, area)) = self.zones.get(zone) else {
            return;
        };
        let known = |part: &Polygon<f64>| {
            let mut parts = parts.iter();
            parts.any(|(number, other)| *number == zone && std::ptr::eq(*other, part))
        };
        let new = match area.0.as_slice() {
            [only] => Some(only).filter(|only| !known(only)),
            several => {
                let part = several.iter().find(|part| part.contains(&beside));
                part.filter(|part| !known(part))
            }
        };
        if let Some(part) = new {
            parts.push((zone, part));
        }
    }

    fn across(&self, beside: Point<f64>) -> Across {
        let mut across = if self.covers_land {
            Across::NotSaid
        } else {
            Across::Land
        };
        for number in self.map.holding(beside.0) {
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
pub(super) fn floods(class: ZoneClass) -> bool {
    class.is_inside() || matches!(class, ZoneClass::Rare | ZoneClass::Limited)
}
