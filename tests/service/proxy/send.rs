//! An answer on the wire, and faults of the wire.

use std::io::{self, Write as _};
use std::net::TcpStream;
use std::thread;
use std::time::Duration;

use super::{Fault, Heard, Kind, Original};

/// Longer than the silence that the clients of these tests bear.
const STALL: Duration = Duration::from_millis(250);

/// What goes over the wire, and when; then the connection closes.
#[derive(Default)]
pub(super) struct Sending {
    before: Duration,
    pieces: Vec<Vec<u8>>,
    between: Duration,
    after: Duration,
}

impl Sending {
    fn of(bytes: Vec<u8>) -> Self {
        Self {
            pieces: vec![bytes],
            ..Self::default()
        }
    }

    pub(super) fn whole(original: &Original) -> Self {
        Self::of(bytes(original, original.body.len()))
    }

    /// Says that the client has the answer already.
    pub(super) fn not_modified(original: &Original) -> Self {
        Self::whole(&Original {
            status: "304 Not Modified".to_owned(),
            body: String::new(),
            ..original.clone()
        })
    }

    /// An answer with a fault of the wire; `None` where the fault does not apply.
    pub(super) fn faulty(fault: &Fault, heard: &Heard, original: &Original) -> Option<Self> {
        let length = original.body.len();
        let all = bytes(original, length);
        let start = all.len() - length;
        let within = |length: usize| (fault.share * length as f64) as usize;
        let off = 1 + within(length.saturating_sub(2));
        Some(match fault.kind {
            Kind::CutBeforeHeaders => Self::default(),
            Kind::CutInHeaders => Self::of(all[..within(start)].to_vec()),
            Kind::CutInBody => Self::of(all[..start + within(length)].to_vec()),
            Kind::LengthTooLong => Self::of(bytes(original, length + off)),
            Kind::LengthTooShort => Self::of(bytes(original, length.saturating_sub(off))),
            Kind::Busy => Self::of(busy(fault.choice).into_bytes()),
            Kind::RedirectToItself => Self::of(redirect(heard).into_bytes()),
            Kind::GzipCorrupt | Kind::GzipTruncated => {
                let taken = heard.header("accept-encoding")?;
                let packed = taken
                    .contains("gzip")
                    .then(|| badly_packed(original, fault))?;
                let coding = "Content-Encoding: gzip\r\n";
                let top = head_of(original, packed.len(), coding).into_bytes();
                Self::of([top, packed].concat())
            }
            Kind::Delay => Self {
                before: fault.pause,
                ..Self::of(all)
            },
            Kind::Drip => Self {
                pieces: pieces(&all, 2 + fault.choice % 10),
                between: fault.pause,
                ..Self::default()
            },
            Kind::Stall => Self {
                after: STALL,
                ..Self::of(all[..start + within(length)].to_vec())
            },
            _ => return None,
        })
    }

    pub(super) fn send(self, stream: &mut TcpStream) -> io::Result<()> {
        thread::sleep(self.before);
        for piece in self.pieces {
            stream.write_all(&piece)?;
            thread::sleep(self.between);
        }
        thread::sleep(self.after);
        Ok(())
    }
}

/// Head and body, of which the head says how long it is.
fn bytes(original: &Original, length: usize) -> Vec<u8> {
    let head = head_of(original, length, "");
    [head.as_bytes(), original.body.as_bytes()].concat()
}

fn head_of(original: &Original, length: usize, more: &str) -> String {
    let line = |name: &str, value: &Option<String>| match value {
        Some(value) => format!("{name}: {value}\r\n"),
        None => String::new(),
    };
    [
        format!("HTTP/1.1 {}\r\n", original.status),
        format!("Content-Type: {}\r\n", original.content_type),
        format!("Content-Length: {length}\r\n"),
        line("ETag", &original.etag),
        line("Content-Crs", &original.content_crs),
        format!("{more}Connection: close\r\n\r\n"),
    ]
    .concat()
}

fn busy(choice: usize) -> String {
    let status = ["429 Too Many Requests", "503 Service Unavailable"][choice % 2];
    let past = "Retry-After: Sun, 06 Nov 1994 08:49:37 GMT\r\n"; // RFC 9110, section 5.6.7
    let again = ["", "Retry-After: 0\r\n", past][choice / 2 % 3];
    format!("HTTP/1.1 {status}\r\n{again}Content-Length: 0\r\nConnection: close\r\n\r\n")
}

fn redirect(heard: &Heard) -> String {
    let to = &heard.target;
    format!(
        "HTTP/1.1 302 Found\r\nLocation: {to}\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"
    )
}

fn badly_packed(original: &Original, fault: &Fault) -> Vec<u8> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::fast());
    encoder.write_all(original.body.as_bytes()).unwrap();
    let mut packed = encoder.finish().unwrap();
    let at = (fault.share * packed.len() as f64) as usize;
    if fault.kind == Kind::GzipTruncated {
        packed.truncate(at);
    } else {
        packed[at] ^= 1 << (fault.choice % 8);
    }
    packed
}

fn pieces(all: &[u8], count: usize) -> Vec<Vec<u8>> {
    let pieces = all.chunks(all.len().div_ceil(count));
    pieces.map(<[u8]>::to_vec).collect()
}
