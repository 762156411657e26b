//! GeoServices REST from services that lose features, or answer about something else.

use serde_json::{Value, json};

use super::super::server::{Asked, Reply};
use super::geoservices_double::{
    COUNT, SERVICE, answering, error, geojson, layer, own_json, server, service, service_of,
};
use super::{all, assert_says, degrees, everywhere, some};

/// Some services answer about their only layer whatever number is asked for.
#[test]
fn another_layers_answer_is_noticed() {
    let listed = |asked: &Asked| {
        let mut service = service();
        let layers = service["layers"].as_array_mut().unwrap();
        layers.push(json!({ "id": 5, "name": "Levels", "type": "Feature Layer" }));
        match asked.path.strip_prefix(SERVICE) {
            Some("") => Some(Reply::json(&service)),
            Some("/5") => Some(Reply::json(&layer())),
            _ => None,
        }
    };
    let server = server(listed);
    assert_says(
        all(&server, &format!("{SERVICE}#Levels")),
        "asked about layer 5 \"Levels\", it answers about layer 3 \"Flood Zones\"",
    );
}

#[test]
fn without_ids_pages_go_by_position() {
    for refused in [true, false] {
        let server = server(move |asked| {
            asked.parameter("returnIdsOnly")?;
            Some(if refused {
                error(400, "no ids")
            } else {
                Reply::json(&json!({ "objectIdFieldName": "OBJECTID", "objectIds": null }))
            })
        });
        let boxes = [degrees((0.0, 0.0), (9.0, 1.0)), everywhere()];
        for size in [3, 1000] {
            let layer = some(&server, SERVICE, &boxes, size).unwrap();
            assert_eq!(layer.features.len(), COUNT);
        }
    }
    // The offset is ignored, and all comes from the start again.
    let again = server(|asked| {
        if asked.parameter("returnIdsOnly").is_some() {
            return Some(Reply::json(&json!({ "objectIds": null })));
        }
        asked.parameter("resultOffset")?;
        Some(Reply::json(&geojson(&[101, 102, 103, 104])))
    });
    assert_says(service_of(&again), "feature 101 came twice");
    let short = server(|asked| {
        if asked.parameter("returnIdsOnly").is_some() {
            return Some(Reply::json(&json!({ "objectIds": null })));
        }
        let offset: usize = asked.parameter("resultOffset")?.parse().unwrap();
        let ids = [101, 102, 103];
        Some(Reply::json(&geojson(&ids[offset.min(3)..])))
    });
    assert_says(
        service_of(&short),
        "3 features came where the service counts 10",
    );
}

#[test]
fn counts_and_ids_have_to_agree() {
    let ids_are = |ids: Value| {
        server(move |asked| {
            asked.parameter("returnIdsOnly")?;
            Some(Reply::json(&json!({ "objectIds": ids })))
        })
    };
    assert_says(
        service_of(&ids_are(json!([101, 102]))),
        "2 different object ids came where the service counts 10",
    );
    assert_says(
        service_of(&ids_are(json!([101, 101]))),
        "1 different object ids came",
    );
}

#[test]
fn what_is_asked_for_comes_each_once() {
    // One is missing from its page and comes alone.
    let late = answering(|_, ids| {
        let shown: Vec<i64> = ids
            .iter()
            .copied()
            .filter(|id| *id != 103 || ids.len() == 1)
            .collect();
        Some(Reply::json(&geojson(&shown)))
    });
    assert_eq!(service_of(&late).unwrap().features.len(), COUNT);
    // One never comes.
    let never = answering(|_, ids| {
        let shown: Vec<i64> = ids.iter().copied().filter(|id| *id != 103).collect();
        Some(Reply::json(&geojson(&shown)))
    });
    assert_says(
        service_of(&never),
        "did not come whole: 9 of 10 features came, though each was asked for by its id",
    );
    // Fewer at a time than it says, with and without a word of it.
    let few = answering(|_, ids| {
        let mut page = geojson(&ids[..ids.len().min(2)]);
        page["exceededTransferLimit"] = json!(ids.len() > 2);
        Some(Reply::json(&page))
    });
    assert_eq!(service_of(&few).unwrap().features.len(), COUNT);
    let other = answering(|_, _| Some(Reply::json(&geojson(&[110]))));
    assert_says(
        service_of(&other),
        "feature 110 came, which was not asked for",
    );
    let twice = answering(|_, ids| Some(Reply::json(&geojson(&[ids[0], ids[0]]))));
    assert_says(service_of(&twice), "feature 101 came twice");
    let nameless = answering(|_, ids| {
        let mut page = own_json(ids);
        page["features"][0]["attributes"] = json!({});
        Some(Reply::json(&page))
    });
    assert_says(
        service_of(&nameless),
        "a feature comes without its object id",
    );
}

#[test]
fn where_a_page_is_too_much_half_of_it_is_asked_for() {
    let at_once = |most: usize, otherwise: fn() -> Reply| {
        answering(move |_, ids| (ids.len() > most).then(otherwise))
    };
    let busy: fn() -> Reply = || error(504, "it takes too long");
    let broken: fn() -> Reply = || Reply::cut(b"{");
    let large: fn() -> Reply = || Reply::ok(&vec![b' '; (1 << 22) + 1]);
    for otherwise in [busy, broken, large] {
        for most in [1, 2, 3] {
            let layer = service_of(&at_once(most, otherwise)).unwrap();
            assert_eq!(layer.features.len(), COUNT);
        }
    }
    // Not even one comes.
    let message = service_of(&at_once(0, busy)).unwrap_err();
    assert!(
        message.contains("the server answers error 504"),
        "{message}"
    );
    let message = service_of(&at_once(0, large)).unwrap_err();
    assert!(message.contains("larger than 4 MiB"), "{message}");
}

#[test]
fn an_error_with_status_200_is_one() {
    for (code, said) in [
        (400, "the server answers error 400: bad; why"),
        (
            498,
            "the server answers error 498: bad; why (it wants a valid token, as in",
        ),
        (
            503,
            "the server answers error 503: bad; why (tried 3 times)",
        ),
    ] {
        let server = server(move |asked| {
            asked
                .parameter("returnCountOnly")
                .map(|_| error(code, "bad"))
        });
        assert_says(service_of(&server), said);
    }
    // It is busy twice, then not.
    let server = server(|asked| (asked.before < 2).then(|| error(429, "too many requests")));
    assert_eq!(service_of(&server).unwrap().features.len(), COUNT);
}
