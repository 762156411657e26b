//! Features by their object ids: those that are asked for come, each once.

use std::collections::BTreeMap;

use futures_util::{StreamExt as _, TryStreamExt as _, stream};

use super::page::Asking;
use crate::service::ServiceError;
use crate::service::features::ServedFeature;
use crate::service::secret::shown;

/// The features of these ids, which are sorted, at most so many at a time.
pub(super) async fn features(
    asking: &Asking<'_>,
    ids: &[i64],
    most: usize,
) -> Result<Vec<ServedFeature>, ServiceError> {
    let pages: Vec<Page> = stream::iter(ids.chunks(most.max(1)))
        .map(|page| whole_page(asking, page))
        .buffered(asking.inquiry.limits().at_once.max(1))
        .try_collect()
        .await?;
    let features: Vec<ServedFeature> = pages.into_iter().flat_map(BTreeMap::into_values).collect();
    if features.len() < ids.len() {
        return Err(not_whole(
            asking,
            format!(
                "{} of {} features came, though each was asked for by its id",
                features.len(),
                ids.len()
            ),
        ));
    }
    Ok(features)
}

type Page = BTreeMap<i64, ServedFeature>;

/// The features of a page. Where fewer come than were asked for, the others are asked for in
/// pages of as many as came, and in the end once by one; where so many are too much for the
/// service, in pages of half as many.
async fn whole_page(asking: &Asking<'_>, ids: &[i64]) -> Result<Page, ServiceError> {
    let mut page = Page::new();
    let mut missing = ids.to_vec();
    let mut size = ids.len();
    while !missing.is_empty() {
        let asked = missing[..size.min(missing.len())].to_vec();
        let before = page.len();
        match take(asking, &asked, &mut page).await {
            Err(error) if asked.len() > 1 && is_too_much(&error) => {
                size = asked.len() / 2;
                continue;
            }
            taken => taken?,
        }
        let came = page.len() - before;
        missing.retain(|id| !page.contains_key(id));
        if came < asked.len() && size > 1 {
            size = came.max(1);
        } else if came == 0 {
            // Not even alone: those behind it are still asked for, so that the message counts.
            missing.retain(|id| !asked.contains(id));
        }
    }
    Ok(page)
}

/// Whether fewer features at a time may do; without the network, what was too much then is not
/// there now.
const fn is_too_much(error: &ServiceError) -> bool {
    matches!(
        error,
        ServiceError::Busy { .. }
            | ServiceError::Broken { .. }
            | ServiceError::TooLarge { .. }
            | ServiceError::NotKept { .. }
    )
}

async fn take(asking: &Asking<'_>, ids: &[i64], page: &mut Page) -> Result<(), ServiceError> {
    let list: Vec<String> = ids.iter().map(i64::to_string).collect();
    let choice = vec![("objectIds", list.join(","))];
    for (id, feature) in asking.features(&choice).await? {
        if ids.binary_search(&id).is_err() {
            return Err(not_whole(
                asking,
                format!("feature {id} came, which was not asked for"),
            ));
        }
        if page.insert(id, feature).is_some() {
            return Err(not_whole(asking, format!("feature {id} came twice")));
        }
    }
    Ok(())
}

fn not_whole(asking: &Asking<'_>, problem: String) -> ServiceError {
    ServiceError::NotWhole {
        address: shown(&asking.layer.url),
        layer: asking.layer.name.clone(),
        problem,
    }
}
