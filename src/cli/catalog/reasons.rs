//! Reasons of verdicts, by their codes.

use sillmark::statement::Choice as _;
use sillmark::verdict::ReasonCode;

use super::list::List;

pub(super) fn list() -> String {
    let mut list = List::default();
    for reason in ReasonCode::ALL {
        list.entry(reason.code, reason.meaning);
        list.detail(&format!("verdict: {}", reason.verdict.word()));
    }
    list.0
}
