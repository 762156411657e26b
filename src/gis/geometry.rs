//! GDAL geometries as flat [`geo`] types.

use gdal::vector::Geometry;
use geo::{Coord, LineString, MultiLineString, MultiPolygon, Polygon};

use super::curve::{has_curves, straightened};

/// What keeps a geometry from being used.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum GeometryProblem {
    /// Another kind than the layer is for.
    #[error("its geometry is a {found}; accepted: {accepted}")]
    Kind {
        /// Its well-known name.
        found: String,
        /// The kinds that would do.
        accepted: &'static str,
    },
    /// A coordinate that is not a finite number.
    #[error("its geometry has a coordinate that is not finite: {x}, {y}")]
    NotFinite {
        /// First coordinate.
        x: f64,
        /// Second coordinate.
        y: f64,
    },
    /// An arc that GDAL could not straighten.
    #[error("the curves of its {found} cannot be turned into straight lines")]
    Curve {
        /// Its well-known name.
        found: String,
    },
}

/// The x and y of a point. `None` for an empty one.
pub(super) fn point(geometry: &Geometry) -> Result<Option<(f64, f64)>, GeometryProblem> {
    let found = geometry.geometry_name();
    if found != "POINT" {
        let accepted = "POINT";
        return Err(GeometryProblem::Kind { found, accepted });
    }
    if geometry.is_empty() {
        return Ok(None);
    }
    let (x, y, _) = geometry.get_point(0);
    if x.is_finite() && y.is_finite() {
        Ok(Some((x, y)))
    } else {
        Err(GeometryProblem::NotFinite { x, y })
    }
}

/// The areas of a polygon or multipolygon, heights and measures dropped, arcs straightened.
/// `None` for an empty one.
pub(super) fn polygons(geometry: &Geometry) -> Result<Option<MultiPolygon<f64>>, GeometryProblem> {
    parts(geometry, "POLYGON", "POLYGON, MULTIPOLYGON", &|polygon| {
        let mut rings = (0..polygon.geometry_count())
            .map(|index| line(&polygon.get_geometry(index)))
            .collect::<Result<Vec<_>, _>>()?
            .into_iter();
        Ok(rings
            .next()
            .filter(|shell| !shell.0.is_empty())
            .map(|shell| Polygon::new(shell, rings.filter(|hole| !hole.0.is_empty()).collect())))
    })
    .map(|polygons| (!polygons.is_empty()).then_some(MultiPolygon(polygons)))
}

/// The lines of a line string or multi line string, heights and measures dropped, arcs
/// straightened. `None` for an empty one.
pub(super) fn lines(geometry: &Geometry) -> Result<Option<MultiLineString<f64>>, GeometryProblem> {
    let accepted = "LINESTRING, MULTILINESTRING";
    parts(geometry, "LINESTRING", accepted, &|part| {
        line(part).map(|line| (!line.0.is_empty()).then_some(line))
    })
    .map(|lines| (!lines.is_empty()).then_some(MultiLineString(lines)))
}

/// Converts a geometry of one `kind`, or each member of its multi-kind.
fn parts<T>(
    geometry: &Geometry,
    kind: &str,
    accepted: &'static str,
    convert: &dyn Fn(&Geometry) -> Result<Option<T>, GeometryProblem>,
) -> Result<Vec<T>, GeometryProblem> {
    let found = geometry.geometry_name();
    if has_curves(&found) {
        let straight = straightened(geometry).filter(|straight| {
            // A second round of curves would not end.
            !has_curves(&straight.geometry_name())
        });
        let straight = straight.ok_or(GeometryProblem::Curve { found })?;
        return parts(&straight, kind, accepted, convert);
    }
    let members = if found == kind {
        vec![convert(geometry)?]
    } else if found.strip_prefix("MULTI") == Some(kind) {
        (0..geometry.geometry_count())
            .map(|index| geometry.get_geometry(index))
            .filter(|member| !member.is_empty())
            .map(|member| convert(&member))
            .collect::<Result<Vec<_>, _>>()?
    } else if geometry.is_empty() {
        Vec::new()
    } else {
        return Err(GeometryProblem::Kind { found, accepted });
    };
    Ok(members.into_iter().flatten().collect())
}

/// The vertices of a ring or line.
fn line(geometry: &Geometry) -> Result<LineString<f64>, GeometryProblem> {
    let mut points = Vec::new();
    geometry.get_points(&mut points);
    points
        .into_iter()
        .map(|(x, y, _)| {
            if x.is_finite() && y.is_finite() {
                Ok(Coord { x, y })
            } else {
                Err(GeometryProblem::NotFinite { x, y })
            }
        })
        .collect::<Result<Vec<_>, _>>()
        .map(LineString)
}
