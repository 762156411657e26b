//! A server on loopback that does what it is told, well or badly.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

use reqwest::Url;

/// What a server does with a connection.
#[derive(Clone, Debug)]
pub(crate) enum Reply {
    /// Sends these bytes and closes.
    Bytes(Vec<u8>),
    /// Sends these bytes, then one more every so often, for ten seconds at most.
    Drip(Vec<u8>, Duration),
    /// Sends these bytes, then more until nobody takes them.
    Endless(Vec<u8>),
    /// Closes without a word.
    Nothing,
}

impl Reply {
    /// A whole answer with more header lines.
    pub(crate) fn whole(status: &str, headers: &[&str], body: &[u8]) -> Self {
        let mut bytes = format!("HTTP/1.1 {status}\r\nContent-Length: {}\r\n", body.len());
        for header in headers {
            bytes.push_str(header);
            bytes.push_str("\r\n");
        }
        bytes.push_str("Connection: close\r\n\r\n");
        let mut bytes = bytes.into_bytes();
        bytes.extend_from_slice(body);
        Self::Bytes(bytes)
    }

    pub(crate) fn ok(body: &[u8]) -> Self {
        Self::whole("200 OK", &[], body)
    }

    /// A whole answer in JSON.
    pub(crate) fn json(value: &serde_json::Value) -> Self {
        let headers = ["Content-Type: application/json"];
        Self::whole("200 OK", &headers, value.to_string().as_bytes())
    }

    pub(crate) fn status(status: &str) -> Self {
        Self::whole(status, &[], b"")
    }

    pub(crate) fn redirect(to: &str) -> Self {
        Self::whole("302 Found", &[&format!("Location: {to}")], b"")
    }

    /// An answer that says it is longer than it is.
    pub(crate) fn cut(body: &[u8]) -> Self {
        let head = format!(
            "HTTP/1.1 200 OK\r\nContent-Length: {}\r\n\r\n",
            body.len() + 90
        );
        Self::Bytes([head.as_bytes(), body].concat())
    }
}

/// A server on loopback.
pub(crate) struct Server {
    at: SocketAddr,
    seen: Arc<Mutex<Vec<String>>>,
}

/// A request, taken apart.
pub(crate) struct Asked {
    pub(crate) path: String,
    /// The parameters of the address and of a form.
    parameters: Vec<(String, String)>,
    /// How many came before it.
    pub(crate) before: usize,
}

impl Asked {
    pub(crate) fn parameter(&self, name: &str) -> Option<&str> {
        let found = self.parameters.iter().find(|(there, _)| there == name);
        found.map(|(_, value)| value.as_str())
    }

    fn read(text: &str, before: usize) -> Self {
        let target = text.split(' ').nth(1).unwrap_or("/");
        let mut url = Url::parse(&format!("http://h{target}")).unwrap();
        let mut parameters: Vec<_> = url.query_pairs().into_owned().collect();
        if text.starts_with("POST") {
            url.set_query(text.lines().last());
            parameters.extend(url.query_pairs().into_owned());
        }
        Self {
            path: url.path().to_owned(),
            parameters,
            before,
        }
    }
}

impl Server {
    /// A server that gives one reply after the other, the last one again and again.
    pub(crate) fn start(replies: impl Into<Vec<Reply>>) -> Self {
        let replies = replies.into();
        Self::answering(move |asked| replies[asked.before.min(replies.len() - 1)].clone())
    }

    /// A server that looks at what it is asked.
    pub(crate) fn answering(reply: impl Fn(&Asked) -> Reply + Send + Sync + 'static) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let at = listener.local_addr().unwrap();
        let seen = Arc::new(Mutex::new(Vec::new()));
        let (reply, noted) = (Arc::new(reply), Arc::clone(&seen));
        // It ends with the test program.
        thread::spawn(move || {
            for stream in listener.incoming() {
                let (reply, noted) = (Arc::clone(&reply), Arc::clone(&noted));
                thread::spawn(move || {
                    let mut stream = stream.unwrap();
                    let text = request(&stream);
                    let before = {
                        let mut noted = noted.lock().unwrap();
                        noted.push(text.clone());
                        noted.len() - 1
                    };
                    // Nobody has to listen to the end.
                    let _ = answer(&mut stream, &reply(&Asked::read(&text, before)));
                });
            }
        });
        Self { at, seen }
    }

    pub(crate) fn url(&self) -> String {
        self.at("/zones")
    }

    /// The address of something that it serves.
    pub(crate) fn at(&self, path: &str) -> String {
        format!("http://{}{path}", self.at)
    }

    /// The requests so far, head and body.
    pub(crate) fn seen(&self) -> Vec<String> {
        self.seen.lock().unwrap().clone()
    }
}

fn request(stream: &TcpStream) -> String {
    let mut reader = BufReader::new(stream);
    let mut text = String::new();
    let mut length = 0;
    loop {
        let mut line = String::new();
        if reader.read_line(&mut line).unwrap_or(0) == 0 || line == "\r\n" {
            break;
        }
        if let Some(value) = line.to_ascii_lowercase().strip_prefix("content-length:") {
            length = value.trim().parse().unwrap();
        }
        text.push_str(&line);
    }
    let mut body = vec![0; length];
    reader.read_exact(&mut body).unwrap();
    text + &String::from_utf8(body).unwrap()
}

fn answer(stream: &mut TcpStream, reply: &Reply) -> std::io::Result<()> {
    match reply {
        Reply::Bytes(bytes) => stream.write_all(bytes),
        Reply::Drip(bytes, pause) => {
            stream.write_all(bytes)?;
            for _ in 0..(10_000 / pause.as_millis()) {
                thread::sleep(*pause);
                stream.write_all(b" ")?;
            }
            Ok(())
        }
        Reply::Endless(bytes) => {
            stream.write_all(bytes)?;
            loop {
                stream.write_all(&[b' '; 1 << 12])?;
            }
        }
        Reply::Nothing => Ok(()),
    }
}
