//! One request: answered, tried again, or ended in a clear error.

use std::io::Write as _;
use std::time::{Duration, Instant};

use sillmark::service::{Address, Answer, Fetcher, Limits, Request, ServiceError, Validators};
use sillmark::statement::{Place, Stated};

use super::server::{Reply, Server};

/// Limits that end a test in time.
const LIMITS: Limits = Limits {
    connect: Duration::from_secs(2),
    silence: Duration::from_secs(2),
    answer: Duration::from_secs(4),
    bytes: 1 << 20,
    retries: 3,
    pause: Duration::from_millis(5),
    longest_pause: Duration::from_millis(50),
    redirects: 3,
    requests: 1000,
    all_bytes: 1 << 24,
    whole: Duration::from_secs(20),
    at_once: 4,
    page: 1000,
};

fn request(url: &str) -> Request {
    Request {
        url: address(url).url().clone(),
        form: None,
        accept: "application/json",
        known: Validators::default(),
    }
}

fn address(url: &str) -> Address {
    let stated = Stated::new("zones", url, Place::Option("option --zones".into()));
    Address::read(&stated).unwrap()
}

fn fetch_within(request: &Request, limits: Limits) -> Result<Answer, ServiceError> {
    let fetcher = Fetcher::new(&address(request.url.as_str()), limits)?;
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    runtime.block_on(fetcher.fetch(request))
}

fn fetch(server: &Server) -> Result<Answer, ServiceError> {
    fetch_within(&request(&server.url()), LIMITS)
}

fn body(answer: Result<Answer, ServiceError>) -> String {
    match answer.unwrap() {
        Answer::Body { bytes, .. } => String::from_utf8(bytes).unwrap(),
        Answer::NotModified => panic!("a body was expected"),
    }
}

/// The message of an error, without the port that changes.
fn said(server: &Server, answer: Result<Answer, ServiceError>) -> String {
    let error = answer.unwrap_err().to_string();
    error.replace(&server.url(), "ADDRESS")
}

#[test]
fn an_answer_comes_with_what_the_server_says_of_it() {
    let headers = [
        "Content-Type: application/geo+json",
        "Content-Crs: <http://www.opengis.net/def/crs/EPSG/0/4326>",
        "ETag: \"a1\"",
        "Last-Modified: Sun, 06 Nov 1994 08:49:37 GMT",
    ];
    let server = Server::start([Reply::whole("200 OK", &headers, b"{}")]);
    assert_eq!(
        fetch(&server).unwrap(),
        Answer::Body {
            bytes: b"{}".to_vec(),
            content_type: Some("application/geo+json".to_owned()),
            content_crs: Some("<http://www.opengis.net/def/crs/EPSG/0/4326>".to_owned()),
            address: server.url(),
            validators: Validators {
                etag: Some("\"a1\"".to_owned()),
                last_modified: Some("Sun, 06 Nov 1994 08:49:37 GMT".to_owned()),
            },
        }
    );
}

#[test]
fn what_is_at_hand_is_asked_about() {
    let server = Server::start([Reply::status("304 Not Modified")]);
    let mut asked = request(&server.url());
    asked.known.etag = Some("\"a1\"".to_owned());
    assert_eq!(fetch_within(&asked, LIMITS).unwrap(), Answer::NotModified);
    assert!(server.seen()[0].contains("if-none-match: \"a1\""));
}

#[test]
fn a_long_question_is_posted() {
    let server = Server::start([Reply::ok(b"{}")]);
    let mut asked = request(&server.url());
    asked.form = Some(vec![("where".to_owned(), "a = 'b&c'".to_owned())]);
    fetch_within(&asked, LIMITS).unwrap();
    let seen = server.seen();
    assert!(seen[0].starts_with("POST /zones"), "{seen:?}");
    assert!(seen[0].ends_with("where=a+%3D+%27b%26c%27"), "{seen:?}");
}

#[test]
fn busy_servers_and_broken_connections_are_tried_again() {
    for (name, bad) in [
        ("503", Reply::status("503 Service Unavailable")),
        (
            "429",
            Reply::whole("429 Too Many Requests", &["Retry-After: 0"], b""),
        ),
        ("500", Reply::status("500 Internal Server Error")),
        ("cut", Reply::cut(b"{\"a\":")),
        ("nothing", Reply::Nothing),
        ("no HTTP", Reply::Bytes(b"hello there\r\n\r\n".to_vec())),
    ] {
        let server = Server::start([bad.clone(), bad, Reply::ok(b"{}")]);
        assert_eq!(body(fetch(&server)), "{}", "{name}");
        assert_eq!(server.seen().len(), 3, "{name}");
    }
}

#[test]
fn they_are_not_tried_for_ever() {
    let server = Server::start([Reply::status("503 Service Unavailable")]);
    assert_eq!(
        said(&server, fetch(&server)),
        "ADDRESS: the server answers 503 Service Unavailable (tried 4 times)"
    );
    let server = Server::start([Reply::cut(b"{")]);
    let message = said(&server, fetch(&server));
    assert!(
        message.starts_with("ADDRESS: ") && message.ends_with("(tried 4 times)"),
        "{message}"
    );
    assert_eq!(server.seen().len(), 4);
}

#[test]
fn a_refusal_is_final_and_told() {
    let told = Reply::whole(
        "404 Not Found",
        &[],
        b"no such\n\tcollection: zonez\x1b[31m",
    );
    let server = Server::start([told]);
    assert_eq!(
        said(&server, fetch(&server)),
        "ADDRESS: the server answers 404 Not Found: no such collection: zonez [31m"
    );
    assert_eq!(server.seen().len(), 1);
}

#[test]
fn an_endless_answer_is_given_up() {
    let head = b"HTTP/1.1 200 OK\r\nContent-Type: application/json\r\n\r\n[";
    let server = Server::start([Reply::Endless(head.to_vec())]);
    assert_eq!(
        said(&server, fetch(&server)),
        "ADDRESS: the answer is larger than 1 MiB"
    );
    assert_eq!(server.seen().len(), 1);
}

#[test]
fn a_slow_answer_is_given_up() {
    let head = b"HTTP/1.1 200 OK\r\nContent-Length: 5000\r\n\r\n".to_vec();
    let server = Server::start([Reply::Drip(head, Duration::from_millis(40))]);
    let limits = Limits {
        answer: Duration::from_millis(300),
        retries: 1,
        ..LIMITS
    };
    let began = Instant::now();
    assert_eq!(
        said(&server, fetch_within(&request(&server.url()), limits)),
        "ADDRESS: no whole answer within 0.3 s (tried 2 times)"
    );
    assert!(began.elapsed() < Duration::from_secs(5));
}

fn gzip(bytes: &[u8]) -> Vec<u8> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(bytes).unwrap();
    encoder.finish().unwrap()
}

#[test]
fn packed_answers_are_unpacked_and_damaged_ones_noticed() {
    let headers = ["Content-Encoding: gzip"];
    let packed = gzip(b"{\"type\":\"FeatureCollection\"}");
    let server = Server::start([Reply::whole("200 OK", &headers, &packed)]);
    assert_eq!(body(fetch(&server)), "{\"type\":\"FeatureCollection\"}");

    let mut damaged = packed.clone();
    let middle = damaged.len() / 2;
    damaged[middle] ^= 0xff;
    let short = &packed[..packed.len() - 6];
    for bad in [damaged.as_slice(), short] {
        let server = Server::start([
            Reply::whole("200 OK", &headers, bad),
            Reply::whole("200 OK", &headers, &packed),
        ]);
        assert_eq!(body(fetch(&server)), "{\"type\":\"FeatureCollection\"}");
        assert_eq!(server.seen().len(), 2);
    }
}

#[test]
fn what_unpacks_to_too_much_is_given_up() {
    let bomb = gzip(&vec![b' '; 16 << 20]);
    assert!(bomb.len() < 1 << 17);
    let server = Server::start([Reply::whole("200 OK", &["Content-Encoding: gzip"], &bomb)]);
    assert_eq!(
        said(&server, fetch(&server)),
        "ADDRESS: the answer is larger than 1 MiB"
    );
}

#[test]
fn redirects_are_followed_where_they_may_lead() {
    let goal = Server::start([Reply::ok(b"here")]);
    let server = Server::start([Reply::redirect(&goal.url())]);
    assert_eq!(body(fetch(&server)), "here");

    let server = Server::start([Reply::redirect("file:///etc/hostname")]);
    assert_eq!(
        said(&server, fetch(&server)),
        "ADDRESS: it leads to file:///etc/hostname, which is not followed"
    );
    let server = Server::start([Reply::redirect("/zones")]);
    assert_eq!(
        said(&server, fetch(&server)),
        "ADDRESS: it leads to ADDRESS, one redirect too many"
    );
    assert_eq!(server.seen().len(), 4);
}

#[test]
fn who_asks_to_be_left_alone_is() {
    let headers = ["Retry-After: 100800"];
    let server = Server::start([Reply::whole("429 Too Many Requests", &headers, b"")]);
    let fetcher = Fetcher::new(&address(&server.url()), LIMITS).unwrap();
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .unwrap();
    for _ in 0..2 {
        let asked = request(&server.url());
        assert_eq!(
            said(&server, runtime.block_on(fetcher.fetch(&asked))),
            "ADDRESS: the server answers 429 Too Many Requests and asks to be left alone for \
             28 h (tried once)"
        );
    }
    assert_eq!(server.seen().len(), 1);
}

#[test]
fn of_a_page_its_title_is_told() {
    let page = b"<!DOCTYPE html><html><head><title>Gone &amp; away</title></head><body>x</body>";
    let server = Server::start([Reply::whole("410 Gone", &[], page)]);
    assert_eq!(
        said(&server, fetch(&server)),
        "ADDRESS: the server answers 410 Gone: Gone & away"
    );
}
