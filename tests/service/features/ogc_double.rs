//! A server of OGC API - Features on loopback: its documents as OGC 17-069r4 shows them, its
//! features unit squares in a row along the equator.

use serde_json::{Value, json};

use super::super::server::{Asked, Reply, Server};

/// How many features there are.
pub(crate) const COUNT: usize = 10;

pub(crate) const CRS84: &str = "http://www.opengis.net/def/crs/OGC/1.3/CRS84";

/// A server that answers as `other` says, and where that says nothing as it should.
pub(crate) fn server(other: impl Fn(&Asked) -> Option<Reply> + Send + Sync + 'static) -> Server {
    Server::answering(move |asked| other(asked).unwrap_or_else(|| rightly(asked)))
}

/// What is right.
pub(crate) fn rightly(asked: &Asked) -> Reply {
    let document = match asked.path.as_str() {
        "/ogc" => json!({ "title": "t", "links": [
            { "href": "/ogc/conformance", "rel": "conformance", "type": "application/json" },
            { "href": "/elsewhere.html", "rel": "data", "type": "text/html" },
            { "href": "ogc/collections", "rel": "data", "type": "application/json" },
            { "href": "https://example.org/l", "rel": "license", "title": "Open Licence" },
        ]}),
        "/ogc/collections" => json!({ "links": [], "collections": [collection("zones")] }),
        "/ogc/collections/zones" => collection("zones"),
        "/ogc/collections/zones/items" => return items(asked),
        _ => return Reply::status("404 Not Found"),
    };
    Reply::json(&document)
}

pub(crate) fn collection(id: &str) -> Value {
    json!({
        "id": id,
        "title": format!("The {id}"),
        "itemType": "feature",
        "links": [
            { "href": format!("/ogc/collections/{id}/items.html"), "rel": "items", "type": "text/html" },
            { "href": format!("/ogc/collections/{id}/items"), "rel": "items", "type": "application/geo+json" },
        ],
    })
}

/// Feature `number`: a square of one degree with its low corner at that longitude.
pub(crate) fn feature(number: usize) -> Value {
    let west = (number % 90) as f64 * 2.0;
    let east = west + 1.0;
    json!({
        "type": "Feature",
        "id": number,
        "properties": { "FLD_ZONE": "AE", "n": number },
        "geometry": { "type": "Polygon", "coordinates":
            [[[west, 0], [east, 0], [east, 1], [west, 1], [west, 0]]] },
    })
}

fn items(asked: &Asked) -> Reply {
    let numbers = |name: &str| -> Option<Vec<f64>> {
        let text = asked.parameter(name)?;
        Some(
            text.split(',')
                .map(|number| number.parse().unwrap())
                .collect(),
        )
    };
    let matched: Vec<usize> = (0..COUNT)
        .filter(|number| {
            let west = *number as f64 * 2.0;
            numbers("bbox").is_none_or(|part| {
                west <= part[2] && west + 1.0 >= part[0] && part[1] <= 1.0 && part[3] >= 0.0
            })
        })
        .collect();
    let whole = |name: &str, default| numbers(name).map_or(default, |numbers| numbers[0] as usize);
    let (limit, offset) = (whole("limit", 10), whole("offset", 0));
    let page: Vec<usize> = matched.iter().copied().skip(offset).take(limit).collect();
    let mut links = vec![json!({ "href": "?f=html", "rel": "alternate", "type": "text/html" })];
    if offset + page.len() < matched.len() {
        let bbox = asked.parameter("bbox").unwrap_or("-180,-90,180,90");
        let next = format!(
            "items?limit={limit}&offset={}&bbox={bbox}",
            offset + page.len()
        );
        links.push(json!({ "href": next, "rel": "next", "type": "application/geo+json" }));
    }
    Reply::json(&json!({
        "type": "FeatureCollection",
        "numberMatched": matched.len(),
        "numberReturned": page.len(),
        "features": page.into_iter().map(feature).collect::<Vec<_>>(),
        "links": links,
    }))
}

/// A page of these features.
pub(crate) fn page(features: &[Value], links: &Value) -> Value {
    json!({ "type": "FeatureCollection", "features": features, "links": links })
}
