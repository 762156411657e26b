//! [`geo`] types as GDAL geometries.

use gdal::errors::GdalError;
use gdal::vector::Geometry;
use gdal_sys::OGRwkbGeometryType;
use geo::{LineString, MultiLineString, MultiPolygon, Polygon};

pub(super) fn multi_line(lines: &MultiLineString<f64>) -> Result<Geometry, GdalError> {
    let mut whole = Geometry::empty(OGRwkbGeometryType::wkbMultiLineString)?;
    for part in lines {
        whole.add_geometry(line(part, OGRwkbGeometryType::wkbLineString)?)?;
    }
    Ok(whole)
}

pub(super) fn multi_polygon(areas: &MultiPolygon<f64>) -> Result<Geometry, GdalError> {
    let mut whole = Geometry::empty(OGRwkbGeometryType::wkbMultiPolygon)?;
    for part in areas {
        whole.add_geometry(polygon(part)?)?;
    }
    Ok(whole)
}

fn polygon(polygon: &Polygon<f64>) -> Result<Geometry, GdalError> {
    let mut whole = Geometry::empty(OGRwkbGeometryType::wkbPolygon)?;
    for ring in std::iter::once(polygon.exterior()).chain(polygon.interiors()) {
        whole.add_geometry(line(ring, OGRwkbGeometryType::wkbLinearRing)?)?;
    }
    Ok(whole)
}

fn line(line: &LineString<f64>, kind: OGRwkbGeometryType::Type) -> Result<Geometry, GdalError> {
    let mut shape = Geometry::empty(kind)?;
    for point in &line.0 {
        shape.add_point_2d((point.x, point.y));
    }
    Ok(shape)
}
