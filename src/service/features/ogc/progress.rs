//! Whether the pages of a box are true to what the service says of them.

use std::collections::HashSet;

use reqwest::Url;

use super::page::{Page, PageFeature};
use crate::service::cache::checksum;
use crate::service::features::ServedFeature;

/// How many pages without a feature may follow each other. Common practice, no source.
const EMPTY_PAGES: usize = 3;

/// What is known of a box's features so far.
#[derive(Default)]
pub(super) struct Progress {
    pub(super) followed: HashSet<Url>,
    ids: HashSet<String>,
    came: u64,
    pub(super) matched: Option<u64>,
    empty: usize,
}

impl Progress {
    /// Takes a page, as far as the numbers that come with it are true.
    pub(super) fn take(&mut self, page: Page) -> Result<Vec<ServedFeature>, String> {
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

    /// A feature under its id. One without is known by what it says.
    fn named(&mut self, feature: PageFeature) -> Result<ServedFeature, String> {
        let PageFeature {
            id,
            geometry,
            attributes,
        } = feature;
        let (id, told) = if let Some(id) = id {
            let told = format!("feature {id:?}");
            (id, told)
        } else {
            let says = serde_json::to_string(&attributes).unwrap_or_default();
            let digest = checksum(format!("{says} {geometry:?}").as_bytes());
            (digest, "a feature without an id".to_owned())
        };
        if !self.ids.insert(id.clone()) {
            return Err(format!(
                "{told} came twice, so that another may be missing: it changed while it was \
                 read, or its pages overlap"
            ));
        }
        Ok(ServedFeature {
            id,
            geometry,
            attributes,
        })
    }

    pub(super) fn ended(&self) -> Result<(), String> {
        match self.matched {
            Some(matched) if matched != self.came => Err(format!(
                "{} of {matched} features came, and no further page",
                self.came
            )),
            _ => Ok(()),
        }
    }
}
