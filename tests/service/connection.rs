//! One run's way to a service: kept answers, no network, and bounds over all requests.

use std::time::Duration;

use serde_json::json;
use sillmark::service::{
    Answers, Cache, Connection, Entry, Limits, Request, ServiceError, Validators, features_blocking,
};

use super::features::{layer, limits};
use super::server::{Reply, Server};

fn cache(folder: &tempfile::TempDir) -> Cache {
    Cache::open(folder.path()).unwrap()
}

pub(super) fn get(url: &str, answers: Answers, limits: Limits) -> Result<Entry, ServiceError> {
    let address = layer(url).address;
    let request = Request {
        url: address.url().clone(),
        form: None,
        accept: "application/json",
        known: Validators::default(),
    };
    let connection = Connection::open(&address, answers, limits)?;
    blocking(connection.get(&request))
}

fn blocking<T>(work: impl Future<Output = T>) -> T {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    runtime.block_on(work)
}

#[test]
fn what_still_holds_is_not_sent_again() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::answering(|asked| match asked.before {
        0 => Reply::whole("200 OK", &["ETag: \"a\"", "Content-Crs: <x>"], b"one"),
        1 => Reply::status("304 Not Modified"),
        _ => Reply::whole("200 OK", &["ETag: \"b\""], b"two"),
    });
    let ask = || {
        get(
            &server.url(),
            Answers::FetchedAndKept(cache(&folder)),
            limits(),
        )
        .unwrap()
    };
    let first = ask();
    assert_eq!(first.bytes, b"one");
    std::thread::sleep(Duration::from_millis(1100)); // a date has whole seconds
    let confirmed = ask();
    assert_eq!(confirmed.bytes, b"one");
    assert_eq!(confirmed.content_crs.as_deref(), Some("<x>"));
    assert_ne!(confirmed.date, first.date);
    let kept = get(&server.url(), Answers::Kept(cache(&folder)), limits()).unwrap();
    assert_eq!(kept, confirmed);
    let second = ask();
    assert_eq!(second.bytes, b"two");
    let seen = server.seen();
    assert!(!seen[0].contains("if-none-match"));
    assert!(seen[1].contains("if-none-match: \"a\"") && seen[2].contains("if-none-match: \"a\""));
}

#[test]
fn a_damaged_answer_is_fetched_anew() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::start([Reply::whole("200 OK", &["ETag: \"a\""], b"one")]);
    let ask = || {
        get(
            &server.url(),
            Answers::FetchedAndKept(cache(&folder)),
            limits(),
        )
        .unwrap()
    };
    ask();
    let file = std::fs::read_dir(folder.path())
        .unwrap()
        .next()
        .unwrap()
        .unwrap();
    std::fs::write(file.path(), "nothing of the kind").unwrap();
    assert_eq!(ask().bytes, b"one");
    assert!(!server.seen()[1].contains("if-none-match"));
}

#[test]
fn nothing_changed_where_nothing_was_is_no_answer() {
    let server = Server::start([Reply::status("304 Not Modified")]);
    let error = get(&server.url(), Answers::Fetched, limits()).unwrap_err();
    assert!(error.to_string().contains("nothing was at hand"), "{error}");
}

#[test]
fn without_the_network_nobody_is_asked() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::start([Reply::ok(b"one")]);
    let kept = || get(&server.url(), Answers::Kept(cache(&folder)), limits());
    assert_eq!(
        kept().unwrap_err().to_string(),
        format!(
            "{}: no answer is kept: answers are kept for exactly the places that were asked for; \
             fetch it once without --offline, or make a file that serves many places with \
             sillmark collect",
            server.url()
        )
    );
    assert_eq!(server.seen().len(), 0);
    get(
        &server.url(),
        Answers::FetchedAndKept(cache(&folder)),
        limits(),
    )
    .unwrap();
    assert_eq!(kept().unwrap().bytes, b"one");
    assert_eq!(server.seen().len(), 1);
}

/// A layer is the same without the network, also where the service refused some of the ways that
/// were tried.
#[test]
fn a_layer_that_was_fetched_once_is_there_without_the_network() {
    use super::features::geoservices_double::{self, SERVICE, error};
    use super::features::ogc_double;
    let geoservices = geoservices_double::server(|asked| {
        (asked.parameter("f") == Some("geojson")).then(|| error(400, "no"))
    });
    let ogc = ogc_double::server(|_| None);
    let everywhere = [super::features::everywhere()];
    let zone = ["FLD_ZONE".to_owned()];
    for url in [geoservices.at(SERVICE), ogc.at("/ogc?token=secret")] {
        let folder = tempfile::tempdir().unwrap();
        let layer = layer(&url);
        let ask = |answers| {
            let limits = Limits {
                page: 3,
                ..limits()
            };
            let connection = Connection::open(&layer.address, answers, limits)?;
            features_blocking(&connection, &layer, &everywhere, &[&zone])
        };
        let fetched = ask(Answers::FetchedAndKept(cache(&folder))).unwrap();
        let seen = geoservices.seen().len() + ogc.seen().len();
        assert_eq!(ask(Answers::Kept(cache(&folder))).unwrap(), fetched);
        assert_eq!(geoservices.seen().len() + ogc.seen().len(), seen);
        for file in std::fs::read_dir(folder.path()).unwrap() {
            let text = std::fs::read_to_string(file.unwrap().path()).unwrap();
            assert!(!text.contains("secret"), "{text}");
        }
    }
}

#[test]
fn an_answer_that_cannot_be_read_is_not_kept() {
    let folder = tempfile::tempdir().unwrap();
    let server = Server::start([Reply::ok(b"<html>")]);
    let layer = layer(&server.url());
    let answers = Answers::FetchedAndKept(cache(&folder));
    let connection = Connection::open(&layer.address, answers, limits()).unwrap();
    features_blocking(&connection, &layer, &[], &[]).unwrap_err();
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn an_answer_that_cannot_be_written_is_an_error() {
    let folder = tempfile::tempdir().unwrap();
    let cache = cache(&folder);
    drop(folder);
    let server = Server::start([Reply::ok(b"one")]);
    let error = get(&server.url(), Answers::FetchedAndKept(cache), limits()).unwrap_err();
    assert!(matches!(error, ServiceError::CannotKeep { .. }), "{error}");
}

/// Asks for one thing after the other until that is too much.
fn until_too_much(server: &Server, limits: Limits) -> (usize, String) {
    let address = layer(&server.url()).address;
    let connection = Connection::open(&address, Answers::Fetched, limits).unwrap();
    let request = Request {
        url: address.url().clone(),
        form: None,
        accept: "application/json",
        known: Validators::default(),
    };
    blocking(async {
        for count in 0.. {
            if let Err(error) = connection.get(&request).await {
                return (count, error.to_string().replace(&server.url(), "ADDRESS"));
            }
        }
        unreachable!()
    })
}

#[test]
fn requests_bytes_and_time_are_bounded_over_all() {
    let server = Server::start([Reply::ok(&[b' '; 1000])]);
    let few = Limits {
        requests: 3,
        ..limits()
    };
    assert_eq!(
        until_too_much(&server, few),
        (
            3,
            "ADDRESS: given up after 3 requests, the most that one run may take".to_owned()
        )
    );
    let small = Limits {
        all_bytes: 4500,
        ..limits()
    };
    assert_eq!(
        until_too_much(&server, small),
        (
            4,
            "ADDRESS: given up after 4500 bytes, the most that one run may take".to_owned()
        )
    );
    let short = Limits {
        whole: Duration::from_millis(400),
        requests: u64::MAX,
        ..limits()
    };
    let (count, message) = until_too_much(&server, short);
    assert!(count > 0);
    assert_eq!(
        message,
        "ADDRESS: given up after 0.4 s, the most that one run may take"
    );
    // Tries count too, and the time goes on while a server keeps silent.
    let busy = Server::start([Reply::status("503 Service Unavailable")]);
    let two = Limits {
        requests: 2,
        ..limits()
    };
    assert!(until_too_much(&busy, two).1.contains("2 requests"));
    let silent = Server::start([Reply::Drip(Vec::new(), Duration::from_secs(1))]);
    let short = Limits {
        whole: Duration::from_millis(300),
        ..limits()
    };
    assert!(until_too_much(&silent, short).1.contains("0.3 s"));
}

#[test]
fn so_many_requests_are_under_way_at_once() {
    use std::sync::atomic::{AtomicUsize, Ordering};
    static NOW: AtomicUsize = AtomicUsize::new(0);
    static MOST: AtomicUsize = AtomicUsize::new(0);
    let server = Server::answering(|_| {
        let now = NOW.fetch_add(1, Ordering::SeqCst) + 1;
        MOST.fetch_max(now, Ordering::SeqCst);
        std::thread::sleep(Duration::from_millis(30));
        NOW.fetch_sub(1, Ordering::SeqCst);
        Reply::json(&json!({}))
    });
    let address = layer(&server.url()).address;
    let limits = Limits {
        at_once: 3,
        ..limits()
    };
    let connection = Connection::open(&address, Answers::Fetched, limits).unwrap();
    let request = Request {
        url: address.url().clone(),
        form: None,
        accept: "application/json",
        known: Validators::default(),
    };
    let all = (0..12).map(|_| connection.get(&request));
    for outcome in blocking(futures_util::future::join_all(all)) {
        outcome.unwrap();
    }
    assert_eq!(MOST.load(Ordering::SeqCst), 3);
}
