//! A server on loopback that gives one file in parts, well or badly.

use std::io::{BufRead as _, BufReader, Write as _};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::ops::Range;
use std::sync::{Arc, Mutex};
use std::thread;

use sillmark::service::Address;
use sillmark::statement::{Place, Stated};

/// How the file is given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Manner {
    /// As RFC 9110 asks for, with a strong tag.
    Well,
    /// With a date only.
    Dated,
    /// With a weak tag, which no two parts can be put together by.
    Weak,
    /// With nothing to know it again by.
    Nameless,
    /// Whole, whatever is asked for.
    Whole,
    /// The bytes beside those that were asked for, and it says so.
    Beside,
    /// Without saying which part it is.
    Unsaid,
    /// Of a file of unknown length.
    UnknownLength,
    /// With another tag at each request, whatever the conditions.
    OtherTag,
    /// As well as it can, but from the second request on it is another file.
    Replaced,
    /// Half of the part, and then nothing.
    Cut,
    /// Half of the part, as if it were all.
    Half,
    /// A length that is none.
    Longer,
    /// Never with what is asked for.
    NotSatisfiable,
    /// Nothing at all.
    Missing,
}

pub(super) struct Server {
    at: SocketAddr,
    file: Arc<Mutex<Arc<Vec<u8>>>>,
    seen: Arc<Mutex<Vec<String>>>,
}

impl Server {
    pub(super) fn start(file: Vec<u8>, manner: Manner) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let at = listener.local_addr().unwrap();
        let seen = Arc::new(Mutex::new(Vec::new()));
        let file = Arc::new(Mutex::new(Arc::new(file)));
        let (served, noted) = (Arc::clone(&file), Arc::clone(&seen));
        // It ends with the test program.
        thread::spawn(move || {
            for stream in listener.incoming() {
                let file = Arc::clone(&served.lock().unwrap());
                let noted = Arc::clone(&noted);
                thread::spawn(move || {
                    let mut stream = stream.unwrap();
                    let request = head(&stream);
                    let number = {
                        let mut noted = noted.lock().unwrap();
                        noted.push(request.clone());
                        noted.len()
                    };
                    // Nobody has to listen to the end.
                    let _ = stream.write_all(&answer(&file, &request, manner, number));
                });
            }
        });
        Self { at, file, seen }
    }

    /// Gives another file from now on.
    pub(super) fn replace(&self, file: Vec<u8>) {
        *self.file.lock().unwrap() = Arc::new(file);
    }

    pub(super) fn url(&self) -> String {
        format!("http://{}/models/dem.tif?token=secret", self.at)
    }

    pub(super) fn address(&self) -> Address {
        let url = self.url();
        let place = Place::Option("option --dem".into());
        Address::read(&Stated::new("dem", url.as_str(), place)).unwrap()
    }

    /// The requests so far.
    pub(super) fn seen(&self) -> Vec<String> {
        self.seen.lock().unwrap().clone()
    }

    /// A message without the port that changes.
    pub(super) fn said(&self, error: &impl ToString) -> String {
        error.to_string().replace(
            &format!("http://{}/models/dem.tif?token=…", self.at),
            "ADDRESS",
        )
    }
}

fn head(stream: &TcpStream) -> String {
    let mut text = String::new();
    for line in BufReader::new(stream).lines() {
        let line = line.unwrap_or_default().to_ascii_lowercase();
        if line.is_empty() {
            break;
        }
        text.push_str(&line);
        text.push('\n');
    }
    text
}

fn header<'a>(request: &'a str, name: &str) -> Option<&'a str> {
    let mut lines = request.lines();
    lines.find_map(|line| line.strip_prefix(name)?.strip_prefix(": "))
}

const DATE: &str = "sun, 06 nov 1994 08:49:37 gmt";

fn answer(file: &[u8], request: &str, manner: Manner, number: usize) -> Vec<u8> {
    let tag = match manner {
        Manner::OtherTag => format!("\"{number}\""),
        Manner::Replaced if number > 1 => "\"second\"".to_owned(),
        Manner::Weak => "W/\"first\"".to_owned(),
        _ => format!("\"{:x}\"", sum(file)),
    };
    let same = |name: &str, own: &str| header(request, name).map(|known| known == own);
    let conditional = !matches!(manner, Manner::OtherTag | Manner::Nameless);
    if conditional {
        // A weak tag matches no other where bytes have to be the same (section 13.1.1).
        let must = same("if-match", &tag).map(|same| same && manner != Manner::Weak);
        let of_tag = (must, same("if-none-match", &tag));
        let of_date = (
            same("if-unmodified-since", DATE),
            same("if-modified-since", DATE),
        );
        let (must, must_not) = if manner == Manner::Dated {
            of_date
        } else {
            of_tag
        };
        if must == Some(false) {
            return reply("412 Precondition Failed", &[], b"");
        }
        if must_not == Some(true) {
            return reply("304 Not Modified", &[], b"");
        }
    }
    let asked = header(request, "range").and_then(|range| {
        let (first, last) = range.strip_prefix("bytes=")?.split_once('-')?;
        let (first, last): (usize, usize) = (first.parse().ok()?, last.parse().ok()?);
        (first < file.len()).then(|| first..file.len().min(last + 1))
    });
    let validator = match manner {
        Manner::Nameless => "X-Nothing: here".to_owned(),
        Manner::Dated => format!("Last-Modified: {DATE}"),
        _ => format!("ETag: {tag}"),
    };
    let Some(range) = asked else {
        return reply("416 Range Not Satisfiable", &[], b"");
    };
    let part = &file[range.clone()];
    let of = |range: Range<usize>, length: String| {
        format!(
            "Content-Range: bytes {}-{}/{length}",
            range.start,
            range.end - 1
        )
    };
    let length = file.len().to_string();
    let (said, part) = match manner {
        Manner::Missing => return reply("404 Not Found", &[], b"no such model"),
        Manner::NotSatisfiable => return reply("416 Range Not Satisfiable", &[], b""),
        Manner::Whole => return endless(),
        Manner::Beside => (of(range.start + 1..range.end + 1, length), part),
        Manner::Unsaid => ("X-Nothing: here".to_owned(), part),
        Manner::UnknownLength => (of(range, "*".to_owned()), part),
        Manner::Half => (of(range, length), &part[..part.len() / 2]),
        Manner::Longer => (of(range.clone(), (range.end - 1).to_string()), part),
        _ => (of(range, length), part),
    };
    let mut bytes = reply("206 Partial Content", &[&said, &validator], part);
    if manner == Manner::Cut {
        bytes.truncate(bytes.len() - part.len() / 2);
    }
    bytes
}

/// Tells files apart (FNV-1a).
fn sum(file: &[u8]) -> u64 {
    file.iter().fold(0xcbf2_9ce4_8422_2325, |sum, byte| {
        (sum ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

fn reply(status: &str, headers: &[&str], body: &[u8]) -> Vec<u8> {
    let mut bytes = format!("HTTP/1.1 {status}\r\nContent-Length: {}\r\n", body.len());
    for header in headers {
        bytes.push_str(header);
        bytes.push_str("\r\n");
    }
    bytes.push_str("Connection: close\r\n\r\n");
    let mut bytes = bytes.into_bytes();
    bytes.extend_from_slice(body);
    bytes
}

/// The start of a file that would take for ever.
fn endless() -> Vec<u8> {
    let mut bytes = b"HTTP/1.1 200 OK\r\nContent-Length: 99999999999\r\n\r\n".to_vec();
    bytes.extend_from_slice(&[0; 1000]);
    bytes
}
