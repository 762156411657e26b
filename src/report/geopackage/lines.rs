//! The lines that a flood level was read from.

use super::{Value, set_all, text};
use crate::gis::{FieldKind, GisError, LayerDraft};
use crate::hazard::LineKind;
use crate::quantity::unit::meter;
use crate::surroundings::{LineUse, Surroundings};

pub(super) const FIELDS: [(&str, FieldKind); 9] = [
    ("kind", FieldKind::Text),
    ("name", FieldKind::Text),
    ("level_m", FieldKind::Number),
    ("vertical_datum", FieldKind::Text),
    ("used", FieldKind::Text),
    ("distance_m", FieldKind::Number),
    ("bearing_degrees", FieldKind::Number),
    ("layer", FieldKind::Text),
    ("feature", FieldKind::Text),
];

pub(super) fn write(
    draft: &mut LayerDraft<'_>,
    surroundings: &Surroundings,
) -> Result<(), GisError> {
    for line in &surroundings.lines {
        let used = match line.used {
            LineUse::Decides => "decides",
            LineUse::Compared => "compared",
            LineUse::None => continue,
        };
        let kind = match line.kind {
            LineKind::CrossSections => "cross-section",
            LineKind::LevelLines => "level-line",
        };
        let values = [
            text(kind),
            text(&line.title),
            line.level
                .map(|level| Value::Number(level.height().get::<meter>())),
            line.level
                .map(|level| Value::Text(level.datum().to_string())),
            text(used),
            Some(Value::Number(line.distance.get::<meter>())),
            Some(Value::Number(line.bearing)),
            text(&line.layer),
            text(&line.feature),
        ];
        set_all(draft, &values)?;
        draft.lines(&line.degrees)?;
        draft.end_feature()?;
    }
    Ok(())
}
