//! Where the records of a CSV text end.
//!
//! The rules are those of the parser in [`super::records`], so that both see the same
//! records: a quote opens a quoted value only as the first byte of a value; within it, two
//! quotes stand for one; a line feed outside of it ends the record.

use memchr::{memchr, memchr2};

use super::LONGEST_RECORD;

/// How to go on with a text.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Cut {
    /// Nothing is left.
    Nothing,
    /// So many bytes are whole records.
    Records(usize),
    /// The first record cannot be read.
    Fault(&'static str),
    /// The first record does not end here; more text is needed.
    Unfinished,
}

pub(super) const TOO_LONG: &str = "it is too long, as if a quote were not closed";
pub(super) const UNCLOSED: &str = "its quote is not closed by the end of the file";
pub(super) const MARKED: &str = "it begins with the mark of the beginning of a file";

/// The byte-order mark of UTF-8, which the parser would drop at the start of a block and keep
/// elsewhere.
pub(super) const MARK: &[u8] = b"\xef\xbb\xbf";

/// Finds the end of the last record that ends within `limit` bytes, or of the first.
pub(super) fn cut(text: &[u8], limit: usize, is_all: bool) -> Cut {
    if text.is_empty() {
        return if is_all {
            Cut::Nothing
        } else {
            Cut::Unfinished
        };
    }
    let mut whole = 0;
    loop {
        let trouble = match end_of_record(&text[whole..], is_all) {
            End::At(length) if length > LONGEST_RECORD => Cut::Fault(TOO_LONG),
            End::At(length) if whole > 0 && whole + length > limit => Cut::Records(whole),
            End::At(length) => {
                whole += length;
                if whole == text.len() || whole >= limit {
                    return Cut::Records(whole);
                }
                continue;
            }
            End::Marked => Cut::Fault(MARKED),
            End::Unclosed | End::Unknown if text.len() - whole > LONGEST_RECORD => {
                Cut::Fault(TOO_LONG)
            }
            End::Unclosed => Cut::Fault(UNCLOSED),
            End::Unknown => Cut::Unfinished,
        };
        return if whole > 0 {
            Cut::Records(whole)
        } else {
            trouble
        };
    }
}

enum End {
    /// The record has so many bytes, its line feed with it.
    At(usize),
    /// The text ends before the record does.
    Unknown,
    /// The file ends within a quoted value.
    Unclosed,
    /// The record begins with a byte-order mark.
    Marked,
}

fn end_of_record(text: &[u8], is_all: bool) -> End {
    if text.starts_with(MARK) {
        return End::Marked;
    }
    if !is_all && text.len() < MARK.len() {
        return End::Unknown;
    }
    let mut at = 0;
    loop {
        let Some(found) = memchr2(b'"', b'\n', &text[at..]).map(|found| at + found) else {
            return if is_all {
                End::At(text.len())
            } else {
                End::Unknown
            };
        };
        if text[found] == b'\n' {
            return End::At(found + 1);
        }
        at = found + 1;
        let opens = found == 0 || text[found - 1] == b',';
        if opens {
            match end_of_quoted(&text[at..], is_all) {
                Some(length) => at += length,
                None if is_all => return End::Unclosed,
                None => return End::Unknown,
            }
        }
    }
}

/// How many bytes a quoted value has after its first quote, with the last.
fn end_of_quoted(text: &[u8], is_all: bool) -> Option<usize> {
    let mut at = 0;
    loop {
        let quote = at + memchr(b'"', &text[at..])?;
        match text.get(quote + 1) {
            Some(b'"') => at = quote + 2,
            None if !is_all => return None,
            _ => return Some(quote + 1),
        }
    }
}
