//! Where the formulas and coefficients of this room stand.

use crate::statement::{Citation, Confidence};

pub(super) fn seen(source: &str) -> Citation {
    cite(source, Confidence::Seen)
}

pub(super) fn derived(source: &str) -> Citation {
    cite(source, Confidence::Derived)
}

pub(super) fn from_memory(source: &str) -> Citation {
    cite(source, Confidence::FromMemory)
}

pub(super) fn common_practice(source: &str) -> Citation {
    cite(source, Confidence::CommonPractice)
}

pub(super) fn stated(source: &str) -> Citation {
    cite(source, Confidence::Stated)
}

fn cite(source: &str, confidence: Confidence) -> Citation {
    Citation {
        source: source.to_owned(),
        confidence,
    }
}
