//! The zones that hold the site or an opening.

use super::{Value, set_all, text};
use crate::gis::{FieldKind, GisError, LayerDraft};
use crate::statement::Choice;
use crate::surroundings::Surroundings;

pub(super) const FIELDS: [(&str, FieldKind); 7] = [
    ("zone", FieldKind::Text),
    ("zone_subtype", FieldKind::Text),
    ("class", FieldKind::Text),
    ("decides", FieldKind::Whole),
    ("layer", FieldKind::Text),
    ("feature", FieldKind::Text),
    ("date", FieldKind::Text),
];

pub(super) fn write(
    draft: &mut LayerDraft<'_>,
    surroundings: &Surroundings,
) -> Result<(), GisError> {
    for zone in surroundings.zones.iter().filter(|zone| zone.holds) {
        let values = [
            text(&zone.code),
            zone.subtype.as_deref().and_then(text),
            text(zone.class.word()),
            Some(Value::Whole(zone.decides.into())),
            text(&zone.layer),
            text(&zone.feature),
            zone.date.as_deref().and_then(text),
        ];
        set_all(draft, &values)?;
        draft.areas(&zone.degrees)?;
        draft.end_feature()?;
    }
    Ok(())
}
