//! Features of several boxes, each once.

use std::collections::hash_map::Entry;
use std::collections::{BTreeSet, HashMap};

use geo::Geometry;

use super::inquiry::Inquiry;
use super::{DegreeBox, ServedFeature};
use crate::service::ServiceError;

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

    /// That each has a shape: of one without, nobody can say where the service takes it to be.
    pub(super) fn check_shapes(&self) -> Result<(), String> {
        let bare = self.features.iter().filter(|one| one.geometry.is_none());
        match bare.count() {
            0 => Ok(()),
            1 => Err("1 feature came without a shape".to_owned()),
            count => Err(format!("{count} features came without a shape")),
        }
    }

    pub(super) fn features(&self) -> &[ServedFeature] {
        &self.features
    }

    pub(super) fn all(self) -> Vec<ServedFeature> {
        self.features
    }

    /// Those that meet a box, for geometry in degrees with longitude first. That others came is
    /// remarked: the service did not look at the boxes. Where others would meet one if their
    /// degrees were read in another way, it did look, and they are not left out.
    pub(super) fn within(
        self,
        boxes: &[DegreeBox],
        inquiry: &Inquiry<'_>,
    ) -> Result<Vec<ServedFeature>, String> {
        let meets = |feature: &ServedFeature, how: &dyn Fn(&DegreeBox, &Geometry<f64>) -> bool| {
            let geometry = feature.geometry.as_ref();
            geometry.is_some_and(|geometry| boxes.iter().any(|part| how(part, geometry)))
        };
        let as_said = |feature: &ServedFeature| {
            feature.geometry.is_none() || meets(feature, &|part, at| part.meets(at, false))
        };
        let all = self.features.len();
        let (features, outside): (Vec<_>, Vec<_>) = self.features.into_iter().partition(as_said);
        let any_outside = |how: &dyn Fn(&DegreeBox, &Geometry<f64>) -> bool| {
            outside.iter().any(|feature| meets(feature, how))
        };
        if any_outside(&DegreeBox::meets_turned) {
            return Err("its longitudes run from 0 to 360".to_owned());
        }
        let none_is_there = !features.iter().any(|feature| feature.geometry.is_some());
        if none_is_there && any_outside(&|part, at| part.meets(at, true)) {
            return Err("its coordinates seem to be latitude first".to_owned());
        }
        if !outside.is_empty() {
            inquiry.remark(format!(
                "{} of {all} features that came lie outside of what was asked for and are left \
                 out: the service does not look at the box",
                outside.len()
            ));
        }
        Ok(features)
    }
}

/// No layer has more attributes. Common practice, no source.
const MOST_FIELDS: usize = 2_000;

/// The names of a layer's attributes: those that the service lists, then those that only stand
/// on features.
pub(super) fn fields(
    mut listed: Vec<String>,
    features: &[ServedFeature],
    address: &str,
) -> Result<Vec<String>, ServiceError> {
    let there: BTreeSet<&String> = listed.iter().collect();
    let others: BTreeSet<&String> = features
        .iter()
        .flat_map(|feature| feature.attributes.keys())
        .filter(|name| !there.contains(name))
        .collect();
    let count = listed.len() + others.len();
    if count > MOST_FIELDS {
        return Err(ServiceError::Unfit {
            address: address.to_owned(),
            problem: format!(
                "the layer has {count} attributes of different names; accepted: {MOST_FIELDS} \
                 and fewer"
            ),
        });
    }
    let others: Vec<String> = others.into_iter().cloned().collect();
    listed.extend(others);
    Ok(listed)
}
