//! Geometry of GeoServices REST in its own JSON.

use geo::{Area as _, coord};
use serde_json::{Value, json};

use super::super::server::Reply;
use super::geoservices_double::{SERVICE, answering, error, geojson, own_json, service_of};
use super::{assert_says, degrees, some};

/// One geometry in the protocol's own JSON, read.
fn shape(geometry: &Value) -> Result<Option<geo::Geometry<f64>>, String> {
    let geometry = geometry.clone();
    let server = answering(move |asked, ids| {
        if asked.parameter("f") == Some("geojson") {
            return Some(error(400, "no"));
        }
        let mut set = own_json(ids);
        set["features"][0]["geometry"] = geometry.clone();
        Some(Reply::json(&set))
    });
    let part = [degrees((0.0, 0.0), (1.0, 1.0))];
    let layer = some(&server, SERVICE, &part, 1)?;
    assert_eq!(layer.features.len(), 1);
    Ok(layer
        .features
        .into_iter()
        .next()
        .and_then(|feature| feature.geometry))
}

fn square(low: i32, high: i32, clockwise: bool) -> Value {
    let mut ring = vec![
        [low, low],
        [low, high],
        [high, high],
        [high, low],
        [low, low],
    ];
    if !clockwise {
        ring.reverse();
    }
    json!(ring)
}

#[test]
fn holes_belong_to_the_shells_that_hold_them() {
    use geo::Geometry::{MultiPolygon, Polygon};
    // An island in the hole of a lake, with a pond: the holes stand first.
    let rings = [
        square(4, 5, false),
        square(1, 8, false),
        square(0, 10, true),
        square(3, 6, true),
        square(20, 22, true),
    ];
    let Some(MultiPolygon(lake)) = shape(&json!({ "rings": rings })).unwrap() else {
        panic!("several polygons");
    };
    let areas: Vec<f64> = lake.iter().map(geo::Area::unsigned_area).collect();
    assert_eq!(areas, [100.0 - 49.0, 9.0 - 1.0, 4.0]);
    // A hole that touches its shell at a corner and along an edge.
    let touching = json!({ "rings": [square(0, 4, true), [[0, 0], [4, 0], [2, 2], [0, 0]]] });
    let Some(Polygon(held)) = shape(&touching).unwrap() else {
        panic!("one polygon");
    };
    assert_eq!(held.unsigned_area(), 16.0 - 4.0);
    // Wound wrongly, a shell is one all the same; without an area a ring is nothing.
    let lone = json!({ "rings": [square(0, 2, false), [[5, 5], [6, 6], [5, 5]]] });
    assert_eq!(shape(&lone).unwrap().unwrap().unsigned_area(), 4.0);
}

#[test]
fn a_hole_that_rounding_moves_onto_the_edge_stays_one() {
    // The first position should lie on the edge from 0, 0 to 3, 1, and is rounded out of it.
    let shell = [[0, 0], [0, 4], [3, 4], [3, 1], [0, 0]];
    let hole = [[1.0, 0.333_333], [1.0, 2.0], [0.5, 2.0], [1.0, 0.333_333]];
    let read = shape(&json!({ "rings": [shell, hole] })).unwrap().unwrap();
    let geo::Geometry::Polygon(held) = read else {
        panic!("one polygon, not {read:?}");
    };
    let area = 12.0 - 1.5 - 0.5 * 0.5 * (2.0 - 0.333_333);
    assert!((held.unsigned_area() - area).abs() < 1e-12);
}

#[test]
fn an_island_that_fills_a_hole_does_not_swallow_it() {
    let rings = [square(0, 9, true), square(2, 5, false), square(2, 5, true)];
    let all = shape(&json!({ "rings": rings })).unwrap().unwrap();
    assert_eq!(all.unsigned_area(), 81.0);
}

#[test]
fn so_many_rings_that_they_take_minutes_are_refused() {
    let rings = vec![[[0, 0]]; 200_001];
    let message = shape(&json!({ "rings": rings })).unwrap_err();
    let said = "feature 101: it has 200001 rings; accepted: 200000 and fewer";
    assert!(message.contains(said), "{message}");
    let squares = |clockwise| (1..4_500).map(move |size| (f64::from(size) / 100.0, clockwise));
    let within_each_other: Vec<_> = squares(true)
        .chain(squares(false))
        .map(|(size, clockwise)| {
            let mut ring = [[-size, -size], [-size, size], [size, size], [size, -size]];
            if !clockwise {
                ring.reverse();
            }
            ring
        })
        .collect();
    let message = shape(&json!({ "rings": within_each_other })).unwrap_err();
    assert!(
        message.contains("its 8998 rings lie too deeply in each other"),
        "{message}"
    );
}

#[test]
fn lines_and_points_are_read_without_heights() {
    let line = geo::LineString(vec![coord! { x: 0.0, y: 0.0 }, coord! { x: 1.0, y: 0.5 }]);
    let path = json!([[0, 0, 7], [1, 0.5, null]]);
    assert_eq!(
        shape(&json!({ "hasZ": true, "paths": [path] })),
        Ok(Some(line.clone().into()))
    );
    assert_eq!(
        shape(&json!({ "paths": [path, path, []] })),
        Ok(Some(geo::MultiLineString(vec![line.clone(), line]).into()))
    );
    assert_eq!(
        shape(&json!({ "x": 0.5, "y": 1, "z": 3 })),
        Ok(Some(geo::Point::new(0.5, 1.0).into()))
    );
    let points = geo::MultiPoint::new(vec![geo::Point::new(0.0, 1.0)]);
    assert_eq!(
        shape(&json!({ "points": [[0, 1]] })),
        Ok(Some(points.into()))
    );
}

#[test]
fn a_feature_without_a_shape_is_not_passed_over() {
    for geometry in [
        json!(null),
        json!({ "rings": [] }),
        json!({ "x": "NaN", "y": "NaN" }),
    ] {
        let message = shape(&geometry).unwrap_err();
        assert!(
            message.contains("1 feature came without a shape"),
            "{message}"
        );
    }
}

#[test]
fn curves_and_positions_that_are_none_are_refused() {
    for (geometry, said) in [
        (
            json!({ "curveRings": [[[0, 0], { "c": [[1, 1], [0, 1]] }]] }),
            "feature 101: it has curves",
        ),
        (json!({ "curvePaths": [] }), "it has curves"),
        (
            json!({ "rings": [[[0, 0], [1]]] }),
            "a position lacks one of its two numbers",
        ),
        (
            json!({ "rings": [[[0, 0], [1, null]]] }),
            "a position lacks one of its two numbers",
        ),
        (json!({ "x": 400, "y": 0 }), "the longitude 400 is none"),
        (json!({ "x": 4 }), "a point has no y"),
        (json!({ "rings": "round" }), "the answer cannot be read"),
    ] {
        let message = shape(&geometry).unwrap_err();
        assert!(message.contains(said), "{message}\nshould say: {said}");
    }
}

#[test]
fn coordinates_of_another_system_are_refused() {
    let server = answering(|asked, ids| {
        let mut set = own_json(ids);
        set["spatialReference"] = json!({ "wkid": 102_100, "latestWkid": 3857 });
        let mut far = geojson(ids);
        far["features"][0]["geometry"] =
            json!({ "type": "Point", "coordinates": [-13_700_000, 5] });
        Some(Reply::json(if asked.parameter("f") == Some("json") {
            &set
        } else {
            &far
        }))
    });
    assert_says(
        service_of(&server),
        "coordinate reference system 3857, not in 4326",
    );
}
