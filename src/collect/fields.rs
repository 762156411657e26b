//! What kind of values the attributes of a served layer have.

use serde_json::Value;

use crate::gis::{FieldKind, GisError, LayerDraft};
use crate::service::ServedLayer;

/// An attribute of the layer as it is written.
pub(super) struct Field {
    /// Its name in the service.
    pub(super) served: String,
    /// Its name in the file, which does not tell upper from lower case.
    pub(super) name: String,
    pub(super) kind: FieldKind,
}

/// The attributes of a layer, in its order. Where a service has no feature and states no
/// attributes, those that are needed stand for them.
pub(super) fn of(layer: &ServedLayer, needed: &[&[String]]) -> Vec<Field> {
    let mut served = layer.fields.clone();
    if served.is_empty() {
        served.extend(needed.iter().filter_map(|names| names.first().cloned()));
    }
    let mut fields: Vec<Field> = Vec::with_capacity(served.len());
    for served in served {
        let mut name = served.clone();
        while fields
            .iter()
            .any(|field| field.name.eq_ignore_ascii_case(&name))
        {
            name.push('_');
        }
        let kind = kind(layer, &served);
        fields.push(Field { served, name, kind });
    }
    fields
}

/// The narrowest kind that holds all values; text where there are none.
fn kind(layer: &ServedLayer, name: &str) -> FieldKind {
    let features = layer.features.iter();
    let values = features.filter_map(|feature| feature.attributes.get(name));
    let kinds = values.filter_map(|value| match value {
        Value::Null => None,
        Value::Number(number) if number.is_i64() => Some(FieldKind::Whole),
        Value::Number(_) => Some(FieldKind::Number),
        _ => Some(FieldKind::Text),
    });
    let widest = kinds.reduce(|one, other| match (one, other) {
        (FieldKind::Text, _) | (_, FieldKind::Text) => FieldKind::Text,
        (FieldKind::Number, _) | (_, FieldKind::Number) => FieldKind::Number,
        (FieldKind::Whole, FieldKind::Whole) => FieldKind::Whole,
    });
    widest.unwrap_or(FieldKind::Text)
}

/// Sets an attribute of the feature that is being written.
pub(super) fn set(
    draft: &mut LayerDraft<'_>,
    position: usize,
    kind: FieldKind,
    value: &Value,
) -> Result<(), GisError> {
    match (kind, value) {
        (_, Value::Null) => Ok(()),
        (FieldKind::Whole, Value::Number(number)) => {
            draft.whole(position, number.as_i64().unwrap_or_default())
        }
        (FieldKind::Number, Value::Number(number)) => {
            draft.number(position, number.as_f64().unwrap_or(f64::NAN))
        }
        (_, Value::String(text)) => draft.text(position, text),
        (_, other) => draft.text(position, &other.to_string()),
    }
}
