//! Faults of what an answer says.

use serde_json::{Value, json};

use super::upstream::{OWN_ADDRESS, Original};
use super::{Fault, Heard, Kind};

/// The answer with a fault in what it says; `None` where the fault does not apply to it.
///
/// What tells a client that it knows the answer already (`ETag`) stays, as it does with a cache
/// on the way that is broken.
pub(super) fn spoilt(
    fault: &Fault,
    heard: &Heard,
    original: &Original,
    earlier: Option<&str>,
) -> Option<Original> {
    let body = match fault.kind {
        Kind::Html => "<!DOCTYPE html><title>Maintenance</title><p>Back soon.".to_owned(),
        Kind::Empty => String::new(),
        Kind::ErrorObject => error_object(fault.choice),
        Kind::JsonTruncated => original.body[..cut(&original.body, fault.share)].to_owned(),
        Kind::EarlierPage => earlier?.to_owned(),
        Kind::NextLoops => looping(&original.body, &heard.target)?,
        Kind::FewerFeatures => fewer(&original.body, fault)?,
        _ => return None,
    };
    let content_type = match fault.kind {
        Kind::Html => "text/html".to_owned(),
        _ => original.content_type.clone(),
    };
    (body != original.body).then(|| Original {
        content_type,
        body,
        ..original.clone()
    })
}

/// Codes that servers of `GeoServices` REST give in a body with 200.
fn error_object(choice: usize) -> String {
    let code = [400, 498, 500, 503, 504][choice % 5];
    json!({"error": {"code": code, "message": "Unable to complete operation.", "details": []}})
        .to_string()
}

/// A place within a text, before its last letter that is no space.
fn cut(text: &str, share: f64) -> usize {
    let end = text.trim_end().len();
    text.floor_char_boundary((share * end as f64) as usize)
}

fn looping(body: &str, target: &str) -> Option<String> {
    let mut value: Value = serde_json::from_str(body).ok()?;
    let links = value.get_mut("links")?.as_array_mut()?;
    let next = links.iter_mut().find(|link| link["rel"] == "next")?;
    next["href"] = Value::String(format!("{OWN_ADDRESS}{target}"));
    Some(value.to_string())
}

fn fewer(body: &str, fault: &Fault) -> Option<String> {
    let mut value: Value = serde_json::from_str(body).ok()?;
    let features = value.get_mut("features")?.as_array_mut()?;
    if features.is_empty() {
        return None;
    }
    let gone = 1 + fault.choice % features.len();
    let first = (fault.share * (features.len() - gone) as f64) as usize;
    features.drain(first..first + gone);
    Some(value.to_string())
}
