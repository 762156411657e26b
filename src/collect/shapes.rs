//! Geometry as a service gives it, for a file.

use geo::{Coord, Geometry, MapCoords, MultiLineString, MultiPolygon};

/// Areas of a feature; `None` for something else.
pub(super) fn areas(geometry: Geometry<f64>) -> Option<MultiPolygon<f64>> {
    match geometry {
        Geometry::Polygon(polygon) => Some(MultiPolygon::new(vec![polygon])),
        Geometry::MultiPolygon(polygons) => Some(polygons),
        Geometry::GeometryCollection(parts) => {
            let parts = parts.into_iter().map(areas);
            let parts: Option<Vec<_>> = parts.collect();
            Some(MultiPolygon::new(parts?.into_iter().flatten().collect()))
        }
        _ => None,
    }
}

/// Lines of a feature; `None` for something else.
pub(super) fn lines(geometry: Geometry<f64>) -> Option<MultiLineString<f64>> {
    match geometry {
        Geometry::LineString(line) => Some(MultiLineString::new(vec![line])),
        Geometry::MultiLineString(lines) => Some(lines),
        Geometry::GeometryCollection(parts) => {
            let parts = parts.into_iter().map(lines);
            let parts: Option<Vec<_>> = parts.collect();
            Some(MultiLineString::new(parts?.into_iter().flatten().collect()))
        }
        _ => None,
    }
}

/// A geometry with its axes in the other order.
pub(super) fn swapped(geometry: &Geometry<f64>) -> Geometry<f64> {
    geometry.map_coords(|at| Coord { x: at.y, y: at.x })
}

/// What a geometry is called.
pub(super) const fn name(geometry: &Geometry<f64>) -> &'static str {
    match geometry {
        Geometry::Point(_) | Geometry::MultiPoint(_) => "point",
        Geometry::Line(_) | Geometry::LineString(_) | Geometry::MultiLineString(_) => "line",
        Geometry::GeometryCollection(_) => "collection",
        Geometry::Polygon(_)
        | Geometry::MultiPolygon(_)
        | Geometry::Rect(_)
        | Geometry::Triangle(_) => "polygon",
    }
}
