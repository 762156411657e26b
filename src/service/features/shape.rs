//! Geometry of GeoJSON (RFC 7946), each of its numbers looked at.

use geo::{
    Coord, Geometry, GeometryCollection, LineString, MultiLineString, MultiPoint, MultiPolygon,
    Point, Polygon,
};
use geojson::{GeometryValue, Position};

/// What the two numbers of a position are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Axes {
    /// Degrees of longitude, then of latitude.
    LongitudeFirst,
    /// Degrees of latitude, then of longitude.
    LatitudeFirst,
    /// Whatever the coordinate reference system says.
    Any,
}

impl Axes {
    /// Two numbers as a position.
    pub(super) fn position(self, x: f64, y: f64) -> Result<Coord<f64>, String> {
        if !(x.is_finite() && y.is_finite()) {
            return Err(format!("the position {x}, {y} is not finite"));
        }
        let (longitude, latitude) = match self {
            Self::LongitudeFirst => (x, y),
            Self::LatitudeFirst => (y, x),
            Self::Any => (0.0, 0.0),
        };
        // Rounding may put the pole itself a hair beyond the pole.
        for (name, value, bound) in [
            ("longitude", longitude, 360.0),
            ("latitude", latitude, 90.0),
        ] {
            if value.abs() > bound + 1e-9 {
                return Err(format!(
                    "the {name} {value} is none: accepted are {} to {bound} degrees",
                    -bound
                ));
            }
        }
        Ok(Coord { x, y })
    }
}

/// A geometry; `None` where it has no positions.
pub(super) fn geometry(shape: &GeometryValue, axes: Axes) -> Result<Option<Geometry<f64>>, String> {
    let reader = Reader(axes);
    let read = match shape {
        GeometryValue::Point { coordinates } if coordinates.is_empty() => return Ok(None),
        GeometryValue::Point { coordinates } => Point(reader.position(coordinates)?).into(),
        GeometryValue::MultiPoint { coordinates } => {
            MultiPoint(each(coordinates, |at| Ok(Point(reader.position(at)?)))?).into()
        }
        GeometryValue::LineString { coordinates } => reader.line(coordinates)?.into(),
        GeometryValue::MultiLineString { coordinates } => {
            MultiLineString(each(coordinates, |line| reader.line(line))?).into()
        }
        GeometryValue::Polygon { coordinates } => reader.polygon(coordinates)?.into(),
        GeometryValue::MultiPolygon { coordinates } => {
            MultiPolygon(each(coordinates, |rings| reader.polygon(rings))?).into()
        }
        GeometryValue::GeometryCollection { geometries } => {
            let mut parts = Vec::with_capacity(geometries.len());
            for part in geometries {
                parts.extend(geometry(&part.value, axes)?);
            }
            Geometry::GeometryCollection(GeometryCollection(parts))
        }
    };
    Ok(Some(read).filter(|read| !is_empty(read)))
}

/// Whether a geometry has no positions.
pub(super) fn is_empty(geometry: &Geometry<f64>) -> bool {
    use geo::CoordsIter as _;
    geometry.coords_iter().next().is_none()
}

struct Reader(Axes);

impl Reader {
    /// What stands behind the second number is a height, and not used.
    fn position(&self, position: &Position) -> Result<Coord<f64>, String> {
        match position.as_slice() {
            [x, y, ..] => self.0.position(*x, *y),
            short => Err(format!(
                "a position has {} numbers, and needs two",
                short.len()
            )),
        }
    }

    fn line(&self, positions: &[Position]) -> Result<LineString<f64>, String> {
        Ok(LineString(each(positions, |position| {
            self.position(position)
        })?))
    }

    fn polygon(&self, rings: &[Vec<Position>]) -> Result<Polygon<f64>, String> {
        let mut rings = each(rings, |ring| self.line(ring))?.into_iter();
        let shell = rings.next().unwrap_or_else(|| LineString(Vec::new()));
        Ok(Polygon::new(shell, rings.collect()))
    }
}

fn each<'part, Part, Read>(
    parts: &'part [Part],
    read: impl Fn(&'part Part) -> Result<Read, String>,
) -> Result<Vec<Read>, String> {
    parts.iter().map(read).collect()
}
