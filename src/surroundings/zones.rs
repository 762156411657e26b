//! Zones within the square.

use geo::bool_ops::FillRule;
use geo::{BooleanOps, BoundingRect, Coord, Intersects, MapCoords, MultiPolygon, Polygon, Rect};

use super::plane::Degrees;
use crate::assess::Assessment;
use crate::crs::{CrsError, LocalFrame};
use crate::hazard::{Zone, ZoneArea, ZoneClass, ZoneMap};
use crate::quantity::{Length, unit::meter};

/// A zone as far as it lies within the square.
#[derive(Clone, Debug, PartialEq)]
pub struct ZoneShape {
    /// The code as the layer writes it.
    pub code: String,
    /// The subtype as the layer writes it.
    pub subtype: Option<String>,
    /// Code and subtype in words.
    pub title: String,
    /// What it means.
    pub class: ZoneClass,
    /// Its layer, by the position among [`Surroundings::origins`](super::Surroundings::origins):
    /// layers of several files may have one name.
    pub origin: usize,
    /// The layer's name.
    pub layer: String,
    /// The feature's identifier.
    pub feature: String,
    /// The day from which it holds, as its record writes it.
    pub date: Option<String>,
    /// Whether it holds the site, or an opening that stands elsewhere.
    pub holds: bool,
    /// Whether it is the worst of those at the site, or at such an opening: it decides there.
    pub decides: bool,
    /// Metres east and north of the site, holes kept.
    pub area: MultiPolygon<f64>,
    /// The same in degrees of WGS 84, for a zone that holds a place of the building; empty for
    /// others.
    pub degrees: MultiPolygon<f64>,
}

/// The zones of all layers that reach into the square. A layer whose coordinates cannot express
/// the site has none.
pub(super) fn within(
    reach: f64,
    assessment: &Assessment<'_>,
    maps: &[ZoneMap],
) -> Result<Vec<ZoneShape>, CrsError> {
    let used = Used::of(assessment);
    let mut shapes = Vec::new();
    for (origin, map) in maps.iter().enumerate() {
        let frame = match map.frame(assessment.site.location) {
            Ok(frame) => frame,
            Err(CrsError::OutsideDomain { .. }) => continue,
            Err(error) => return Err(error),
        };
        let degrees = Degrees::from(map.crs())?;
        for (zone, area) in map.zones() {
            let area = cut(area, &frame, reach);
            if area.0.is_empty() {
                continue;
            }
            let holds = used.holds(zone);
            let in_degrees = if holds {
                degrees.of(&area.map_coords(|at| frame.at(at.x, at.y)))?
            } else {
                MultiPolygon(Vec::new())
            };
            shapes.push(ZoneShape {
                code: zone.code.clone(),
                subtype: zone.subtype.clone(),
                title: zone.title().to_string(),
                class: zone.class,
                origin,
                layer: zone.layer.clone(),
                feature: zone.feature.clone(),
                date: zone.date.clone(),
                holds,
                decides: used.decides(zone),
                area,
                degrees: in_degrees,
            });
        }
    }
    Ok(shapes)
}

/// The zones that hold the site and the openings that stand elsewhere.
struct Used<'a> {
    worst: Vec<&'a Zone>,
    others: Vec<&'a Zone>,
}

impl<'a> Used<'a> {
    fn of(assessment: &'a Assessment<'_>) -> Self {
        let own = assessment.openings.iter();
        let own = own.filter_map(|opening| opening.place.as_deref());
        let places = std::iter::once(&assessment.place).chain(own);
        let here: Vec<_> = places.filter_map(|place| place.zone.as_ref()).collect();
        Self {
            worst: here.iter().map(|here| here.worst).collect(),
            others: (here.iter().flat_map(|here| here.others.iter().copied())).collect(),
        }
    }

    fn decides(&self, zone: &Zone) -> bool {
        self.worst.iter().any(|used| std::ptr::eq(*used, zone))
    }

    fn holds(&self, zone: &Zone) -> bool {
        let other = self.others.iter().any(|used| std::ptr::eq(*used, zone));
        other || self.decides(zone)
    }
}

/// The area within the square, in metres about the site. Parts that lie beyond it are not
/// touched, so that the cost is that of the parts that reach into it.
fn cut(area: &ZoneArea, frame: &LocalFrame, reach: f64) -> MultiPolygon<f64> {
    let corner = Coord { x: reach, y: reach };
    let square = Rect::new(-corner, corner);
    let near = frame.box_around(Length::new::<meter>(reach));
    if !area.bounds().intersects(&near) {
        return MultiPolygon(Vec::new());
    }
    let parts = (0..area.part_count()).filter_map(|number| area.part(number));
    let parts: Vec<Polygon<f64>> = parts
        .map(|part| part.map_coords(|point| frame.metres(point)))
        .filter(|part| {
            let bounds = part.bounding_rect();
            bounds.is_some_and(|bounds| bounds.intersects(&square))
        })
        .collect();
    if parts.is_empty() {
        return MultiPolygon(parts);
    }
    // By turns, as points are found in a zone: parts of a careless layer overlap.
    let square = MultiPolygon(vec![square.to_polygon()]);
    MultiPolygon(parts).intersection_with_fill_rule(&square, FillRule::NonZero)
}
