//! All features of a collection that meet one box, page after page.

use std::collections::{HashMap, HashSet};

use reqwest::Url;
use sha2::{Digest as _, Sha256};

use super::collection::Collection;
use super::crs::{CRS84, Crs};
use super::links;
use super::page::{self, Page, PageFeature};
use crate::service::ServiceError;
use crate::service::address::shown;
use crate::service::features::inquiry::{Inquiry, Told, unfit};
use crate::service::features::{DegreeBox, ServedFeature};

/// How many pages without a feature may follow each other. Common practice, no source.
const EMPTY_PAGES: usize = 3;

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

/// What is known of a box's features so far.
#[derive(Default)]
struct Progress {
    followed: HashSet<Url>,
    ids: HashSet<String>,
    alike: HashMap<String, usize>,
    came: u64,
    matched: Option<u64>,
    empty: usize,
}

/// The features that meet a box.
pub(super) async fn within(
    inquiry: &Inquiry<'_>,
    collection: &Collection,
    part: DegreeBox,
    crs: &Crs,
) -> Result<Vec<ServedFeature>, Failed> {
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
        let is_full = features.len() == limit && progress.matched.is_none();
        if is_full && progress.followed.len() == 1 {
            look_beyond(inquiry, collection, &first, crs).await?;
        }
        return Ok(features);
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

impl Progress {
    /// Takes a page, as far as the numbers that come with it are true.
    fn take(&mut self, page: Page) -> Result<Vec<ServedFeature>, String> {
        let count = page.features.len() as u64;
        if let Some(returned) = page.number_returned.filter(|returned| *returned != count) {
            return Err(format!(
                "{count} features came on a page of which the service says {returned}"
            ));
        }
        match (self.matched, page.number_matched) {
            (Some(before), Some(now)) if before != now => {
                return Err(format!(
                    "the service says {before} features, and on a later page {now}: it changed \
                     while it was read"
                ));
            }
            (_, Some(now)) => self.matched = Some(now),
            (_, None) => {}
        }
        self.came += count;
        if let Some(matched) = self.matched.filter(|matched| self.came > *matched) {
            return Err(format!(
                "{} features came where the service says {matched}",
                self.came
            ));
        }
        self.empty = if count == 0 { self.empty + 1 } else { 0 };
        if self.empty > EMPTY_PAGES {
            return Err(format!(
                "{} pages without a feature follow each other",
                self.empty
            ));
        }
        page.features
            .into_iter()
            .map(|feature| self.named(feature))
            .collect()
    }

    /// A feature under its id. One without is known by what it says, and by how many that say
    /// the same came before it.
    fn named(&mut self, feature: PageFeature) -> Result<ServedFeature, String> {
        let PageFeature {
            id,
            geometry,
            attributes,
        } = feature;
        let id = if let Some(id) = id {
            if !self.ids.insert(id.clone()) {
                return Err(format!(
                    "feature {id:?} came twice, so that another may be missing: it changed while \
                     it was read, or its pages overlap"
                ));
            }
            id
        } else {
            let says = serde_json::to_string(&attributes).unwrap_or_default();
            let content = format!("{says} {geometry:?}");
            let digest: String = Sha256::digest(content)
                .iter()
                .take(12)
                .map(|byte| format!("{byte:02x}"))
                .collect();
            let before = self.alike.entry(digest.clone()).or_default();
            *before += 1;
            format!("{digest}-{before}")
        };
        Ok(ServedFeature {
            id,
            geometry,
            attributes,
        })
    }

    fn ended(&self) -> Result<(), String> {
        match self.matched {
            Some(matched) if matched != self.came => Err(format!(
                "{} of {matched} features came, and no further page",
                self.came
            )),
            _ => Ok(()),
        }
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
    inquiry.remark(format!(
        "{limit} features came where {limit} were asked for at a time; the service says neither \
         how many there are nor that a page follows"
    ));
    Ok(())
}
