//! What stands behind the proxy.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash as _, Hasher as _};
use std::io::{Read as _, Write as _};
use std::net::TcpStream;
use std::sync::{Arc, Mutex};

use super::Heard;

/// An answer before anything is done to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Original {
    /// Such as `200 OK`.
    pub(super) status: String,
    pub(super) content_type: String,
    /// `Content-Crs` of OGC API - Features - Part 2.
    pub(super) content_crs: Option<String>,
    pub(super) etag: Option<String>,
    pub(super) body: String,
}

impl Original {
    /// With a tag to be known again by, also where the server gives none.
    fn tagged(self) -> Self {
        let mut hasher = DefaultHasher::new();
        self.body.hash(&mut hasher);
        let own = format!("\"{:x}\"", hasher.finish());
        Self {
            etag: self.etag.or(Some(own)),
            ..self
        }
    }
}

/// What stands for the server's own address in links, until the proxy puts its own there.
pub(super) const OWN_ADDRESS: &str = "http://own-address.invalid";

/// A server whose answers are remembered: each question is put to it once.
pub(crate) struct Upstream {
    address: String,
    known: Mutex<HashMap<String, Arc<Original>>>,
}

impl Upstream {
    /// The server at an address.
    pub(crate) fn at(address: &str) -> Self {
        Self {
            address: address.trim_end_matches('/').to_owned(),
            known: Mutex::default(),
        }
    }

    pub(super) fn answer(&self, heard: &Heard) -> Arc<Original> {
        let mut known = self.known.lock().unwrap();
        let answer = known.entry(heard.question());
        Arc::clone(answer.or_insert_with(|| Arc::new(asked(&self.address, heard).tagged())))
    }
}

/// Passes a question on by HTTP/1.0, whose answers end with the connection.
fn asked(address: &str, heard: &Heard) -> Original {
    let host = address.strip_prefix("http://").expect("plain HTTP");
    let mut stream = TcpStream::connect(host).expect("the server runs");
    let line = |name| match heard.header(name) {
        Some(value) => format!("{name}: {value}\r\n"),
        None => String::new(),
    };
    let question = [
        format!(
            "{} {} HTTP/1.0\r\nHost: {host}\r\n",
            heard.method, heard.target
        ),
        format!("Content-Length: {}\r\n", heard.body.len()),
        line("accept"),
        line("content-type"),
        format!("\r\n{}", heard.body),
    ];
    stream.write_all(question.concat().as_bytes()).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    let (top, body) = answer.split_once("\r\n\r\n").expect("a head");
    let (status, headers) = top.split_once("\r\n").expect("a line of status");
    let header = |wanted: &str| {
        let mut pairs = headers.lines().filter_map(|line| line.split_once(": "));
        pairs.find_map(|(name, value)| name.eq_ignore_ascii_case(wanted).then(|| value.to_owned()))
    };
    assert_eq!(header("transfer-encoding"), None, "HTTP/1.0 has none");
    Original {
        status: status.split_once(' ').expect("a status").1.to_owned(),
        content_type: header("content-type").unwrap_or_default(),
        content_crs: header("content-crs"),
        etag: header("etag"),
        body: body.replace(address, OWN_ADDRESS),
    }
}
