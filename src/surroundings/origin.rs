//! Where zones and lines come from.

use crate::assess::Sources;
use crate::hazard::{LayerContent, LayerOrigin};

/// One layer that was read for the site.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MapOrigin {
    /// What it holds.
    pub content: LayerContent,
    /// File and layer, with the date that it states.
    pub origin: LayerOrigin,
}

/// The layers, zones first.
pub(super) fn of(sources: &Sources) -> Vec<MapOrigin> {
    let zones = sources.zones.iter().map(|map| MapOrigin {
        content: LayerContent::Zones,
        origin: map.origin().clone(),
    });
    let lines = sources.levels.lines.iter().map(|map| MapOrigin {
        content: LayerContent::Lines(map.kind()),
        origin: map.origin().clone(),
    });
    zones.chain(lines).collect()
}
