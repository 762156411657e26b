//! Degrees of features that lie beside the boxes: where they were meant in another way.

use serde_json::json;
use sillmark::service::DegreeBox;

use super::super::server::Reply;
use super::ogc_double::{feature, page, server};
use super::{degrees, some};

const ITEMS: &str = "/ogc/collections/zones/items";

/// The degrees of each point that a service has, and what becomes of them for a box.
fn points(at: &'static [(f64, f64)], part: DegreeBox) -> Result<usize, String> {
    let server = server(move |asked| {
        (asked.path == ITEMS).then(|| {
            let mut features: Vec<_> = (0..at.len()).map(feature).collect();
            for (feature, (x, y)) in features.iter_mut().zip(at) {
                feature["geometry"] = json!({ "type": "Point", "coordinates": [x, y] });
            }
            Reply::json(&page(&features, &json!([])))
        })
    });
    Ok(some(&server, "/ogc", &[part], 1000)?.features.len())
}

#[test]
fn degrees_that_are_meant_in_another_way_are_told() {
    let oregon = degrees((-123.3, 45.8), (-123.1, 45.9));
    let italy = degrees((9.0, 45.0), (10.0, 46.0));
    assert_eq!(points(&[(9.5, 45.5), (45.5, 9.5)], italy), Ok(1));
    assert_eq!(points(&[(20.0, 45.5)], italy), Ok(0));
    let swapped = points(&[(45.5, 9.5), (20.0, 20.0)], italy).unwrap_err();
    let said = "layer \"zones\" did not come whole: its coordinates seem to be latitude first";
    assert!(swapped.contains(said), "{swapped}");
    // 360 - 123.2
    let turned = points(&[(236.8, 45.85), (-123.2, 45.85)], oregon).unwrap_err();
    let said = "did not come whole: its longitudes run from 0 to 360";
    assert!(turned.contains(said), "{turned}");
}

#[test]
fn what_crosses_the_antimeridian_is_on_both_sides_of_it() {
    let server = server(|asked| {
        (asked.path == ITEMS).then(|| {
            let mut across = feature(1);
            across["geometry"]["coordinates"] =
                json!([[[179, 0], [181, 0], [181, 1], [179, 1], [179, 0]]]);
            Reply::json(&page(&[across], &json!([])))
        })
    });
    for (west, east, met) in [
        (-180.0, -179.0, 1),
        (179.5, 180.0, 1),
        (-178.5, -178.0, 0),
        (0.0, 1.0, 0),
    ] {
        let part = degrees((west, 0.2), (east, 0.4));
        let layer = some(&server, "/ogc", &[part], 1000).unwrap();
        assert_eq!(layer.features.len(), met, "{west} to {east}");
    }
}
