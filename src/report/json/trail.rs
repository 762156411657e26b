//! How figures came about.

use schemars::JsonSchema;
use serde::Serialize;

use super::number::rounded;
use crate::assess::{Step, Value};

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonStep {
    pub(super) quantity: String,
    /// A number in `unit`, a text where there is no unit, null where it is not known.
    pub(super) value: JsonValue,
    pub(super) unit: Option<String>,
    pub(super) how: String,
    pub(super) reference: String,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum JsonValue {
    Number(f64),
    Words(String),
    Nothing,
}

impl JsonStep {
    pub(super) fn new(step: &Step) -> Self {
        let figure = step.value.in_si();
        Self {
            quantity: step.quantity.clone(),
            value: match (&step.value, figure) {
                (_, Some((number, _))) => JsonValue::Number(rounded(number)),
                (Value::Words(words), None) => JsonValue::Words(words.clone()),
                _ => JsonValue::Nothing,
            },
            unit: figure.map(|(_, unit)| unit.to_owned()),
            how: step.how.clone(),
            reference: step.reference.clone(),
        }
    }
}
