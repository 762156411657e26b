//! OGC API - Features: what comes without an id or a shape, or is no service.

use geo::Rect;
use serde_json::json;
use sillmark::service::DegreeBox;

use super::super::server::Reply;
use super::ogc_double::{COUNT, feature, page, rightly, server};
use super::{all, assert_says, some};

const ITEMS: &str = "/ogc/collections/zones/items";

#[test]
fn a_feature_without_a_shape_is_not_passed_over() {
    for shape in [
        json!(null),
        json!({ "type": "Polygon", "coordinates": [] }),
        json!({ "type": "GeometryCollection", "geometries": [] }),
    ] {
        let server = server(move |asked| {
            (asked.path == ITEMS).then(|| {
                let mut features = [feature(1), feature(2), feature(3)];
                features[0]["geometry"] = shape.clone();
                features[2]["geometry"] = shape.clone();
                Reply::json(&page(&features, &json!([])))
            })
        });
        assert_says(all(&server, "/ogc"), "2 features came without a shape");
    }
}

#[test]
fn a_page_is_not_asked_for_though_the_address_does() {
    let server = server(|asked| {
        assert_eq!(asked.parameter("f"), Some("json"), "{}", asked.path);
        None
    });
    assert_eq!(all(&server, "/ogc?f=html").unwrap().features.len(), COUNT);
}

#[test]
fn what_is_no_service_is_told_as_what_it_is() {
    let collection = page(&[feature(1)], &json!(null)).to_string();
    for (body, said) in [
        (
            b"II*\0rest".as_slice(),
            "it is a GeoTIFF, not features; give it to --dem",
        ),
        (b"MM\0+rest", "it is a GeoTIFF"),
        (
            collection.as_bytes(),
            "it is a GeoJSON file, not a service: download it and name the file",
        ),
        (
            b"<html><title>Sign in</title>",
            "where JSON was asked for; it says: Sign in",
        ),
    ] {
        let body = body.to_vec();
        let server = server(move |_| Some(Reply::ok(&body)));
        assert_says(all(&server, "/ogc"), said);
    }
    let marked = server(|asked| {
        let Reply::Bytes(reply) = rightly(asked) else {
            return None;
        };
        let text = String::from_utf8(reply).unwrap();
        let (_, body) = text.split_once("\r\n\r\n").unwrap();
        Some(Reply::ok(format!("\u{feff}{body}").as_bytes()))
    });
    assert_eq!(all(&marked, "/ogc").unwrap().features.len(), COUNT);
}

#[test]
fn features_without_ids_are_told_apart_by_what_they_say() {
    let without_ids = |numbers: &'static [usize]| {
        server(move |asked| {
            (asked.path == ITEMS).then(|| {
                let mut features: Vec<_> = numbers.iter().map(|number| feature(*number)).collect();
                for feature in &mut features {
                    feature.as_object_mut().unwrap().remove("id");
                }
                Reply::json(&page(&features, &json!([])))
            })
        })
    };
    let boxes = [
        DegreeBox(Rect::new((0.0, 0.0), (9.0, 1.0))),
        super::everywhere(),
    ];
    let layer = some(&without_ids(&[1, 2]), "/ogc", &boxes, 1000).unwrap();
    assert_eq!(layer.features.len(), 2);
    assert_says(
        some(&without_ids(&[1, 2, 1]), "/ogc", &boxes, 1000),
        "a feature without an id came twice, so that another may be missing",
    );
}
