//! Answers as JSON, and what they are where they are not.

use serde::de::DeserializeOwned;

use crate::service::fetch::page_title;
use crate::service::{Entry, ServiceError};

/// Reads an answer as JSON.
pub(super) fn read<T: DeserializeOwned>(entry: &Entry) -> Result<T, ServiceError> {
    serde_json::from_slice(body(entry)).map_err(|error| ServiceError::Unfit {
        address: entry.address.clone(),
        problem: problem(entry, &error),
    })
}

/// An answer without a byte-order mark, which JSON has none of (RFC 8259, section 8.1).
pub(super) fn body(entry: &Entry) -> &[u8] {
    let bytes = entry.bytes.as_slice();
    bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes)
}

/// How files of TIFF and `BigTIFF` begin, in either order of bytes.
const TIFF: [&[u8]; 4] = [b"II*\0", b"MM\0*", b"II+\0", b"MM\0+"];

fn problem(entry: &Entry, error: &serde_json::Error) -> String {
    let body = body(entry);
    if TIFF.iter().any(|start| body.starts_with(start)) {
        return "it is a GeoTIFF, not features; give it to --dem".to_owned();
    }
    let first = body.iter().find(|byte| !byte.is_ascii_whitespace());
    match first {
        None => return "the answer is empty".to_owned(),
        Some(b'<') => {
            let kind = entry.content_type.as_deref().unwrap_or("HTML or XML");
            let title = page_title(body).filter(|title| !title.is_empty());
            let title = title.map_or_else(String::new, |title| format!("; it says: {title}"));
            return format!("the answer is a page ({kind:?}), where JSON was asked for{title}");
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
