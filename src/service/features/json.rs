//! Answers as JSON, and what they are where they are not.

use serde::de::DeserializeOwned;

use crate::service::{Entry, ServiceError};

/// Reads an answer as JSON.
pub(super) fn read<T: DeserializeOwned>(entry: &Entry) -> Result<T, ServiceError> {
    serde_json::from_slice(&entry.bytes).map_err(|error| ServiceError::Unfit {
        address: entry.address.clone(),
        problem: problem(entry, &error),
    })
}

fn problem(entry: &Entry, error: &serde_json::Error) -> String {
    let first = entry.bytes.iter().find(|byte| !byte.is_ascii_whitespace());
    match first {
        None => return "the answer is empty".to_owned(),
        Some(b'<') => {
            let kind = entry.content_type.as_deref().unwrap_or("HTML or XML");
            return format!("the answer is a page ({kind:?}), where JSON was asked for");
        }
        Some(_) => {}
    }
    let told = error.to_string();
    if told.starts_with("recursion limit exceeded") {
        let (line, column) = (error.line(), error.column());
        return format!("the answer is nested too deep at line {line} column {column}");
    }
    // Words of the answer may be among it.
    let told = told.replace(char::is_control, " ");
    format!("the answer cannot be read: {told}")
}
