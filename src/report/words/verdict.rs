//! Verdicts in words.

use crate::verdict::Verdict;

/// The verdicts as they are listed: those that ask for something first.
pub(in crate::report) const ORDER: [Verdict; 4] = [
    Verdict::Protect,
    Verdict::Engineer,
    Verdict::Unresolved,
    Verdict::Above,
];

/// What `number` rows or openings do, by their verdict.
pub(in crate::report) fn what_they_need(verdict: Verdict, number: u64) -> &'static str {
    match (verdict, number) {
        (Verdict::Protect, 1) => "needs a barrier",
        (Verdict::Protect, _) => "need a barrier",
        (Verdict::Engineer, 1) => "needs a licensed engineer",
        (Verdict::Engineer, _) => "need a licensed engineer",
        (Verdict::Unresolved, 1) => "is unresolved",
        (Verdict::Unresolved, _) => "are unresolved",
        (Verdict::Above, 1) => "needs none by this map and rule",
        (Verdict::Above, _) => "need none by this map and rule",
    }
}

/// The verdict above a column or beside a colour.
pub(in crate::report) const fn label(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Protect => "barrier",
        Verdict::Engineer => "licensed engineer",
        Verdict::Unresolved => "unresolved",
        Verdict::Above => "none by this map and rule",
    }
}

/// What a verdict asks for.
pub(in crate::report) const fn asks_for(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Protect => "a barrier within common limits",
        Verdict::Engineer => "a barrier that a licensed engineer designs",
        Verdict::Unresolved => "an input that is missing or refused",
        Verdict::Above => "none by this map and rule",
    }
}
