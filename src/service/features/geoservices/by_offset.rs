//! Features of a box by their position, where a service gives no list of ids.

use std::collections::BTreeMap;

use super::page::Asking;
use super::query;
use crate::service::ServiceError;
use crate::service::features::{DegreeBox, ServedFeature};
use crate::service::secret::shown;

/// The features that meet a box, so many at a time in the order of their object ids, until there
/// are as many as the service counts.
pub(super) async fn features(
    asking: &Asking<'_>,
    part: DegreeBox,
    count: usize,
    most: usize,
) -> Result<Vec<ServedFeature>, ServiceError> {
    let not_whole = |problem| ServiceError::NotWhole {
        address: shown(&asking.layer.url),
        layer: asking.layer.name.clone(),
        problem,
    };
    let Some(id_field) = &asking.layer.id_field else {
        return Err(not_whole(
            "it gives neither object ids nor says which attribute holds them".to_owned(),
        ));
    };
    let mut all = BTreeMap::new();
    while all.len() < count {
        let mut choice = query::within(part);
        // An offset alone is ignored by some services, and all comes again.
        choice.push(("resultOffset", all.len().to_string()));
        choice.push(("resultRecordCount", most.max(1).to_string()));
        choice.push(("orderByFields", id_field.clone()));
        let page = asking.features(&choice).await?;
        if page.is_empty() {
            break;
        }
        for (id, feature) in page {
            if all.insert(id, feature).is_some() {
                return Err(not_whole(format!("feature {id} came twice")));
            }
        }
    }
    if all.len() == count {
        return Ok(all.into_values().collect());
    }
    Err(not_whole(format!(
        "{} features came where the service counts {count}",
        all.len()
    )))
}
