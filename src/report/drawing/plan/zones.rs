//! The zones: texture and edge by what they mean, and their codes.

use geo::{Contains, Coord, InteriorPoint, LineString, MultiPolygon, Point as Place, Polygon};

use super::{LABEL, Map};
use crate::hazard::ZoneClass;
use crate::report::drawing::clear::Clearing;
use crate::report::drawing::lettering::fitted;
use crate::report::drawing::sheet::{Anchor, Point, Sheet};
use crate::report::drawing::texture::Texture;
use crate::surroundings::{Surroundings, ZoneShape};

/// Points along a side of the lattice that is searched for room for a label.
const LATTICE: i32 = 14;

/// How near to the side of the square an edge lies along it, metres.
const RIM: f64 = 0.01;

/// The texture of a class; `None` for what lies outside every mapped flood.
pub(super) const fn texture(class: ZoneClass) -> Option<Texture> {
    Some(match class {
        ZoneClass::Minimal | ZoneClass::Unspecified => return None,
        ZoneClass::Rare => Texture::DotsFar,
        ZoneClass::Limited => Texture::Dots,
        ZoneClass::BehindLevee => Texture::Upright,
        ZoneClass::Unknown => Texture::Plus,
        ZoneClass::Approximate => Texture::Falling,
        ZoneClass::SheetFlow => Texture::Level,
        ZoneClass::Detailed => Texture::Rising,
        ZoneClass::Floodway => Texture::RisingDense,
        ZoneClass::CoastalWave => Texture::Crossed,
    })
}

/// What a class means, in as few words as a legend has room for.
pub(super) const fn meaning(class: ZoneClass) -> &'static str {
    match class {
        ZoneClass::Minimal => "outside",
        ZoneClass::Unspecified => "outside, or rare",
        ZoneClass::Rare => "a rarer flood",
        ZoneClass::Limited => "limited flood",
        ZoneClass::BehindLevee => "behind a levee",
        ZoneClass::Unknown => "not known",
        ZoneClass::Approximate => "flood, roughly",
        ZoneClass::SheetFlow => "shallow flow",
        ZoneClass::Detailed => "flood, studied",
        ZoneClass::Floodway => "floodway",
        ZoneClass::CoastalWave => "coastal waves",
    }
}

/// What a zone is called on the map.
pub(super) fn name(zone: &ZoneShape) -> &str {
    if zone.code.is_empty() {
        "no code"
    } else {
        &zone.code
    }
}

pub(super) fn edge(zone: &ZoneShape) -> &'static str {
    if zone.decides {
        "zone-edge-here"
    } else if zone.class.is_inside() {
        "zone-edge"
    } else {
        "zone-edge-mild"
    }
}

pub(super) fn draw(sheet: &mut Sheet, map: Map, surroundings: &Surroundings) {
    let rings: Vec<(&ZoneShape, Vec<Vec<Point>>)> = (surroundings.zones.iter())
        .map(|zone| (zone, rings(map, &zone.area)))
        .collect();
    for (zone, rings) in &rings {
        let parts: Vec<(&[Point], bool)> = rings.iter().map(|ring| (&ring[..], true)).collect();
        if zone.class.is_inside() {
            sheet.path("zone-tint", &parts);
        }
        if let Some(texture) = texture(zone.class) {
            sheet.textured("zone-texture", texture, &parts);
        }
    }
    // The edge of the zone that decides lies over that of its neighbours.
    let mut by_weight: Vec<_> = rings.iter().collect();
    by_weight.sort_by_key(|(zone, _)| (zone.decides, zone.class));
    for (zone, _) in by_weight {
        let lines = edges(&zone.area, map.reach);
        let lines: Vec<Vec<Point>> = lines.iter().map(|line| map.points(line)).collect();
        let parts: Vec<(&[Point], bool)> = lines.iter().map(|line| (&line[..], false)).collect();
        sheet.path(edge(zone), &parts);
    }
}

/// The edges of an area without those along which it was cut off at the square.
fn edges(area: &MultiPolygon<f64>, reach: f64) -> Vec<Vec<Coord<f64>>> {
    let on_rim = |one: f64, other: f64| one.abs() > reach - RIM && (one - other).abs() < RIM;
    let is_cut =
        |start: Coord<f64>, end: Coord<f64>| on_rim(start.x, end.x) || on_rim(start.y, end.y);
    let mut lines = Vec::new();
    for ring in area.iter().flat_map(rings_of) {
        let mut open: Vec<Coord<f64>> = Vec::new();
        for piece in ring.lines() {
            if is_cut(piece.start, piece.end) {
                lines.push(std::mem::take(&mut open));
                continue;
            }
            if open.is_empty() {
                open.push(piece.start);
            }
            open.push(piece.end);
        }
        lines.push(open);
    }
    lines.retain(|line| !line.is_empty());
    lines
}

fn rings_of(polygon: &Polygon<f64>) -> impl Iterator<Item = &LineString<f64>> {
    std::iter::once(polygon.exterior()).chain(polygon.interiors())
}

fn rings(map: Map, area: &MultiPolygon<f64>) -> Vec<Vec<Point>> {
    // A closed path repeats its first point by itself.
    area.iter()
        .flat_map(rings_of)
        .map(|ring| map.points(ring.0.iter().skip(1)))
        .collect()
}

/// Writes the code of each zone where there is room in it, those that hold the site first.
pub(super) fn label(
    sheet: &mut Sheet,
    map: Map,
    surroundings: &Surroundings,
    clearing: &mut Clearing,
) {
    let mut zones: Vec<&ZoneShape> = surroundings.zones.iter().collect();
    zones.sort_by_key(|zone| std::cmp::Reverse((zone.decides, zone.holds, zone.class)));
    for zone in zones {
        let text = fitted(name(zone), LABEL, 90.0);
        let class = if zone.decides {
            "small strong halo"
        } else {
            "small halo"
        };
        let places = places(map, &zone.area);
        if let Some(at) = clearing.take_text(places, &text, LABEL) {
            sheet.text(class, at, Anchor::Middle, &text);
        }
    }
}

/// Places within an area for its label: a point well within, then those of a lattice, the
/// nearest to it first.
fn places(map: Map, area: &MultiPolygon<f64>) -> Vec<Point> {
    let Some(within) = area.interior_point() else {
        return Vec::new();
    };
    let reach = map.reach;
    let side = 0..LATTICE;
    let lattice = side
        .clone()
        .flat_map(|row| side.clone().map(move |column| (column, row)));
    let step = |number: i32| (f64::from(2 * number + 1) / f64::from(LATTICE) - 1.0) * reach;
    let mut places: Vec<Place<f64>> = lattice
        .map(|(column, row)| Place::new(step(column), step(row)))
        .filter(|place| area.contains(place))
        .collect();
    let away = |place: &Place<f64>| {
        let way: Coord<f64> = place.0 - within.0;
        way.x.hypot(way.y)
    };
    places.sort_by(|one, other| away(one).total_cmp(&away(other)));
    std::iter::once(within)
        .chain(places)
        .map(|place| map.at(place.0))
        .collect()
}
