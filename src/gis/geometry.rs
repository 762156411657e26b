//! GDAL geometries as flat [`geo`] types.

use gdal::vector::Geometry;
use geo::{Coord, LineString, MultiLineString, MultiPolygon, Polygon};

use super::curve::{has_curves, straightened};
use super::wkb::{Head, WellKnownBinary};

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
    /// A geometry that GDAL does not hand out.
    #[error("its geometry cannot be read: {problem}")]
    Unreadable {
        /// Why.
        problem: String,
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
    parts(geometry, "POLYGON", "POLYGON, MULTIPOLYGON", &polygon)
        .map(|polygons| (!polygons.is_empty()).then_some(MultiPolygon(polygons)))
}

/// The lines of a line string or multi line string, heights and measures dropped, arcs
/// straightened. `None` for an empty one.
pub(super) fn lines(geometry: &Geometry) -> Result<Option<MultiLineString<f64>>, GeometryProblem> {
    let accepted = "LINESTRING, MULTILINESTRING";
    parts(geometry, "LINESTRING", accepted, &|binary, head| {
        line(binary, head).map(|line| (!line.0.is_empty()).then_some(line))
    })
    .map(|lines| (!lines.is_empty()).then_some(MultiLineString(lines)))
}

/// Converts a member of a geometry.
type Convert<'a, T> =
    dyn Fn(&mut WellKnownBinary<'_>, Head) -> Result<Option<T>, GeometryProblem> + 'a;

/// Converts a geometry of one `kind`, or each member of its multi-kind; empty ones are left out.
fn parts<T>(
    geometry: &Geometry,
    kind: &str,
    accepted: &'static str,
    convert: &Convert<'_, T>,
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
    let several = found.strip_prefix("MULTI") == Some(kind);
    if found != kind && !several {
        return if geometry.is_empty() {
            Ok(Vec::new())
        } else {
            Err(GeometryProblem::Kind { found, accepted })
        };
    }
    // In one piece: a call for every vertex takes far longer.
    let bytes = geometry.wkb().map_err(unreadable)?;
    let mut binary = WellKnownBinary::of(&bytes);
    let head = binary.head().map_err(unreadable)?;
    if !several {
        return Ok(convert(&mut binary, head)?.into_iter().collect());
    }
    let count = binary.count().map_err(unreadable)?;
    let members = (0..count).map(|_| {
        let head = binary.head().map_err(unreadable)?;
        convert(&mut binary, head)
    });
    members.filter_map(Result::transpose).collect()
}

fn polygon(
    binary: &mut WellKnownBinary<'_>,
    head: Head,
) -> Result<Option<Polygon<f64>>, GeometryProblem> {
    let count = binary.count().map_err(unreadable)?;
    let rings: Result<Vec<_>, _> = (0..count).map(|_| line(binary, head)).collect();
    let mut rings = rings?.into_iter();
    let shell = rings.next().filter(|shell| !shell.0.is_empty());
    Ok(shell.map(|shell| Polygon::new(shell, rings.filter(|hole| !hole.0.is_empty()).collect())))
}

/// The vertices of a ring or line.
fn line(binary: &mut WellKnownBinary<'_>, head: Head) -> Result<LineString<f64>, GeometryProblem> {
    let vertices = binary.line(head).map_err(unreadable)?;
    let line: Vec<Coord<f64>> = vertices.map(Coord::from).collect();
    let odd = line
        .iter()
        .find(|at| !at.x.is_finite() || !at.y.is_finite());
    match odd {
        Some(&Coord { x, y }) => Err(GeometryProblem::NotFinite { x, y }),
        None => Ok(LineString(line)),
    }
}

#[allow(clippy::needless_pass_by_value)] // as `map_err` hands it over
fn unreadable(problem: impl ToString) -> GeometryProblem {
    GeometryProblem::Unreadable {
        problem: problem.to_string(),
    }
}
