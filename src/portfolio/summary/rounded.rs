//! Numbers and texts in a form that is short when written down and the same when read back.

use std::borrow::Cow;

/// To a millionth.
pub(super) fn millionths(number: f64) -> f64 {
    (number * 1e6).round() / 1e6 + 0.0
}

/// To a ten-millionth: a centimetre, for degrees.
pub(super) fn degrees(number: f64) -> f64 {
    (number * 1e7).round() / 1e7 + 0.0
}

/// To a thousand-millionth, for chances.
pub(super) fn chance(number: f64) -> f64 {
    (number * 1e9).round() / 1e9 + 0.0
}

/// At most `limit` characters of a text, the last of them `…` where some are left out.
pub(super) fn at_most(text: &str, limit: usize) -> Cow<'_, str> {
    if text.len() <= limit || text.chars().count() <= limit {
        return Cow::Borrowed(text);
    }
    let kept = text.chars().take(limit.saturating_sub(1));
    Cow::Owned(kept.chain(std::iter::once('…')).collect())
}
