//! Coordinate reference systems of OGC API - Features part 2.

use serde_json::json;

use super::super::server::Reply;
use super::ogc_double::{COUNT, CRS84, collection, page, server};
use super::{all, degrees, ids, some};

const ITEMS: &str = "/ogc/collections/zones/items";

/// EPSG:26910 as storage: no conversion of the server stands between.
#[test]
fn coordinates_come_as_they_are_kept() {
    const KEPT: &str = "http://www.opengis.net/def/crs/EPSG/0/26910";
    let server = server(
        |asked| match (asked.path.as_str(), asked.parameter("crs")) {
            ("/ogc/collections", _) => {
                let mut described = collection("zones");
                described["crs"] = json!(["#/crs"]);
                described["storageCrs"] = json!(KEPT);
                let shared = [CRS84, KEPT];
                Some(Reply::json(
                    &json!({ "collections": [described], "crs": shared }),
                ))
            }
            (ITEMS, Some(crs)) => {
                assert_eq!(crs, KEPT);
                assert_eq!(asked.parameter("bbox-crs"), Some(CRS84));
                assert_eq!(asked.parameter("bbox"), Some("2.5,0.2,2.6,0.4"));
                let point = json!({ "type": "Point", "coordinates": [500_000.5, 5_000_000.25, 7] });
                let mut body = page(
                    &[
                        json!({ "type": "Feature", "id": "a", "properties": null, "geometry": point }),
                    ],
                    &json!([]),
                );
                body["numberMatched"] = json!(1);
                let header = format!("Content-Crs: <{KEPT}>");
                Some(Reply::whole(
                    "200 OK",
                    &[&header],
                    body.to_string().as_bytes(),
                ))
            }
            _ => None,
        },
    );
    let part = [degrees((2.5, 0.2), (2.6, 0.4))];
    let layer = some(&server, "/ogc", &part, 1000).unwrap();
    assert_eq!(layer.crs, "EPSG:26910");
    let place = geo::Point::new(500_000.5, 5_000_000.25);
    assert_eq!(layer.features[0].geometry, Some(place.into()));
    assert_eq!(layer.remarks, [""; 0]);
}

#[test]
fn where_the_system_is_not_confirmed_degrees_are_asked_for() {
    for header in [
        None,
        Some("Content-Crs: <http://www.opengis.net/def/crs/EPSG/0/3857>"),
    ] {
        let server = server(move |asked| {
            if asked.path == "/ogc/collections/zones" {
                let mut described = collection("zones");
                let kept = "http://www.opengis.net/def/crs/EPSG/0/26910";
                described["crs"] = json!([CRS84, kept]);
                described["storageCrs"] = json!(kept);
                return Some(Reply::json(&described));
            }
            asked.parameter("crs")?;
            let body = page(&[], &json!([])).to_string();
            let headers: Vec<&str> = header.into_iter().collect();
            Some(Reply::whole("200 OK", &headers, body.as_bytes()))
        });
        let layer = all(&server, "/ogc/collections/zones").unwrap();
        assert_eq!(
            (layer.crs.as_str(), layer.features.len()),
            ("OGC:CRS84", COUNT)
        );
        assert!(layer.remarks[0].starts_with("asked for EPSG:26910, the service "));
    }
}

/// Latitude comes first in EPSG:4326 (EPSG Geodetic Parameter Dataset, coordinate system 6422);
/// the address may ask for it.
#[test]
fn the_order_of_axes_is_looked_at() {
    const ASKED: &str = "/ogc?crs=http://www.opengis.net/def/crs/EPSG/0/4326";
    let header = "Content-Crs: <http://www.opengis.net/def/crs/EPSG/0/4326>";
    let answering = |latitude_first: bool| {
        server(move |asked| {
            asked.parameter("crs")?;
            let at = if latitude_first { [1, 20] } else { [20, 1] };
            let point = json!({ "type": "Point", "coordinates": at });
            let feature =
                json!({ "type": "Feature", "id": "a", "properties": {}, "geometry": point });
            let body = page(&[feature], &json!([])).to_string();
            Some(Reply::whole("200 OK", &[header], body.as_bytes()))
        })
    };
    let part = [degrees((18.0, 0.0), (21.0, 2.0))];
    let layer = some(&answering(true), ASKED, &part, 7).unwrap();
    assert_eq!(layer.crs, "EPSG:4326");
    assert_eq!(
        layer.features[0].geometry,
        Some(geo::Point::new(1.0, 20.0).into())
    );
    let layer = some(&answering(false), ASKED, &part, 7).unwrap();
    assert_eq!((layer.crs.as_str(), ids(&layer)), ("OGC:CRS84", vec!["9"]));
    assert!(
        layer.remarks[0].contains("longitude first"),
        "{:?}",
        layer.remarks
    );
}
