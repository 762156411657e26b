//! Questions to a layer.

use super::layer::Layer;
use crate::service::features::DegreeBox;
use crate::service::features::inquiry::{Inquiry, Question};

/// How long an address may become before its parameters are posted: common servers take 2,000
/// characters and more (common practice, no source).
const LONGEST_ADDRESS: usize = 1800;

/// Parameters of a question, in the order in which they are sent.
pub(super) type Parameters = Vec<(&'static str, String)>;

/// A question to a layer about features.
pub(super) fn question(inquiry: &Inquiry<'_>, layer: &Layer, parameters: &Parameters) -> Question {
    let mut url = layer.url.clone();
    url.set_path(&format!("{}/query", layer.url.path()));
    let mut all = Vec::new();
    if inquiry.own.value("where").is_none() {
        all.push(("where", "1=1".to_owned()));
    }
    all.extend(parameters.iter().cloned());
    Question {
        url,
        form: None,
        accept: "application/json, application/geo+json",
    }
    .with(&all)
    .posted_where_long()
}

/// What lets through the features that meet a box.
pub(super) fn within(part: DegreeBox) -> Parameters {
    vec![
        ("geometry", part.to_string()),
        ("geometryType", "esriGeometryEnvelope".to_owned()),
        ("inSR", "4326".to_owned()),
        ("spatialRel", "esriSpatialRelIntersects".to_owned()),
    ]
}

/// What asks for features whole, in degrees.
pub(super) fn whole(format: &str) -> Parameters {
    vec![
        ("outFields", "*".to_owned()),
        ("returnGeometry", "true".to_owned()),
        ("outSR", "4326".to_owned()),
        ("f", format.to_owned()),
    ]
}

impl Question {
    /// The same with parameters in its address.
    pub(super) fn with(mut self, parameters: &[(&'static str, String)]) -> Self {
        self.url.query_pairs_mut().extend_pairs(parameters);
        self
    }

    /// The same as a form where its address is long.
    fn posted_where_long(mut self) -> Self {
        if self.url.as_str().len() <= LONGEST_ADDRESS {
            return self;
        }
        let pairs: Vec<(String, String)> = self.url.query_pairs().into_owned().collect();
        self.url.set_query(None);
        self.form = Some(pairs);
        self
    }
}
