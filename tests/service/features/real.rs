//! The two protocols as general-purpose servers speak them: pygeoapi (OGC API - Features) at
//! `SILLMARK_OGC_SERVER` and Koop (GeoServices REST) at `SILLMARK_GEOSERVICES_SERVER`, both with
//! the same file of 49 real flood zones, which is read here by itself.

use std::collections::BTreeMap;

use gdal::spatial_ref::{AxisMappingStrategy, CoordTransform, SpatialRef};
use geo::{Coord, CoordsIter as _, Geometry, Intersects as _, MapCoords as _};
use serde_json::Value;
use sillmark::service::{DegreeBox, ServedLayer};

use super::{ask, degrees, everywhere};
use crate::support;

/// The zones of the file by their object ids: geometry and attributes.
type Zones = BTreeMap<String, (Geometry<f64>, Value)>;

fn zones() -> Option<Zones> {
    let path = support::open_data("../servers/data/nfhl.geojson")?;
    let text = std::fs::read_to_string(path).unwrap();
    let file: Value = serde_json::from_str(&text).unwrap();
    let features = file["features"].as_array().unwrap();
    let zones = features.iter().map(|feature| {
        let rings = &feature["geometry"]["coordinates"];
        let geometry = match feature["geometry"]["type"].as_str().unwrap() {
            "Polygon" => polygon(rings).into(),
            "MultiPolygon" => {
                geo::MultiPolygon(rings.as_array().unwrap().iter().map(polygon).collect()).into()
            }
            other => panic!("a {other}"),
        };
        let properties = feature["properties"].clone();
        (properties["OBJECTID"].to_string(), (geometry, properties))
    });
    Some(zones.collect())
}

fn polygon(rings: &Value) -> geo::Polygon<f64> {
    let mut rings = rings.as_array().unwrap().iter().map(|ring| {
        let positions = ring.as_array().unwrap().iter();
        geo::LineString(
            positions
                .map(|at| (at[0].as_f64().unwrap(), at[1].as_f64().unwrap()).into())
                .collect(),
        )
    });
    geo::Polygon::new(rings.next().unwrap(), rings.collect())
}

/// A real server and the path of what it serves.
fn server(variable: &str, path: &str) -> Option<String> {
    if let Ok(server) = std::env::var(variable) {
        return Some(format!("{}{path}", server.trim_end_matches('/')));
    }
    let name = std::thread::current().name().unwrap_or("?").to_owned();
    support::skip(&format!("{name}: {variable} names no server"));
    None
}

fn ogc() -> Option<String> {
    server("SILLMARK_OGC_SERVER", "/")
}

fn geoservices() -> Option<String> {
    let path = "/file-geojson/rest/services/nfhl/FeatureServer";
    server("SILLMARK_GEOSERVICES_SERVER", path)
}

fn assert_whole(layer: &ServedLayer, zones: &Zones) {
    assert_eq!(layer.features.len(), zones.len());
    for feature in &layer.features {
        let (geometry, properties) = &zones[&feature.id];
        assert_eq!(feature.geometry.as_ref(), Some(geometry), "{}", feature.id);
        for (name, value) in properties.as_object().unwrap() {
            let served = &feature.attributes[name];
            // One server writes -9999.0 as -9999.
            let is_same = served == value || served.as_f64() == value.as_f64();
            assert!(is_same, "{name} {value}: {served}");
        }
    }
}

/// Where boxes lie: one over all, some within, two that overlap, and one beside.
fn boxes() -> Vec<Vec<DegreeBox>> {
    let low = degrees((-123.2, 45.85), (-123.19, 45.86));
    let high = degrees((-123.195, 45.855), (-123.185, 45.865));
    let beside = degrees((-122.9, 45.85), (-122.8, 45.86));
    vec![vec![everywhere()], vec![low], vec![low, high], vec![beside]]
}

fn assert_boxes(url: &str, zones: &Zones, size: usize) {
    for boxes in boxes() {
        let layer = ask(url, &boxes, &[&["fld_zone".to_owned()]], size).unwrap();
        assert_eq!(layer.name.to_ascii_lowercase(), "s_fld_haz_ar");
        assert_eq!(layer.remarks, [""; 0]);
        let meeting =
            |geometry: &Geometry<f64>| boxes.iter().any(|part| geometry.intersects(&part.0));
        let expected: Vec<&String> = zones
            .iter()
            .filter(|(_, (geometry, _))| meeting(geometry))
            .map(|(id, _)| id)
            .collect();
        let mut came: Vec<&String> = layer.features.iter().map(|feature| &feature.id).collect();
        came.sort_unstable();
        assert_eq!(came, expected, "{boxes:?}, {size} at a time");
    }
}

#[test]
fn an_ogc_api_gives_the_file() {
    let (Some(url), Some(zones)) = (ogc(), zones()) else {
        return;
    };
    for size in [1, 7, 20, 1000] {
        let layer = ask(&url, &[everywhere()], &[], size).unwrap();
        assert_eq!(layer.crs, "OGC:CRS84");
        assert_whole(&layer, &zones);
        assert_boxes(&url, &zones, size);
    }
    for path in [
        "collections",
        "collections/s_fld_haz_ar",
        "collections/s_fld_haz_ar/items",
        "#S_FLD_HAZ_AR",
    ] {
        let layer = ask(&format!("{url}{path}"), &[everywhere()], &[], 1000).unwrap();
        assert_whole(&layer, &zones);
    }
}

#[test]
fn geoservices_give_the_file() {
    let (Some(url), Some(zones)) = (geoservices(), zones()) else {
        return;
    };
    for size in [1, 7, 20, 1000] {
        let layer = ask(&url, &[everywhere()], &[], size).unwrap();
        assert_whole(&layer, &zones);
        assert_boxes(&url, &zones, size);
    }
    for behind in ["/0", "/0/query", "#S_FLD_HAZ_AR", ":s_fld_haz_ar"] {
        let layer = ask(&format!("{url}{behind}"), &[everywhere()], &[], 1000).unwrap();
        assert_whole(&layer, &zones);
    }
    // The counts that stand beside the file.
    let zone = |layer: &ServedLayer, zones: &[&str]| {
        let of = |name: &&&str| {
            layer
                .features
                .iter()
                .filter(|one| one.attributes["FLD_ZONE"] == ***name)
                .count()
        };
        zones.iter().map(|name| of(&name)).sum::<usize>()
    };
    let layer = ask(&url, &[everywhere()], &[], 1000).unwrap();
    assert_eq!(
        (
            layer.features.len(),
            zone(&layer, &["AE"]),
            zone(&layer, &["AE", "A"])
        ),
        (49, 17, 22)
    );
    let filtered = ask(
        &format!("{url}?where=FLD_ZONE%3D'AE'"),
        &[everywhere()],
        &[],
        7,
    )
    .unwrap();
    assert_eq!(filtered.features.len(), 17);
}

/// It answers about layer 0 whatever number is asked for; what it lists tells.
#[test]
fn an_unknown_number_is_no_layer() {
    let Some(url) = geoservices() else {
        return;
    };
    let message = ask(&format!("{url}/7"), &[everywhere()], &[], 7).unwrap_err();
    assert!(
        message.ends_with("has no layer \"7\"; it has: S_FLD_HAZ_AR (#0)"),
        "{message}"
    );
    let unknown = url.replace("nfhl", "nope");
    let message = ask(&unknown, &[everywhere()], &[], 7).unwrap_err();
    assert!(
        message.contains("the server answers error 404: "),
        "{message}"
    );
}

/// Coordinates in other systems, which the address asks for, against GDAL's own conversion.
#[test]
fn an_ogc_api_gives_other_systems_in_their_order_of_axes() {
    let (Some(url), Some(zones)) = (ogc(), zones()) else {
        return;
    };
    for (code, tolerance) in [(4326, 1e-9), (3857, 1e-3), (26910, 1e-3)] {
        let crs = format!("{url}?crs=http://www.opengis.net/def/crs/EPSG/0/{code}");
        let layer = ask(&crs, &[everywhere()], &[], 20).unwrap();
        assert_eq!(layer.crs, format!("EPSG:{code}"));
        assert_eq!(
            (layer.features.len(), layer.remarks.len()),
            (zones.len(), 0)
        );
        let degrees = reference(4326, AxisMappingStrategy::TraditionalGisOrder);
        let wanted = reference(code, AxisMappingStrategy::AuthorityCompliant);
        let convert = CoordTransform::new(&degrees, &wanted).unwrap();
        for feature in &layer.features {
            let expected = zones[&feature.id].0.map_coords(|at| {
                let (mut x, mut y) = ([at.x], [at.y]);
                convert.transform_coords(&mut x, &mut y, &mut []).unwrap();
                Coord { x: x[0], y: y[0] }
            });
            let came = feature.geometry.as_ref().unwrap();
            for (came, expected) in came.coords_iter().zip(expected.coords_iter()) {
                let difference = came - expected;
                assert!(
                    difference.x.hypot(difference.y) < tolerance,
                    "{code}: {difference:?}"
                );
            }
        }
    }
}

fn reference(code: u32, axes: AxisMappingStrategy) -> SpatialRef {
    let mut reference = SpatialRef::from_epsg(code).unwrap();
    reference.set_axis_mapping_strategy(axes);
    reference
}
