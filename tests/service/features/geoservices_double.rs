//! A server of GeoServices REST on loopback: the forms of its answers are those of a real one
//! (Koop core 10.4, and a service of the National Flood Hazard Layer for groups and nulls from
//! memory); its features are unit squares in a row along the equator.

use serde_json::{Value, json};

use sillmark::service::ServedLayer;

use super::super::server::{Asked, Reply, Server};
use super::all;

pub(crate) const SERVICE: &str = "/rest/services/flood/FeatureServer";

/// How many features there are, with the object ids 101 to 110.
pub(crate) const COUNT: usize = 10;

/// A server that answers as `other` says, and where that says nothing as it should.
pub(crate) fn server(other: impl Fn(&Asked) -> Option<Reply> + Send + Sync + 'static) -> Server {
    Server::answering(move |asked| other(asked).unwrap_or_else(|| rightly(asked)))
}

pub(crate) fn rightly(asked: &Asked) -> Reply {
    let document = match asked.path.strip_prefix(SERVICE) {
        Some("") => service(),
        Some("/3") => layer(),
        Some("/3/query") => return query(asked),
        _ => return error(404, "no such thing"),
    };
    assert_eq!(asked.parameter("f"), Some("json"), "{}", asked.path);
    Reply::json(&document)
}

pub(crate) fn service() -> Value {
    json!({
        "copyrightText": "Public domain",
        "layers": [
            { "id": 1, "name": "Floods", "type": "Group Layer", "subLayerIds": [3] },
            { "id": 3, "name": "Flood Zones", "type": "Feature Layer", "subLayerIds": null },
        ],
        "tables": [{ "id": 9, "name": "Notes" }],
    })
}

pub(crate) fn layer() -> Value {
    json!({
        "id": 3,
        "name": "Flood Zones",
        "type": "Feature Layer",
        "copyrightText": "",
        "objectIdField": "OBJECTID",
        "maxRecordCount": 4,
        "supportedQueryFormats": "JSON, geoJSON, PBF",
        "extent": { "spatialReference": { "wkid": 102_100, "latestWkid": 3857 } },
        "fields": [
            { "name": "OBJECTID", "type": "esriFieldTypeOID" },
            { "name": "FLD_ZONE", "type": "esriFieldTypeString" },
            { "name": "EFF_DATE", "type": "esriFieldTypeDate" },
        ],
    })
}

/// An error, as it comes with status 200.
pub(crate) fn error(code: i64, message: &str) -> Reply {
    Reply::json(&json!({ "error": { "code": code, "message": message, "details": ["why"] } }))
}

/// The object ids that a question chooses.
pub(crate) fn chosen(asked: &Asked) -> Vec<i64> {
    let numbers = |name: &str| -> Option<Vec<f64>> {
        let text = asked.parameter(name)?;
        Some(
            text.split(',')
                .map(|number| number.parse().unwrap())
                .collect(),
        )
    };
    if let Some(ids) = numbers("objectIds") {
        return ids.into_iter().map(|id| id as i64).collect();
    }
    let part = numbers("geometry").expect("ids or a box");
    assert_eq!(
        asked.parameter("geometryType"),
        Some("esriGeometryEnvelope")
    );
    assert_eq!(asked.parameter("inSR"), Some("4326"));
    assert_eq!(
        asked.parameter("spatialRel"),
        Some("esriSpatialRelIntersects")
    );
    (101..=110_i64)
        .filter(|id| {
            let west = (id - 101) as f64 * 2.0;
            west <= part[2] && west + 1.0 >= part[0] && part[1] <= 1.0 && part[3] >= 0.0
        })
        .collect()
}

fn query(asked: &Asked) -> Reply {
    let mut ids = chosen(asked);
    assert!(asked.parameter("where").is_some());
    if asked.parameter("returnCountOnly") == Some("true") {
        return Reply::json(&json!({ "count": ids.len() }));
    }
    if asked.parameter("returnIdsOnly") == Some("true") {
        return Reply::json(&json!({ "objectIdFieldName": "OBJECTID", "objectIds": ids }));
    }
    assert_eq!(asked.parameter("outFields"), Some("*"));
    assert_eq!(asked.parameter("outSR"), Some("4326"));
    if let (Some(offset), Some(count)) = (
        asked.parameter("resultOffset"),
        asked.parameter("resultRecordCount"),
    ) {
        assert_eq!(asked.parameter("orderByFields"), Some("OBJECTID"));
        let (offset, count): (usize, usize) = (offset.parse().unwrap(), count.parse().unwrap());
        ids = ids.into_iter().skip(offset).take(count).collect();
    }
    ids.truncate(4);
    Reply::json(&match asked.parameter("f") {
        Some("geojson") => geojson(&ids),
        Some("json") => own_json(&ids),
        other => panic!("the format {other:?}"),
    })
}

pub(crate) fn geojson(ids: &[i64]) -> Value {
    let features = ids.iter().map(|id| {
        let (west, east) = ((id - 101) * 2, (id - 101) * 2 + 1);
        json!({
            "type": "Feature",
            "id": id,
            "properties": { "OBJECTID": id, "FLD_ZONE": "AE", "EFF_DATE": 1_291_334_400_000_i64 },
            "geometry": { "type": "Polygon", "coordinates":
                [[[west, 0], [east, 0], [east, 1], [west, 1], [west, 0]]] },
        })
    });
    json!({ "type": "FeatureCollection", "features": features.collect::<Vec<_>>() })
}

pub(crate) fn own_json(ids: &[i64]) -> Value {
    let features = ids.iter().map(|id| {
        let (west, east) = ((id - 101) * 2, (id - 101) * 2 + 1);
        json!({
            "attributes": { "OBJECTID": id, "FLD_ZONE": "AE", "EFF_DATE": 1_291_334_400_000_i64 },
            "geometry": { "rings":
                [[[west, 0], [west, 1], [east, 1], [east, 0], [west, 0]]] },
        })
    });
    json!({
        "objectIdFieldName": "OBJECTID",
        "spatialReference": { "wkid": 4326, "latestWkid": 4326 },
        "features": features.collect::<Vec<_>>(),
    })
}

/// What a question about features is answered by `other`.
pub(crate) fn answering(
    other: impl Fn(&Asked, &[i64]) -> Option<Reply> + Send + Sync + 'static,
) -> Server {
    server(move |asked| {
        let is_about_features = asked.path.ends_with("/query")
            && asked.parameter("returnCountOnly").is_none()
            && asked.parameter("returnIdsOnly").is_none();
        if !is_about_features {
            return None;
        }
        other(asked, &chosen(asked))
    })
}

/// All that its address gives.
pub(crate) fn service_of(server: &Server) -> Result<ServedLayer, String> {
    all(server, SERVICE)
}
