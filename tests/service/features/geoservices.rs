//! GeoServices REST: layers, ids, pages, formats and errors.

use geo::{Area as _, BoundingRect as _, Rect};
use serde_json::json;

use super::super::server::Reply;
use super::geoservices_double::{
    COUNT, SERVICE, chosen, error, geojson, layer, own_json, server, service, service_of,
};
use super::{all, ask, assert_says, degrees, everywhere, ids, some};

#[test]
fn every_address_on_the_way_leads_to_the_layer() {
    let server = server(|_| None);
    for behind in [
        "",
        "/",
        "#Flood Zones",
        "#flood zones",
        ":Flood Zones",
        ":3",
        "/3",
        "/3/query",
        "/3#FLOOD zones",
        "/Flood%20Zones",
    ] {
        let layer = all(&server, &format!("{SERVICE}{behind}")).unwrap();
        assert_eq!(layer.name, "Flood Zones", "{behind}");
        assert_eq!(layer.features.len(), COUNT, "{behind}");
        assert_eq!(layer.crs, "OGC:CRS84");
        assert_eq!(layer.fields, ["OBJECTID", "FLD_ZONE", "EFF_DATE"]);
        assert_eq!(layer.licence.as_deref(), Some("Public domain"));
        assert_eq!(layer.address, server.at(&format!("{SERVICE}/3")));
        assert_eq!(layer.remarks.len(), 1, "the system that it is kept in");
        assert!(
            layer.remarks[0].contains("system 3857;"),
            "{:?}",
            layer.remarks
        );
        assert_eq!(
            layer.features[0].attributes["EFF_DATE"],
            "2010-12-03T00:00:00Z"
        );
    }
}

#[test]
fn what_is_no_layer_of_features_is_refused() {
    let server = server(|_| None);
    for (behind, said) in [
        ("#Lakes", "has no layer \"Lakes\"; it has: Flood Zones (#3)"),
        ("/7", "has no layer \"7\"; it has: Flood Zones (#3)"),
        (
            "#Floods",
            "\"Floods\" is a group of layers, with no features of its own; name one of its \
             layers: Flood Zones (#3)",
        ),
        ("/1", "\"Floods\" is a group of layers"),
        ("/3#Floods", "has no layer \"Floods\""),
        ("#Notes", "has no layer \"Notes\""),
        ("/3/1", "behind the service stands \"3/1\""),
    ] {
        assert_says(all(&server, &format!("{SERVICE}{behind}")), said);
    }
    let bare = super::geoservices_double::server(|asked| {
        (asked.path == SERVICE).then(|| Reply::json(&json!({ "layers": [] })))
    });
    assert_says(service_of(&bare), "has no layers of features");
}

#[test]
fn of_layers_of_one_name_the_number_decides() {
    let server = server(|asked| {
        let mut service = service();
        let layers = service["layers"].as_array_mut().unwrap();
        layers.push(json!({ "id": 5, "name": "Flood Zones", "type": "Feature Layer" }));
        layers.push(json!({ "id": 6, "name": "Levels" }));
        layers.push(json!({ "id": 7, "name": "LEVELS" }));
        (asked.path == SERVICE).then(|| Reply::json(&service))
    });
    for (name, said) in [
        (
            "Flood Zones",
            "two layers are called \"Flood Zones\"; name one by its number: #3, #5",
        ),
        ("flood zones", "name one by its number: #3, #5"),
        (
            "levels",
            "two layers are called \"levels\"; name one by its number: #6, #7",
        ),
    ] {
        assert_says(all(&server, &format!("{SERVICE}#{name}")), said);
    }
    let layer = all(&server, &format!("{SERVICE}#3")).unwrap();
    assert_eq!(layer.features.len(), COUNT);
}

#[test]
fn an_error_repeats_no_key() {
    let server = server(|_| Some(error(498, "Invalid token: SEKRIT9.")));
    let message = all(&server, &format!("{SERVICE}?maps_key=SEKRIT9")).unwrap_err();
    assert!(message.contains("Invalid token: …."), "{message}");
    assert!(!message.contains("SEKRIT9"), "{message}");
}

#[test]
fn of_several_layers_the_one_with_the_attributes_is_meant() {
    let server = server(|asked| {
        let mut service = service();
        let layers = service["layers"].as_array_mut().unwrap();
        layers.push(json!({ "id": 5, "name": "Levels", "type": "Feature Layer" }));
        let mut other = layer();
        other["id"] = json!(5);
        other["name"] = json!("Levels");
        other["fields"] = json!([{ "name": "ELEV", "type": "esriFieldTypeDouble" }]);
        match asked.path.strip_prefix(SERVICE) {
            Some("") => Some(Reply::json(&service)),
            Some("/5") => Some(Reply::json(&other)),
            _ => None,
        }
    });
    let asked = |behind: &str, name: &str| {
        let needed = [name.to_owned()];
        ask(
            &server.at(&format!("{SERVICE}{behind}")),
            &[everywhere()],
            &[&needed],
            7,
        )
    };
    assert_eq!(asked("", "fld_zone").unwrap().name, "Flood Zones");
    assert_says(asked("", "DEPTH"), "which layer? name it behind a #");
    assert_says(service_of(&server), "it has: Flood Zones (#3), Levels (#5)");
    assert_says(
        asked("/3", "ELEV"),
        "layer \"Flood Zones\" has no attribute \"ELEV\"; it has: OBJECTID, FLD_ZONE, EFF_DATE",
    );
}

#[test]
fn all_features_of_all_boxes_come_once() {
    let server = server(|_| None);
    let boxes = [
        degrees((2.5, 0.2), (6.5, 0.4)),
        degrees((6.2, 0.2), (9.0, 0.4)),
        degrees((100.0, 0.0), (101.0, 1.0)),
    ];
    for size in [1, 3, 1000] {
        let layer = some(&server, SERVICE, &boxes, size).unwrap();
        assert_eq!(
            ids(&layer),
            ["102", "103", "104", "105"],
            "{size} at a time"
        );
        let extent = layer.features[0].geometry.as_ref().unwrap().bounding_rect();
        assert_eq!(extent, Some(Rect::new((2.0, 0.0), (3.0, 1.0))));
    }
    // Without ids that meet a box no features are asked for.
    let asked = server.seen().len();
    assert_eq!(some(&server, SERVICE, &boxes[2..], 7).unwrap().features, []);
    assert_eq!(server.seen().len(), asked + 3);
}

#[test]
fn where_geojson_is_refused_the_protocols_own_json_is_read() {
    for name in ["error", "refusal", "other format", "not said"] {
        let server = server(move |asked| {
            let mut described = layer();
            described["supportedQueryFormats"] = json!("JSON, PBF");
            match (
                asked.path.strip_prefix(SERVICE)?,
                asked.parameter("f")?,
                name,
            ) {
                ("/3", _, "not said") => Some(Reply::json(&described)),
                (_, "geojson", "error") => Some(error(400, "format not supported")),
                (_, "geojson", "refusal") => Some(Reply::status("400 Bad Request")),
                (_, "geojson", "other format") => Some(Reply::json(&own_json(&chosen(asked)))),
                (_, "geojson", _) => panic!("it does not give GeoJSON"),
                _ => None,
            }
        });
        let layer = some(&server, SERVICE, &[everywhere()], 3).unwrap();
        assert_eq!(layer.features.len(), COUNT, "{name}");
        let area = layer.features[4].geometry.as_ref().unwrap().unsigned_area();
        assert_eq!(area, 1.0, "{name}");
        assert_eq!(
            layer.features[4].attributes["EFF_DATE"],
            "2010-12-03T00:00:00Z"
        );
    }
}

#[test]
fn long_lists_of_ids_are_posted() {
    let server = server(|asked| {
        let ids: Vec<i64> = (1_000_000_000_001..=1_000_000_000_400).collect();
        let mut described = layer();
        described["maxRecordCount"] = json!(1000);
        if asked.path.ends_with("/3") {
            return Some(Reply::json(&described));
        }
        if asked.parameter("returnCountOnly").is_some() {
            return Some(Reply::json(&json!({ "count": 400 })));
        }
        if asked.parameter("returnIdsOnly").is_some() {
            return Some(Reply::json(&json!({ "objectIds": ids })));
        }
        let mut page = geojson(&[101]);
        let feature = page["features"][0].clone();
        let features = asked.parameter("objectIds")?.split(',').map(|id| {
            let mut feature = feature.clone();
            feature["properties"]["OBJECTID"] = json!(id.parse::<i64>().unwrap());
            feature
        });
        page["features"] = features.collect();
        Some(Reply::json(&page))
    });
    let layer = all(&server, &format!("{SERVICE}?token=secret")).unwrap();
    assert_eq!(layer.features.len(), 400);
    let seen = server.seen();
    let posted: Vec<&String> = seen
        .iter()
        .filter(|text| text.starts_with("POST"))
        .collect();
    assert_eq!(posted.len(), 1);
    assert!(posted[0].starts_with(&format!("POST {SERVICE}/3/query?token=secret HTTP")));
    assert!(posted[0].contains("content-type: application/x-www-form-urlencoded"));
    assert!(posted[0].contains("objectIds=1000000000001%2C1000000000002%2C"));
}

#[test]
fn the_users_parameters_go_along_and_are_not_shown() {
    let server = server(|asked| {
        assert_eq!(asked.parameter("token"), Some("secret"), "{}", asked.path);
        if asked.path.ends_with("/query") {
            assert_eq!(asked.parameter("where"), Some("FLD_ZONE = 'AE'"));
        }
        None
    });
    let asked = format!("{SERVICE}?token=secret&where=FLD_ZONE%20%3D%20'AE'&resultOffset=5");
    let layer = all(&server, &asked).unwrap();
    assert_eq!(layer.features.len(), COUNT);
    assert!(!format!("{layer:?}").contains("secret"));
    assert!(layer.remarks[0].contains("\"resultOffset\" of the address is not used"));
    let server = super::geoservices_double::server(|asked| {
        let coarser = [
            "maxAllowableOffset",
            "GEOMETRYPRECISION",
            "outStatistics",
            "skipGeometry",
        ];
        for name in coarser {
            assert_eq!(asked.parameter(name), None);
        }
        None
    });
    let layer = all(
        &server,
        &format!(
            "{SERVICE}?maxAllowableOffset=9&GEOMETRYPRECISION=0&outStatistics=x&skipGeometry=true"
        ),
    );
    let remarks = layer.unwrap().remarks.join("\n");
    for name in [
        "maxAllowableOffset",
        "GEOMETRYPRECISION",
        "outStatistics",
        "skipGeometry",
    ] {
        assert!(
            remarks.contains(&format!("{name:?} of the address is not used")),
            "{remarks}"
        );
    }
    assert!(
        !all(&server, &format!("{asked}#Lakes"))
            .unwrap_err()
            .contains("secret")
    );
}
