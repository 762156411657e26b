//! What may go wrong with an answer.
//!
//! Each is noticed by a client that compares what it has with what it was told: lengths,
//! checksums, counts, ids it has already. A server that leaves features out and claims fewer in
//! all it says cannot be told from one that has fewer, so that is none.

use std::time::Duration;

/// One fault, and how it turns out.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fault {
    pub(super) kind: Kind,
    /// Where in the answer, from 0 to 1.
    pub(super) share: f64,
    /// How long a slow one waits each time.
    pub(super) pause: Duration,
    /// Which of several.
    pub(super) choice: usize,
}

/// What goes wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Kind {
    /// The connection closes without a word.
    CutBeforeHeaders,
    /// It closes within the headers.
    CutInHeaders,
    /// It closes within the body.
    CutInBody,
    /// The answer comes late.
    Delay,
    /// It comes in many pieces.
    Drip,
    /// It stops in the middle for longer than a client waits.
    Stall,
    /// 429 or 503, with and without `Retry-After`.
    Busy,
    /// `Content-Length` says more than comes.
    LengthTooLong,
    /// It says less.
    LengthTooShort,
    /// A byte of the packed body is another.
    GzipCorrupt,
    /// The packed body ends early, with the right length.
    GzipTruncated,
    /// A page in HTML with 200.
    Html,
    /// Nothing with 200.
    Empty,
    /// An error of `GeoServices` with 200.
    ErrorObject,
    /// The JSON ends early, with the right length.
    JsonTruncated,
    /// An earlier page in place of a later one.
    EarlierPage,
    /// The next page is this page.
    NextLoops,
    /// Some features are missing, while the counts stay.
    FewerFeatures,
    /// It leads to itself.
    RedirectToItself,
}

impl Kind {
    pub(crate) const ALL: [Self; 19] = [
        Self::CutBeforeHeaders,
        Self::CutInHeaders,
        Self::CutInBody,
        Self::Delay,
        Self::Drip,
        Self::Stall,
        Self::Busy,
        Self::LengthTooLong,
        Self::LengthTooShort,
        Self::GzipCorrupt,
        Self::GzipTruncated,
        Self::Html,
        Self::Empty,
        Self::ErrorObject,
        Self::JsonTruncated,
        Self::EarlierPage,
        Self::NextLoops,
        Self::FewerFeatures,
        Self::RedirectToItself,
    ];
}
