//! Keys in addresses: whom they are sent to, and where they do not stand.

use serde_json::json;
use sillmark::service::{Address, Answers, Cache};

use super::addresses::read_layer;
use super::connection::get;
use super::features::limits;
use super::server::{Asked, Reply, Server};

#[test]
fn a_key_that_a_server_repeats_is_neither_kept_nor_told() {
    let folder = tempfile::tempdir().unwrap();
    let said = |asked: &Asked| {
        let own = format!("/zones?sig={}", asked.parameter("sig").unwrap());
        json!({ "links": [own], "sig": "a/b=SEKRIT9", "raw": "a%2Fb%3DSEKRIT9" })
    };
    let server = Server::answering(move |asked| {
        let body = said(asked).to_string();
        Reply::whole("200 OK", &["ETag: \"a/b=SEKRIT9\""], body.as_bytes())
    });
    let url = server.at("/zones?sig=a%2Fb%3DSEKRIT9&limit=1000");
    let fetched = get(
        &url,
        Answers::FetchedAndKept(Cache::open(folder.path()).unwrap()),
        limits(),
    )
    .unwrap();
    for file in std::fs::read_dir(folder.path()).unwrap() {
        let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
        assert!(
            !text.contains("SEKRIT9") && text.contains("links"),
            "{text}"
        );
    }
    let kept = get(
        &url,
        Answers::Kept(Cache::open(folder.path()).unwrap()),
        limits(),
    )
    .unwrap();
    assert_eq!(kept, fetched);

    let server = Server::start([Reply::whole("403 No", &[], b"Invalid token: a/b=SEKRIT9")]);
    let url = server.at("/zones?sig=a%2Fb%3DSEKRIT9&limit=1000");
    let told = get(&url, Answers::Fetched, limits())
        .unwrap_err()
        .to_string();
    assert!(
        told.ends_with(
            "/zones?sig=…&limit=1000: the server answers 403 Forbidden: Invalid token: …"
        ),
        "{told}"
    );
}

#[test]
fn a_redirect_tells_no_other_host_where_it_came_from() {
    let goal = Server::start([Reply::ok(b"here")]);
    let server = Server::start([Reply::redirect(&goal.url())]);
    let url = server.at("/zones?token=SEKRIT9");
    let entry = get(&url, Answers::Fetched, limits()).unwrap();
    assert_eq!(entry.bytes, b"here");
    let seen = goal.seen().join("").to_ascii_lowercase();
    assert!(
        !seen.contains("referer") && !seen.contains("sekrit9"),
        "{seen}"
    );
}

#[test]
fn a_refusal_repeats_no_key() {
    for (text, shown) in [
        (
            "https://h:99999/a?token=SEKRIT9&f=json",
            "https://h:99999/a?token=…&f=…",
        ),
        ("https://me:SEKRIT9/x@h/a", "https://…@h/a"),
        ("https://me:SEKRIT9#x@h/a", "https://…@h/a"),
        ("https://me:SEKRIT9?x@h/a", "https://…@h/a"),
        ("https://me:SEKRIT9", "https://me:…"),
        ("ftp://h/a?token=SEKRIT9#SEKRIT9", "ftp://h/a?token=…"),
        (" ftp://me:SEKRIT9@h/a", "ftp://…@h/a"),
        ("http:/h/a?SEKRIT9", "http:/h/a?…"),
        ("https:me:SEKRIT9@h", "https:…@h"),
        ("https://h/a#x?token=SEKRIT9", "https://h/a#…"),
        (
            "https://h/{tile}/a?token=SEKRIT9",
            "https://h/{tile}/a?token=…",
        ),
    ] {
        assert!(text.contains("#x?") || Address::is_meant(text), "{text}");
        let message = read_layer(text).unwrap_err();
        assert!(
            message.contains(&format!("zones {shown:?}: ")),
            "{text}: {message}"
        );
        assert!(!message.contains("SEKRIT9"), "{message}");
    }
    let pattern = read_layer("https://h/{tile}.tif").unwrap_err();
    assert!(pattern.contains("fill in what is in braces"), "{pattern}");
}
