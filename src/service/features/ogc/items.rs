//! All features of a collection that meet one box, page after page.

use reqwest::Url;

use super::collection::Collection;
use super::crs::{CRS84, Crs};
use super::links;
use super::page::{self, Page};
use super::progress::Progress;
use crate::service::ServiceError;
use crate::service::features::inquiry::{Inquiry, Told, unfit};
use crate::service::features::{DegreeBox, ServedFeature};
use crate::service::secret::shown;

/// Why the features of a box are not there.
pub(super) enum Failed {
    /// They come in another system than was asked for.
    OtherSystem(String),
    Service(ServiceError),
}

impl From<ServiceError> for Failed {
    fn from(error: ServiceError) -> Self {
        Self::Service(error)
    }
}

/// The features that meet a box.
pub(super) struct Met {
    pub(super) features: Vec<ServedFeature>,
    /// Whether the service says that these are all: by their number, or by a last page behind
    /// others.
    pub(super) is_told_whole: bool,
}

/// The features that meet a box.
pub(super) async fn within(
    inquiry: &Inquiry<'_>,
    collection: &Collection,
    part: DegreeBox,
    crs: &Crs,
) -> Result<Met, Failed> {
    let limit = inquiry.limits().page;
    let first = address(collection, part, crs, limit)?;
    let mut features = Vec::new();
    let mut progress = Progress::default();
    let mut url = first.clone();
    loop {
        if !progress.followed.insert(url.clone()) {
            return Err(unfit(&url, "its pages lead back to one that was read already").into());
        }
        let told = page::ask(inquiry, url.clone(), crs.axes()).await?;
        check_system(&told, crs, &url)?;
        let next = match links::find(&told.value.links, &["next"]) {
            Some(link) => Some(links::follow(&told.base, link)?),
            None => None,
        };
        let not_whole = |problem| ServiceError::NotWhole {
            address: shown(&url),
            layer: collection.described.id.clone(),
            problem,
        };
        let page = progress.take(told.value).map_err(not_whole)?;
        features.extend(page);
        if let Some(next) = next {
            url = next;
            continue;
        }
        progress.ended().map_err(not_whole)?;
        let is_told_whole = progress.matched.is_some() || progress.followed.len() > 1;
        if !is_told_whole && features.len() == limit {
            look_beyond(inquiry, collection, &first, crs).await?;
        }
        return Ok(Met {
            features,
            is_told_whole,
        });
    }
}

fn address(
    collection: &Collection,
    part: DegreeBox,
    crs: &Crs,
    limit: usize,
) -> Result<Url, ServiceError> {
    let mut url = collection.items()?;
    let mut parameters = vec![("bbox", part.to_string()), ("limit", limit.to_string())];
    // What is meant without it, said where the service knows the parameter.
    if let Some(degrees) = collection.systems.iter().find(|crs| crs.uri == CRS84) {
        parameters.push(("bbox-crs", degrees.uri.clone()));
    }
    if !crs.is_crs84() {
        parameters.push(("crs", crs.uri.clone()));
    }
    page::set(&mut url, &parameters);
    Ok(url)
}

fn check_system(told: &Told<Page>, asked: &Crs, url: &Url) -> Result<(), Failed> {
    let Some(named) = &told.content_crs else {
        return if asked.is_crs84() {
            Ok(())
        } else {
            let problem = "does not say which system it answers in";
            Err(Failed::OtherSystem(problem.to_owned()))
        };
    };
    match Crs::read(named) {
        Some(said) if said.code == asked.code => Ok(()),
        Some(said) if said.is_crs84() && asked.is_crs84() => Ok(()),
        _ if asked.is_crs84() => Err(unfit(
            url,
            format!("it answers in the coordinate reference system {named:?}, not in CRS84"),
        )
        .into()),
        _ => Err(Failed::OtherSystem(format!("answers in {named:?}"))),
    }
}

/// A page that is exactly full, with no next one and no count, may be all or not: one feature
/// more is asked for.
async fn look_beyond(
    inquiry: &Inquiry<'_>,
    collection: &Collection,
    first: &Url,
    crs: &Crs,
) -> Result<(), ServiceError> {
    let limit = inquiry.limits().page;
    let mut url = first.clone();
    page::set(&mut url, &[("limit", (limit + 1).to_string())]);
    let page = page::ask(inquiry, url.clone(), crs.axes()).await?.value;
    if page.features.len() > limit || links::find(&page.links, &["next"]).is_some() {
        return Err(ServiceError::NotWhole {
            address: shown(&url),
            layer: collection.described.id.clone(),
            problem: format!("more than {limit} features are there, but no page follows"),
        });
    }
    Ok(())
}
