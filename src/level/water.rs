//! Which water a place stands in, by the zones that hold it.

use crate::hazard::{Zone, ZoneClass, ZoneMap};

/// The zones whose records may say how high the water of the worst zone stands: those of
/// the same kind of flood. A wave zone without a level does not borrow the level of the
/// calmer zone below it; a floodway does, because it is a part of the detailed zone.
pub(super) fn deciding<'zone>(zones: &[&'zone Zone]) -> impl Iterator<Item = &'zone Zone> {
    let worst = zones.first().map(|zone| kind(zone.class));
    zones
        .iter()
        .copied()
        .take_while(move |zone| Some(kind(zone.class)) == worst)
}

/// Whether the lines of a river may speak for the place: they do where the zone is flooded
/// by it, or where nobody looked the zone up. They do not reach behind a levee, up a beach
/// or over ground that the map calls outside or unknown.
pub(super) fn lines_may_speak(zones: &[&Zone], maps: &[ZoneMap]) -> bool {
    match zones.first() {
        Some(worst) => matches!(
            worst.class,
            ZoneClass::Detailed | ZoneClass::Floodway | ZoneClass::Approximate
        ),
        None => maps.is_empty(),
    }
}

/// Whether the map itself puts the place outside the flood.
pub(super) fn map_says_outside(zones: &[&Zone]) -> bool {
    zones.first().is_some_and(|worst| {
        matches!(
            worst.class,
            ZoneClass::Minimal | ZoneClass::Unspecified | ZoneClass::Rare
        )
    })
}

/// The class that stands for all classes with the same water.
const fn kind(class: ZoneClass) -> ZoneClass {
    match class {
        ZoneClass::Floodway => ZoneClass::Detailed,
        other => other,
    }
}
