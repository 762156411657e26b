//! What features hold, in few digits.

use geo::CoordsIter;
use sha2::{Digest as _, Sha256};

use crate::service::ServedLayer;

/// SHA-256 of a layer's features, in hexadecimal.
pub(super) fn of(layer: &ServedLayer) -> String {
    let mut hasher = Sha256::new();
    hasher.update(&layer.crs);
    for feature in &layer.features {
        // A length before each part, so that no two lists of parts read the same.
        let attributes = feature.attributes.iter();
        let attributes = attributes.flat_map(|(name, value)| [name.clone(), value.to_string()]);
        for part in std::iter::once(feature.id.clone()).chain(attributes) {
            hasher.update((part.len() as u64).to_le_bytes());
            hasher.update(part);
        }
        for at in feature.geometry.iter().flat_map(CoordsIter::coords_iter) {
            hasher.update(at.x.to_le_bytes());
            hasher.update(at.y.to_le_bytes());
        }
    }
    hex::encode(hasher.finalize())
}
