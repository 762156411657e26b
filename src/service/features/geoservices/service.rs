//! The layers of a service, and which of them is meant.

use serde::Deserialize;

use super::answer;
use super::choice::Choice;
use super::layer::{self, Layer};
use super::target::Target;
use crate::service::ServiceError;
use crate::service::features::inquiry::{Inquiry, Question};
use crate::service::features::needed::Needed;
use crate::service::secret::shown;

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
    parent_layer_id: Option<i64>,
}

impl Listed {
    pub(super) fn holds_features(&self) -> bool {
        let kind = self.kind.as_deref();
        kind.is_none_or(|kind| kind.eq_ignore_ascii_case("Feature Layer")) && !self.is_group()
    }

    /// A group has layers, and no features of its own.
    pub(super) fn is_group(&self) -> bool {
        let kind = self.kind.as_deref();
        kind.is_some_and(|kind| kind.eq_ignore_ascii_case("Group Layer"))
            || self
                .sub_layer_ids
                .as_ref()
                .is_some_and(|ids| !ids.is_empty())
    }

    pub(super) fn is_part_of(&self, group: &Self) -> bool {
        let listed = group.sub_layer_ids.as_ref();
        self.parent_layer_id == Some(group.id) || listed.is_some_and(|ids| ids.contains(&self.id))
    }

    /// Its name with its number, by either of which it can be named.
    pub(super) fn told(&self) -> String {
        format!("{} (#{})", self.name, self.id)
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
    let features = all.iter().filter(|listed| listed.holds_features());
    let layers: Vec<String> = features.map(Listed::told).collect();
    let address = shown(&target.root);
    let choice = Choice {
        all: &all,
        address: &address,
    };
    let mut fitting = Vec::new();
    for listed in choice.meant(target.layer.as_deref(), name)? {
        let layer = layer::ask(inquiry, target, listed).await?;
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
