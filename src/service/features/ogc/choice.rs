//! Which of several collections is meant.

use reqwest::Url;

use super::collection::Collection;
use super::fields;
use crate::service::ServiceError;
use crate::service::features::inquiry::Inquiry;
use crate::service::features::needed::Needed;
use crate::service::secret::shown;

/// The collection that is meant.
pub(super) struct Chosen {
    pub(super) collection: Collection,
    /// The names of its attributes, where it was chosen by them.
    pub(super) fields: Option<Vec<String>>,
}

/// The named one, or the only one, or the only one with the needed attributes.
pub(super) async fn choose(
    inquiry: &Inquiry<'_>,
    start: &Url,
    mut all: Vec<Collection>,
    name: Option<&str>,
    needed: Needed<'_>,
) -> Result<Chosen, ServiceError> {
    let address = shown(start);
    let layers: Vec<String> = all
        .iter()
        .map(|collection| collection.described.id.clone())
        .collect();
    if let Some(name) = name {
        let exact = |one: &str, other: &str| one == other;
        let alike = |one: &str, other: &str| one.eq_ignore_ascii_case(other);
        let found = all
            .iter()
            .position(|collection| collection.described.id == name)
            .or_else(|| all.iter().position(|one| one.is_called(name, exact)))
            .or_else(|| all.iter().position(|one| one.is_called(name, alike)));
        return match found {
            Some(found) => Ok(Chosen {
                collection: all.swap_remove(found),
                fields: None,
            }),
            None => Err(ServiceError::NoLayer {
                address,
                layer: name.to_owned(),
                layers,
            }),
        };
    }
    let mut fitting = Vec::new();
    let by_fields = all.len() > 1 && !needed.0.is_empty();
    for collection in all {
        let fields = if by_fields {
            Some(fields::listed(inquiry, &collection, needed).await?)
        } else {
            None
        };
        if fields
            .as_ref()
            .is_none_or(|there| needed.lacking(there).is_none())
        {
            fitting.push(Chosen { collection, fields });
        }
    }
    match (fitting.pop(), fitting.is_empty()) {
        (Some(only), true) => Ok(only),
        _ if layers.is_empty() => Err(ServiceError::NoLayers { address }),
        _ => Err(ServiceError::WhichLayer { address, layers }),
    }
}
