//! The proxy does what it is meant to do.

use std::collections::BTreeSet;
use std::io::{Read as _, Write as _};
use std::net::TcpStream;
use std::sync::{Arc, OnceLock};

use serde_json::json;

use super::{Kind, Proxy, Schedule, Upstream};
use crate::service::features::ogc_double;
use crate::service::server::{Reply, Server};

const ITEMS: &str = "/ogc/collections/zones/items?limit=3";
const LATER: &str = "/ogc/collections/zones/items?limit=3&offset=3";

fn upstream() -> Arc<Upstream> {
    let server = ogc_double::server(|_| None);
    Arc::new(Upstream::at(&server.at("")))
}

/// All that comes back, byte by byte.
fn asked(proxy: &Proxy, target: &str) -> Vec<u8> {
    let host = proxy.address().strip_prefix("http://").unwrap();
    let mut stream = TcpStream::connect(host).unwrap();
    let head = format!("GET {target} HTTP/1.1\r\nHost: {host}\r\nAccept-Encoding: gzip\r\n\r\n");
    stream.write_all(head.as_bytes()).unwrap();
    let mut answer = Vec::new();
    // A connection that is reset gave what it gave.
    let _ = stream.read_to_end(&mut answer);
    answer
}

#[test]
fn without_faults_it_gives_what_the_server_says_with_its_own_address() {
    let address = Arc::new(OnceLock::new());
    let known = Arc::clone(&address);
    let server = Server::answering(move |_| Reply::json(&json!({ "href": known.get() })));
    address.set(server.at("/next")).unwrap();
    let proxy = Proxy::start(&Arc::new(Upstream::at(&server.at(""))), Schedule::NONE);
    let answer = String::from_utf8(asked(&proxy, "/first")).unwrap();
    assert!(answer.starts_with("HTTP/1.1 200 OK\r\n"), "{answer}");
    let body = format!("\r\n\r\n{{\"href\":\"{}/next\"}}", proxy.address());
    assert!(answer.ends_with(&body), "{answer}");
    assert_eq!(proxy.met(), []);
}

#[test]
fn a_seed_says_all() {
    let upstream = upstream();
    let mut kinds = BTreeSet::new();
    for seed in 0..40 {
        let run = || {
            let proxy = Proxy::start(&upstream, Schedule::new(seed));
            for target in [ITEMS, "/ogc", ITEMS, LATER, ITEMS, LATER] {
                asked(&proxy, target);
            }
            proxy.met()
        };
        let first = run();
        assert_eq!(first, run(), "seed {seed}");
        kinds.extend(first.into_iter().map(|(kind, _)| kind));
    }
    assert!(kinds.len() > 12, "{kinds:?}");
}

/// Each kind of fault is met, and changes the answer unless it is merely slow.
#[test]
fn a_fault_changes_the_answer() {
    let upstream = upstream();
    let tagless = |answer: Vec<u8>, proxy: &Proxy| {
        let text = String::from_utf8_lossy(&answer).replace(proxy.address(), "");
        let lines = text.lines().filter(|line| !line.starts_with("ETag"));
        lines.collect::<Vec<_>>().join("\n")
    };
    let calm = Proxy::start(&upstream, Schedule::NONE);
    let right = tagless(asked(&calm, LATER), &calm);
    let mut met = BTreeSet::new();
    for seed in 0..500 {
        let proxy = Proxy::start(&upstream, Schedule::new(seed));
        let answer = tagless(asked(&proxy, LATER), &proxy);
        let kind = proxy.met().first().map(|(kind, _)| *kind);
        match kind {
            None | Some(Kind::Delay | Kind::Drip) => assert_eq!(answer, right, "seed {seed}"),
            Some(kind) => assert_ne!(answer, right, "seed {seed}: {kind:?}"),
        }
        met.extend(kind);
    }
    assert_eq!(met, BTreeSet::from(Kind::ALL));
}
