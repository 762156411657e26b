//! The layers of a service, and which of them is meant.

use serde::Deserialize;

use super::answer;
use super::layer::{self, Layer};
use super::target::Target;
use crate::service::ServiceError;
use crate::service::address::shown;
use crate::service::features::inquiry::{Inquiry, Question};
use crate::service::features::needed::Needed;

/// What a service says of itself.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Told {
    #[serde(default)]
    layers: Vec<Listed>,
    copyright_text: Option<String>,
}

/// A layer in the list of a service.
#[derive(Clone, Deserialize)]
#[serde(rename_all = "camelCase")]
pub(super) struct Listed {
    pub(super) id: i64,
    pub(super) name: String,
    #[serde(rename = "type")]
    kind: Option<String>,
    sub_layer_ids: Option<Vec<i64>>,
}

impl Listed {
    /// A group has layers, and no features of its own.
    fn holds_features(&self) -> bool {
        let kind = self.kind.as_deref();
        kind.is_none_or(|kind| kind.eq_ignore_ascii_case("Feature Layer"))
            && self.sub_layer_ids.as_ref().is_none_or(Vec::is_empty)
    }
}

/// The layer that is meant: the one that the address leads to or that the user names, by name or
/// by number, or the only one, or the only one with the needed attributes.
pub(super) async fn find(
    inquiry: &Inquiry<'_>,
    target: &Target,
    name: Option<&str>,
    needed: Needed<'_>,
) -> Result<Layer, ServiceError> {
    let question = Question {
        url: target.root.clone(),
        form: None,
        accept: "application/json",
    }
    .with(&[("f", "json".to_owned())]);
    let told: Told = inquiry.ask(question, answer::read).await?.value;
    let all: Vec<Listed> = told.layers;
    let features = || all.iter().filter(|listed| listed.holds_features());
    let layers: Vec<String> = features().map(|listed| listed.name.clone()).collect();
    let address = shown(&target.root);
    let mut fitting = Vec::new();
    for listed in meant(&all, target, name, &layers, &address)? {
        let layer = layer::ask(inquiry, target, &listed).await?;
        fitting.push(layer);
    }
    if fitting.len() > 1 && !needed.0.is_empty() {
        fitting.retain(|layer| needed.lacking(&layer.names()).is_none());
    }
    match (fitting.pop(), fitting.is_empty()) {
        (Some(mut only), true) => {
            needed.check(&only.names(), &shown(&only.url), &only.name)?;
            let service = told.copyright_text.filter(|text| !text.trim().is_empty());
            only.licence = only.licence.or(service);
            Ok(only)
        }
        _ if layers.is_empty() => Err(ServiceError::NoLayers { address }),
        _ => Err(ServiceError::WhichLayer { address, layers }),
    }
}

/// The layers that may be meant.
fn meant(
    all: &[Listed],
    target: &Target,
    name: Option<&str>,
    layers: &[String],
    address: &str,
) -> Result<Vec<Listed>, ServiceError> {
    let with_features = || all.iter().filter(|listed| listed.holds_features());
    let unknown = |name: &str| ServiceError::NoLayer {
        address: address.to_owned(),
        layer: name.to_owned(),
        layers: layers.to_vec(),
    };
    let in_path = match &target.layer {
        Some(text) => Some(called(all, text).ok_or_else(|| unknown(text))?),
        None => None,
    };
    let by_name = match name {
        Some(text) => Some(called(all, text).ok_or_else(|| unknown(text))?),
        None => None,
    };
    match (in_path, by_name) {
        (Some(one), Some(other)) if one.id != other.id => Err(unknown(&other.name)),
        (Some(one), _) | (None, Some(one)) if one.holds_features() => Ok(vec![one.clone()]),
        (Some(group), _) | (None, Some(group)) => Err(unknown(&group.name)),
        (None, None) => Ok(with_features().cloned().collect()),
    }
}

/// The layer of a name; of a number where none has the name.
fn called<'all>(all: &'all [Listed], name: &str) -> Option<&'all Listed> {
    // A group may have the name of one of its layers.
    let first = |fits: &dyn Fn(&Listed) -> bool| {
        let mut fitting = all.iter().filter(|listed| fits(listed));
        fitting
            .clone()
            .find(|listed| listed.holds_features())
            .or_else(|| fitting.next())
    };
    first(&|listed| listed.name == name)
        .or_else(|| first(&|listed| listed.name.eq_ignore_ascii_case(name)))
        .or_else(|| {
            let number: i64 = name.parse().ok()?;
            first(&|listed| listed.id == number)
        })
}
