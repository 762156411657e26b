//! GeoJSON (RFC 7946), a feature a line.

use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::Path;

use serde::{Serialize, Serializer};
use serde_json::json;

use super::rows::{Row, Value, WorkRows};
use super::{Plan, Points};
use crate::crs::{HorizontalCrs, Projector};
use crate::table::TableError;

pub(super) fn write(
    rows: &mut WorkRows<'_>,
    plan: &Plan<'_>,
    path: &Path,
) -> Result<(), TableError> {
    let failed = TableError::system(plan.target, "writing");
    let projector = projector(plan)?;
    let mut file = BufWriter::new(File::create(path).map_err(&failed)?);
    let name = json!(plan.layer);
    write!(
        file,
        "{{\"type\":\"FeatureCollection\",\"name\":{name},\"features\":["
    )
    .map_err(&failed)?;
    let mut separator: &[u8] = b"\n";
    rows.each(|row| {
        let feature = feature(row, plan, projector.as_ref())?;
        file.write_all(separator).map_err(&failed)?;
        separator = b",\n";
        serde_json::to_writer(&mut file, &feature).map_err(|error| failed(error.into()))?;
        Ok(())
    })?;
    file.write_all(b"\n]}\n")
        .and_then(|()| file.flush())
        .map_err(&failed)
}

/// The transformation to WGS 84, where one is needed.
fn projector(plan: &Plan<'_>) -> Result<Option<Projector>, TableError> {
    plan.points
        .filter(|points| !is_wgs84(&points.crs))
        .map(|points| Projector::new(points.crs.clone()))
        .transpose()
        .map_err(|error| TableError::Crs {
            path: plan.target.to_owned(),
            error,
        })
}

/// Whether coordinates are WGS 84 longitude and latitude as they stand.
pub(super) fn is_wgs84(crs: &HorizontalCrs) -> bool {
    matches!(crs.definition(), "EPSG:4326" | "OGC:CRS84")
}

/// A feature; its members and properties keep their order.
#[derive(Serialize)]
struct Feature<'row> {
    #[serde(rename = "type")]
    kind: &'static str,
    #[serde(serialize_with = "in_order")]
    properties: Vec<(&'row str, Value<'row>)>,
    geometry: Option<Point>,
}

#[derive(Serialize)]
struct Point {
    #[serde(rename = "type")]
    kind: &'static str,
    coordinates: (f64, f64),
}

fn in_order<S: Serializer>(
    properties: &[(&str, Value<'_>)],
    serializer: S,
) -> Result<S::Ok, S::Error> {
    serializer.collect_map(properties.iter().copied())
}

fn feature<'row>(
    row: &Row<'row>,
    plan: &'row Plan<'_>,
    projector: Option<&Projector>,
) -> Result<Feature<'row>, TableError> {
    let properties = plan.columns.iter().enumerate();
    let properties = properties
        .map(|(column, out)| Ok((out.name.as_str(), row.value(column)?)))
        .collect::<Result<_, TableError>>()?;
    let geometry = match (row.point()?, plan.points) {
        (Some(point), Some(points)) => Some(Point {
            kind: "Point",
            coordinates: degrees(row, point, points, projector)?,
        }),
        _ => None,
    };
    Ok(Feature {
        kind: "Feature",
        properties,
        geometry,
    })
}

fn degrees(
    row: &Row<'_>,
    (x, y): (f64, f64),
    points: &Points,
    projector: Option<&Projector>,
) -> Result<(f64, f64), TableError> {
    let Some(projector) = projector else {
        return Ok((x, y));
    };
    let place = projector.location(x, y).map_err(|error| {
        row.fault(
            points.x,
            &error.to_string(),
            "coordinates within the system's area",
        )
    })?;
    // Nine decimals of a degree are a tenth of a millimetre.
    let rounded = |degrees: f64| (degrees * 1e9).round() / 1e9;
    Ok((rounded(place.longitude()), rounded(place.latitude())))
}
