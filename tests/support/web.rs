//! A web server on loopback: a layer of features and files by ranges, whole and undisturbed.

use std::io::{BufRead as _, BufReader, Write as _};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex};

use serde_json::{Value, json};

/// What a server serves.
#[derive(Default)]
pub(crate) struct Served {
    /// Features of `/collections/zones` of an OGC API (OGC 17-069r4).
    pub(crate) zones: Vec<Value>,
    /// The EPSG code of the system that they are in, east first; longitude and latitude
    /// without it.
    pub(crate) epsg: Option<u32>,
    /// The file at `/terrain.tif`.
    pub(crate) terrain: Vec<u8>,
}

/// Serves until the tests end.
pub(crate) struct Web {
    at: SocketAddr,
    sent: Arc<AtomicU64>,
    asked: Arc<Mutex<Vec<String>>>,
}

/// An answer: its status, its headers, its body.
type Answer = (&'static str, Vec<(&'static str, String)>, Vec<u8>);

impl Web {
    pub(crate) fn serve(served: Served) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let web = Self {
            at: listener.local_addr().unwrap(),
            sent: Arc::default(),
            asked: Arc::default(),
        };
        let (sent, asked) = (Arc::clone(&web.sent), Arc::clone(&web.asked));
        let served = Arc::new(served);
        std::thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                let (served, sent, asked) =
                    (Arc::clone(&served), Arc::clone(&sent), Arc::clone(&asked));
                std::thread::spawn(move || answer(stream, &served, &sent, &asked));
            }
        });
        web
    }

    pub(crate) fn address(&self, path: &str) -> String {
        format!("http://{}{path}", self.at)
    }

    /// Bytes of terrain that were sent.
    pub(crate) fn terrain_sent(&self) -> u64 {
        self.sent.load(Ordering::Relaxed)
    }

    /// What was asked for.
    pub(crate) fn asked(&self) -> Vec<String> {
        self.asked.lock().unwrap().clone()
    }
}

fn answer(mut stream: TcpStream, served: &Served, sent: &AtomicU64, asked: &Mutex<Vec<String>>) {
    let mut lines = BufReader::new(stream.try_clone().unwrap()).lines();
    while let Some(Ok(first)) = lines.next() {
        let mut range = None;
        for line in lines.by_ref().map_while(Result::ok) {
            if line.is_empty() {
                break;
            }
            if let Some((name, value)) = line.split_once(':')
                && name.eq_ignore_ascii_case("range")
            {
                range = Some(value.trim().to_owned());
            }
        }
        let target = first.split(' ').nth(1).unwrap_or("/").to_owned();
        asked.lock().unwrap().push(target.clone());
        let host = stream.local_addr().unwrap();
        let (status, headers, body) = found(&target, range.as_deref(), served, host, sent);
        let mut head = format!("HTTP/1.1 {status}\r\nContent-Length: {}\r\n", body.len());
        for (name, value) in headers {
            head.extend([name, ": ", &value, "\r\n"]);
        }
        head.push_str("\r\n");
        // Whoever asked may be gone.
        if stream.write_all(head.as_bytes()).is_err() || stream.write_all(&body).is_err() {
            return;
        }
    }
}

fn found(
    target: &str,
    range: Option<&str>,
    served: &Served,
    host: SocketAddr,
    sent: &AtomicU64,
) -> Answer {
    let path = target.split('?').next().unwrap_or(target);
    let here = |path: &str| format!("http://{host}{path}");
    let mut collection = json!({
        "id": "zones", "title": "Flood zones", "itemType": "feature",
        "links": [{"rel": "items", "type": "application/geo+json", "href": here("/collections/zones/items")}],
    });
    // Stored in another system, and given in it where it is asked for (OGC 18-058r1).
    let stored = served
        .epsg
        .map(|code| format!("http://www.opengis.net/def/crs/EPSG/0/{code}"));
    if let Some(stored) = &stored {
        collection["storageCrs"] = json!(stored);
        collection["crs"] = json!(["http://www.opengis.net/def/crs/OGC/1.3/CRS84", stored]);
    }
    match path {
        "/" => told(&json!({"title": "Test", "links": [
            {"rel": "data", "type": "application/json", "href": here("/collections")}]})),
        "/collections" => told(&json!({"collections": [collection], "links": []})),
        "/collections/zones" => told(&collection),
        "/collections/zones/items" => {
            let (status, mut headers, body) = told(&json!({
                "type": "FeatureCollection", "features": served.zones, "links": [],
                "numberMatched": served.zones.len(), "numberReturned": served.zones.len(),
            }));
            headers.extend(stored.map(|stored| ("Content-Crs", format!("<{stored}>"))));
            (status, headers, body)
        }
        "/terrain.tif" => part(range, &served.terrain, sent),
        _ => ("404 Not Found", Vec::new(), b"not here".to_vec()),
    }
}

fn told(value: &Value) -> Answer {
    let kind = ("Content-Type", "application/geo+json".to_owned());
    ("200 OK", vec![kind], value.to_string().into_bytes())
}

/// A range of bytes (RFC 9110, section 14).
fn part(range: Option<&str>, file: &[u8], sent: &AtomicU64) -> Answer {
    let asked = range.and_then(|range| range.strip_prefix("bytes=")?.split_once('-'));
    let last = file.len() - 1;
    let (first, end) = match asked {
        Some((first, end)) => (
            first.parse().unwrap(),
            end.parse::<usize>().unwrap_or(last).min(last),
        ),
        None => (0, last),
    };
    let bytes = file[first..=end].to_vec();
    sent.fetch_add(bytes.len() as u64, Ordering::Relaxed);
    let headers = vec![
        (
            "Content-Range",
            format!("bytes {first}-{end}/{}", file.len()),
        ),
        ("ETag", "\"one\"".to_owned()),
        ("Accept-Ranges", "bytes".to_owned()),
    ];
    ("206 Partial Content", headers, bytes)
}
