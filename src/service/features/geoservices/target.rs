//! What an address of GeoServices REST leads to.

use percent_encoding::percent_decode_str;
use reqwest::Url;

use crate::service::ServiceError;
use crate::service::features::inquiry::unfit;

/// A service, and what its address says of a layer.
pub(super) struct Target {
    /// The service itself, without a query.
    pub(super) root: Url,
    /// The layer's number or name.
    pub(super) layer: Option<String>,
}

/// The parts of a path that name a service with layers of features.
const SERVERS: [&str; 2] = ["FeatureServer", "MapServer"];

impl Target {
    /// Whether an address is one of GeoServices REST.
    pub(super) fn is_meant(url: &Url) -> bool {
        server(url).is_some()
    }

    /// Reads `…/FeatureServer`, `…/FeatureServer/LAYER` and `…/FeatureServer/LAYER/query`.
    pub(super) fn read(url: &Url) -> Result<Self, ServiceError> {
        let parts: Vec<&str> = url.path_segments().into_iter().flatten().collect();
        let end = server(url).map_or(parts.len(), |position| position + 1);
        let behind: Vec<&str> = parts[end..]
            .iter()
            .copied()
            .filter(|part| !part.is_empty())
            .collect();
        let layer = match behind.as_slice() {
            [] => None,
            [layer] => Some(*layer),
            [layer, query] if query.eq_ignore_ascii_case("query") => Some(*layer),
            _ => {
                return Err(unfit(
                    url,
                    format!(
                        "behind the service stands {:?}, where a layer would stand",
                        behind.join("/")
                    ),
                ));
            }
        };
        let mut root = url.clone();
        root.set_query(None);
        root.set_fragment(None);
        root.set_path(&parts[..end].join("/"));
        Ok(Self {
            root,
            layer: layer.map(|part| percent_decode_str(part).decode_utf8_lossy().into_owned()),
        })
    }

    /// A layer's own address.
    pub(super) fn layer(&self, id: i64) -> Url {
        let mut url = self.root.clone();
        url.set_path(&format!("{}/{id}", self.root.path()));
        url
    }
}

fn server(url: &Url) -> Option<usize> {
    let parts = url.path_segments()?;
    let is_server = |part: &str| {
        SERVERS
            .iter()
            .any(|server| part.eq_ignore_ascii_case(server))
    };
    let parts: Vec<&str> = parts.collect();
    parts.iter().rposition(|part| is_server(part))
}
