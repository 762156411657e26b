//! A request as it was heard.

use std::io::{BufRead as _, BufReader, Read as _};
use std::net::TcpStream;

use reqwest::Url;

/// What a client asks.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub(super) struct Heard {
    pub(super) method: String,
    /// Path and query.
    pub(super) target: String,
    headers: Vec<(String, String)>,
    pub(super) body: String,
}

impl Heard {
    /// Reads a request; `None` where the client says none.
    pub(super) fn read(stream: &TcpStream) -> Option<Self> {
        let mut reader = BufReader::new(stream);
        let mut line = String::new();
        reader.read_line(&mut line).ok()?;
        let mut words = line.split_whitespace().map(str::to_owned);
        let (method, target) = (words.next()?, words.next()?);
        let mut headers = Vec::new();
        loop {
            let mut line = String::new();
            reader.read_line(&mut line).ok()?;
            let Some((name, value)) = line.split_once(':') else {
                break;
            };
            headers.push((name.to_ascii_lowercase(), value.trim().to_owned()));
        }
        let mut heard = Self {
            method,
            target,
            headers,
            body: String::new(),
        };
        let length = heard
            .header("content-length")
            .map_or(0, |text| text.parse().unwrap());
        reader.take(length).read_to_string(&mut heard.body).ok()?;
        Some(heard)
    }

    pub(super) fn header(&self, name: &str) -> Option<&str> {
        let found = self.headers.iter().find(|(other, _)| other == name);
        found.map(|(_, value)| value.as_str())
    }

    /// The same question for an earlier page, where this one asks for a later one.
    pub(super) fn earlier_page(&self) -> Option<Self> {
        let (path, query) = self.target.split_once('?').unwrap_or((&self.target, ""));
        let (query, body) = (earlier(query), earlier(&self.body));
        if query.is_none() && body.is_none() {
            return None;
        }
        Some(Self {
            target: query.map_or_else(|| self.target.clone(), |query| format!("{path}?{query}")),
            body: body.unwrap_or_else(|| self.body.clone()),
            ..self.clone()
        })
    }

    /// What tells one question from another, whoever asks and by whatever port.
    pub(super) fn question(&self) -> String {
        let accept = self.header("accept").unwrap_or_default();
        [&self.method, &self.target, accept, &self.body].join(" ")
    }
}

/// Parameters with those of an earlier page; `None` where they are of the first one.
fn earlier(parameters: &str) -> Option<String> {
    let mut url = Url::parse(&format!("http://h/?{parameters}")).unwrap();
    let pairs: Vec<(String, String)> = url.query_pairs().into_owned().collect();
    let changed = pairs
        .iter()
        .any(|(name, value)| moved(name, value).is_some());
    url.query_pairs_mut()
        .clear()
        .extend_pairs(pairs.into_iter().map(|(name, value)| {
            let value = moved(&name, &value).unwrap_or(value);
            (name, value)
        }));
    url.query().filter(|_| changed).map(str::to_owned)
}

/// What chooses a page, moved: to the first, and a list of ids by as many as it has.
fn moved(name: &str, value: &str) -> Option<String> {
    match name {
        "offset" | "resultOffset" => (value != "0").then(|| "0".to_owned()),
        "objectIds" => {
            let ids: Vec<usize> = value.split(',').map(|id| id.parse().unwrap()).collect();
            let back = ids
                .iter()
                .map(|id| id.checked_sub(ids.len()).filter(|id| *id > 0));
            let back: Option<Vec<String>> = back.map(|id| Some(id?.to_string())).collect();
            Some(back?.join(","))
        }
        _ => None,
    }
}
