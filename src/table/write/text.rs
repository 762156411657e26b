//! Values as CSV text, appended to a buffer.

use crate::table::trimmed::trimmed;

/// Appends a text, in quotes only where RFC 4180 needs them: where it holds a comma, a quote
/// or a line end, or where blanks at its ends would be trimmed by a reader.
///
/// ```
/// let mut line = Vec::new();
/// sillmark::table::csv_text(&mut line, "12\" pipe, old");
/// assert_eq!(line, b"\"12\"\" pipe, old\"");
/// ```
pub fn csv_text(line: &mut Vec<u8>, text: &str) {
    let bytes = text.as_bytes();
    let special = memchr::memchr3(b',', b'"', b'\n', bytes).is_some()
        || memchr::memchr(b'\r', bytes).is_some()
        || text.starts_with('\u{feff}')
        || trimmed(text).len() != text.len();
    if !special {
        line.extend_from_slice(bytes);
        return;
    }
    line.push(b'"');
    let mut rest = bytes;
    while let Some(quote) = memchr::memchr(b'"', rest) {
        line.extend_from_slice(&rest[..=quote]);
        line.push(b'"');
        rest = &rest[quote + 1..];
    }
    line.extend_from_slice(rest);
    line.push(b'"');
}

/// Appends a text that somebody else wrote as [`csv_text`] does, harmless in a spreadsheet: one
/// that begins with a sign that starts a formula gets an apostrophe before it (OWASP, "CSV
/// Injection"; from memory).
///
/// ```
/// let mut line = Vec::new();
/// sillmark::table::csv_label(&mut line, "=cmd()");
/// assert_eq!(line, b"'=cmd()");
/// ```
pub fn csv_label(line: &mut Vec<u8>, text: &str) {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        csv_text(line, &format!("'{text}"));
    } else {
        csv_text(line, text);
    }
}
