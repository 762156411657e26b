//! OGC API - Features as the standards have it.

use geo::{BoundingRect as _, Rect};
use serde_json::json;

use super::super::server::Reply;
use super::ogc_double::{COUNT, collection, feature, page, rightly, server};
use super::{all, ask, assert_says, degrees, ids, some};

const ITEMS: &str = "/ogc/collections/zones/items";

#[test]
fn every_address_on_the_way_leads_to_the_layer() {
    let server = server(|_| None);
    for path in [
        "/ogc",
        "/ogc#zones",
        "/ogc#The ZONES",
        "/ogc/collections",
        "/ogc/collections#Zones",
        "/ogc/collections/zones",
        ITEMS,
        "/ogc/collections/zones/items/",
    ] {
        let layer = all(&server, path).unwrap();
        assert_eq!(layer.name, "zones", "{path}");
        assert_eq!(layer.features.len(), COUNT, "{path}");
        assert_eq!(layer.crs, "OGC:CRS84");
        assert_eq!(layer.fields, ["FLD_ZONE", "n"]);
        assert_eq!(layer.address, server.at(ITEMS));
        assert_eq!(layer.remarks, [""; 0], "{path}");
        assert!(httpdate::parse_http_date(&layer.fetched).is_ok());
    }
    let licence = all(&server, "/ogc").unwrap().licence;
    assert_eq!(
        licence.as_deref(),
        Some("Open Licence (https://example.org/l)")
    );
}

#[test]
fn all_pages_of_all_boxes_come_and_each_feature_once() {
    let server = server(|_| None);
    let boxes = [
        degrees((2.5, 0.2), (6.5, 0.4)),
        degrees((6.2, 0.2), (9.0, 0.4)),
        degrees((100.0, 0.0), (101.0, 1.0)),
    ];
    for size in [1, 2, 3, 1000] {
        let layer = some(&server, "/ogc", &boxes, size).unwrap();
        assert_eq!(ids(&layer), ["1", "2", "3", "4"], "{size} at a time");
        let extent = layer.features[0].geometry.as_ref().unwrap().bounding_rect();
        assert_eq!(extent, Some(Rect::new((2.0, 0.0), (3.0, 1.0))));
        assert_eq!(layer.features[0].attributes["FLD_ZONE"], "AE");
    }
    assert_eq!(some(&server, "/ogc", &[], 7).unwrap().features, []);
}

#[test]
fn a_server_may_give_fewer_at_a_time() {
    let server = server(|asked| {
        let limit = asked.parameter("limit")?.parse::<usize>().ok()?;
        // It says so in the link to the next page alone.
        (limit > 3).then(|| {
            let next = json!([{ "href": "items?limit=3&offset=3", "rel": "next" }]);
            let features: Vec<_> = (0..3).map(feature).collect();
            Reply::json(&page(&features, &next))
        })
    });
    let layer = all(&server, "/ogc").unwrap();
    assert_eq!(layer.features.len(), COUNT);
}

#[test]
fn of_several_layers_the_named_or_the_fitting_one_is_meant() {
    let server = server(|asked| {
        let links = |id: &str| {
            let mut described = collection(id);
            let links = described["links"].as_array_mut().unwrap();
            links.push(json!({ "href": format!("/schema/{id}"),
                "rel": "http://www.opengis.net/def/rel/ogc/1.0/schema" }));
            described
        };
        let schema = |name: &str| {
            Some(Reply::json(&json!({ "properties": {
                "shape": { "x-ogc-role": "primary-geometry" },
                name: { "type": "string" },
                "B": {},
            }})))
        };
        match asked.path.as_str() {
            "/ogc/collections" => {
                let mut maps = collection("maps");
                maps["itemType"] = json!("record");
                let all = json!([links("ponds"), links("zones"), maps, links("more")]);
                Some(Reply::json(&json!({ "collections": all })))
            }
            "/schema/ponds" => schema("POND"),
            "/schema/zones" => schema("FLD_ZONE"),
            "/schema/more" => schema("B"),
            _ => None,
        }
    });
    let needed = |name: &str| [name.to_owned(), "LEVEL".to_owned()];
    let asked = |path: &str, name: &str| {
        ask(
            &server.at(path),
            &[super::everywhere()],
            &[&needed(name)],
            7,
        )
        .map_err(|message| message.replace(&server.at(""), "HOST"))
    };
    let layer = asked("/ogc", "fld_zone").unwrap();
    assert_eq!(
        (layer.name.as_str(), layer.features.len()),
        ("zones", COUNT)
    );
    // In the order of the document, in which the server sorts them.
    assert_eq!(layer.fields, ["B", "FLD_ZONE", "n"]);
    let several = "HOST/ogc: which layer? name it behind a #, as in HOST/ogc#LAYER; it has: \
                   ponds, zones, more";
    assert_eq!(asked("/ogc", "b").unwrap_err(), several);
    assert_eq!(asked("/ogc", "DEPTH").unwrap_err(), several);
    assert_says(all(&server, "/ogc"), several);
    assert_eq!(
        asked("/ogc#lakes", "b").unwrap_err(),
        "HOST/ogc: has no layer \"lakes\"; it has: ponds, zones, more"
    );
    assert_eq!(
        asked("/ogc#zones", "DEPTH").unwrap_err(),
        format!(
            "HOST{ITEMS}: layer \"zones\" has no attribute \"DEPTH or LEVEL\"; it has: \
             B, FLD_ZONE, n"
        )
    );
    assert_says(
        all(&server, "/ogc/collections/zones#ponds"),
        "has no layer \"ponds\"; it has: zones",
    );
}

#[test]
fn attributes_are_found_on_features_where_no_list_names_them() {
    let server = server(|_| None);
    let nowhere = degrees((100.0, 50.0), (101.0, 51.0));
    let asked = |name: &str| ask(&server.at("/ogc"), &[nowhere], &[&[name.to_owned()]], 7);
    assert_eq!(asked("fld_zone").unwrap().features, []);
    assert!(asked("ELEV").unwrap_err().contains("no attribute \"ELEV\""));
}

#[test]
fn a_box_that_is_ignored_is_noticed() {
    let server = server(|asked| {
        (asked.path == ITEMS).then(|| {
            let features: Vec<_> = (0..COUNT).map(feature).collect();
            Reply::json(&page(&features, &json!([])))
        })
    });
    let layer = some(&server, "/ogc", &[degrees((2.5, 0.2), (4.5, 0.4))], 1000).unwrap();
    assert_eq!(ids(&layer), ["1", "2"]);
    assert_eq!(
        layer.remarks,
        [
            "the service says neither how many features there are nor that more follow: 10 came",
            "8 of 10 features that came lie outside of what was asked for and are left out: the \
          service does not look at the box"
        ]
    );
}

#[test]
fn the_users_parameters_go_along_and_are_not_shown() {
    let server = server(|asked| {
        assert_eq!(asked.parameter("token"), Some("secret"), "{}", asked.path);
        None
    });
    let layer = some(
        &server,
        "/ogc?token=secret&limit=2&offset=5",
        &[super::everywhere()],
        3,
    );
    let layer = layer.unwrap();
    assert_eq!(layer.features.len(), COUNT);
    assert_eq!(server.seen().len(), 2 + 4);
    let shown = format!("{layer:?}");
    assert!(!shown.contains("secret"), "{shown}");
    assert_eq!(layer.remarks.len(), 2, "{:?}", layer.remarks);
    let message = all(&server, "/ogc?token=secret#lakes").unwrap_err();
    assert!(!message.contains("secret"), "{message}");
}

#[test]
fn the_users_parameters_stay_with_their_host() {
    let other = server(|asked| {
        assert_eq!(asked.parameter("token"), None);
        None
    });
    let next = format!("{}?limit=7&offset=3", other.at(ITEMS));
    let server = server(move |asked| {
        (asked.path == ITEMS).then(|| {
            let features: Vec<_> = (0..3).map(feature).collect();
            let links = json!([{ "href": next, "rel": "next" }]);
            Reply::json(&page(&features, &links))
        })
    });
    let layer = all(&server, "/ogc?token=secret").unwrap();
    assert_eq!(layer.features.len(), COUNT);
    assert_eq!(other.seen().len(), 1);
}

#[test]
fn the_list_of_collections_may_have_pages() {
    let server = server(|asked| {
        (asked.path == "/ogc/collections").then(|| match asked.parameter("page") {
            None => Reply::json(&json!({ "collections": [collection("ponds")],
                "links": [{ "href": "?page=2", "rel": "next" }] })),
            Some("2") => Reply::json(&json!({ "collections": [collection("zones")],
                "links": [{ "href": "?page=3", "rel": "next" }] })),
            _ => Reply::json(&json!({ "collections": [],
                "links": [{ "href": "?page=2", "rel": "next" }] })),
        })
    });
    assert_says(
        all(&server, "/ogc#zones"),
        "list of collections leads back to itself",
    );
    let ended = super::ogc_double::server(|asked| {
        if asked.path != "/ogc/collections" {
            return None;
        }
        Some(match asked.parameter("page") {
            None => Reply::json(&json!({ "collections": [collection("ponds")],
                "links": [{ "href": "?page=2", "rel": "next" }] })),
            _ => rightly(asked),
        })
    });
    assert_eq!(all(&ended, "/ogc#zones").unwrap().features.len(), COUNT);
}
