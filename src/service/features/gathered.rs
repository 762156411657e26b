//! Features of several boxes, each once.

use std::collections::hash_map::Entry;
use std::collections::{BTreeSet, HashMap};

use super::inquiry::Inquiry;
use super::{DegreeBox, ServedFeature};

/// Features by their ids, in the order in which they came.
#[derive(Default)]
pub(super) struct Gathered {
    positions: HashMap<String, usize>,
    features: Vec<ServedFeature>,
}

impl Gathered {
    /// Takes a feature that one box gave. That another gave it already is no matter, but it must
    /// be the same one.
    pub(super) fn add(&mut self, feature: ServedFeature) -> Result<(), String> {
        match self.positions.entry(feature.id.clone()) {
            Entry::Vacant(vacant) => {
                vacant.insert(self.features.len());
                self.features.push(feature);
                Ok(())
            }
            Entry::Occupied(there) if self.features[*there.get()] == feature => Ok(()),
            Entry::Occupied(_) => Err(format!(
                "feature {:?} came twice and not alike: it changed while it was read, or its id \
                 is not its own",
                feature.id
            )),
        }
    }

    pub(super) fn features(&self) -> &[ServedFeature] {
        &self.features
    }

    pub(super) fn all(self) -> Vec<ServedFeature> {
        self.features
    }

    /// Those that meet a box, for geometry in degrees with longitude first. That others came is
    /// remarked: the service did not look at the boxes.
    pub(super) fn within(self, boxes: &[DegreeBox], inquiry: &Inquiry<'_>) -> Vec<ServedFeature> {
        let all = self.features.len();
        let mut features = self.features;
        features.retain(|feature| {
            let meets = |geometry| boxes.iter().any(|part| part.meets(geometry, false));
            feature.geometry.as_ref().is_none_or(meets)
        });
        let outside = all - features.len();
        if outside > 0 {
            inquiry.remark(format!(
                "{outside} of {all} features that came lie outside of what was asked for and are \
                 left out: the service does not look at the box"
            ));
        }
        features
    }
}

/// The names of a layer's attributes: those that the service lists, then those that only stand
/// on features.
pub(super) fn fields(mut listed: Vec<String>, features: &[ServedFeature]) -> Vec<String> {
    let others: BTreeSet<&String> = features
        .iter()
        .flat_map(|feature| feature.attributes.keys())
        .collect();
    let others: Vec<String> = others
        .into_iter()
        .filter(|name| !listed.contains(name))
        .cloned()
        .collect();
    listed.extend(others);
    listed
}
