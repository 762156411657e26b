//! How many features meet a box, and which.

use serde::Deserialize;

use super::answer;
use super::layer::Layer;
use super::query;
use crate::service::ServiceError;
use crate::service::features::DegreeBox;
use crate::service::features::inquiry::{Inquiry, is_not_served};
use crate::service::secret::shown;

/// What a service says of the features that meet a box.
pub(super) struct Met {
    /// How many there are.
    pub(super) count: usize,
    /// Their object ids; `None` where the service does not give them.
    pub(super) ids: Option<Vec<i64>>,
}

#[derive(Deserialize)]
struct Count {
    count: usize,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Ids {
    object_ids: Option<Vec<i64>>,
}

pub(super) async fn within(
    inquiry: &Inquiry<'_>,
    layer: &Layer,
    part: DegreeBox,
) -> Result<Met, ServiceError> {
    let count = count(inquiry, layer, part).await?;
    if count == 0 {
        let ids = Some(Vec::new());
        return Ok(Met { count, ids });
    }
    let mut parameters = query::within(part);
    parameters.push(("returnIdsOnly", "true".to_owned()));
    parameters.push(("f", "json".to_owned()));
    let question = query::question(inquiry, layer, &parameters);
    let ids = match inquiry.ask(question, answer::read::<Ids>).await {
        Ok(told) => told.value.object_ids,
        Err(error) if is_not_served(&error) => None,
        Err(error) => return Err(error),
    };
    let Some(mut ids) = ids else {
        return Ok(Met { count, ids: None });
    };
    ids.sort_unstable();
    ids.dedup();
    if ids.len() != count {
        return Err(ServiceError::NotWhole {
            address: shown(&layer.url),
            layer: layer.name.clone(),
            problem: format!(
                "{} different object ids came where the service counts {count}",
                ids.len()
            ),
        });
    }
    Ok(Met {
        count,
        ids: Some(ids),
    })
}

async fn count(
    inquiry: &Inquiry<'_>,
    layer: &Layer,
    part: DegreeBox,
) -> Result<usize, ServiceError> {
    let mut parameters = query::within(part);
    parameters.push(("returnCountOnly", "true".to_owned()));
    parameters.push(("f", "json".to_owned()));
    let question = query::question(inquiry, layer, &parameters);
    let told = inquiry.ask(question, answer::read::<Count>).await?;
    Ok(told.value.count)
}
