//! What maps say about a place.

use std::cmp::Ordering;

use smallvec::SmallVec;

use super::Zone;

/// What a map says about a point.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ZonesHere<'map> {
    /// Every zone that holds the point, the worst first; among equals the one with the
    /// higher level. Empty where the map has no zone there, which means unknown.
    pub zones: SmallVec<[&'map Zone; 2]>,
    /// Whether the point lies within a millimetre of the edge of one of them.
    pub on_edge: bool,
}

impl ZonesHere<'_> {
    /// What several maps say together.
    #[must_use]
    pub fn join(maps: impl IntoIterator<Item = Self>) -> Self {
        let mut maps = maps.into_iter();
        let mut joined = maps.next().unwrap_or_default();
        let alone = joined.zones.len();
        for here in maps {
            joined.zones.extend(here.zones);
            joined.on_edge |= here.on_edge;
        }
        if joined.zones.len() > alone {
            // Stable: among equals the first map's zone stays first.
            joined.zones.sort_by(|left, right| worst_first(left, right));
        }
        joined
    }
}

pub(super) fn worst_first(left: &Zone, right: &Zone) -> Ordering {
    right
        .class
        .cmp(&left.class)
        .then_with(|| higher(left, right))
}

/// The zone with the higher level or the greater depth first.
fn higher(left: &Zone, right: &Zone) -> Ordering {
    let by_level = match (left.level, right.level) {
        // By the bare number, whatever the datum, so that the order is total.
        (Some(left), Some(right)) => right.height().value.total_cmp(&left.height().value),
        (left, right) => right.is_some().cmp(&left.is_some()),
    };
    let depth = |zone: &Zone| zone.depth.map_or(-1.0, |depth| depth.value);
    by_level.then_with(|| depth(right).total_cmp(&depth(left)))
}
