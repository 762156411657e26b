//! Cautions: those that hold for every row, and how many rows have each of the others.

use super::RunFacts;
use crate::portfolio::summary::Summary;
use crate::verdict::{Caution, CautionTexts};

/// A caution with the number of rows that it is about.
pub(super) struct CountedCaution {
    pub(super) code: String,
    /// What it says; its code where the sentences have none for it.
    pub(super) text: String,
    /// Where it stands.
    pub(super) reference: String,
    pub(super) rows: u64,
}

/// What holds for every row, whatever its figures.
const STANDING: [Caution; 4] = [
    Caution::SurveySill,
    Caution::MapNotForecast,
    Caution::ShortDuration,
    Caution::LocalCode,
];

/// The cautions that hold for every row: those of every run, and those of this one.
pub(super) fn standing(
    summary: &Summary,
    run: &RunFacts,
    texts: &CautionTexts,
) -> Vec<CountedCaution> {
    let codes = run.cautions.iter().chain(&STANDING).map(Caution::code);
    codes
        .map(|code| CountedCaution::of(code, summary.assessed(), texts))
        .collect()
}

/// The other cautions, the most frequent first.
pub(super) fn counted(summary: &Summary, texts: &CautionTexts) -> Vec<CountedCaution> {
    let stands = |code: &str| STANDING.iter().any(|caution| caution.code() == code);
    let cautions = summary.cautions().by_count().into_iter();
    cautions
        .filter(|(code, _)| !stands(code))
        .map(|(code, rows)| CountedCaution::of(code, rows, texts))
        .collect()
}

impl CountedCaution {
    fn of(code: &str, rows: u64, texts: &CautionTexts) -> Self {
        let known = texts.all().find(|(known, _, _)| *known == code);
        let (text, reference) = known.map_or_else(
            || (code.to_owned(), String::new()),
            |(_, text, citation)| (text.to_owned(), citation.to_string()),
        );
        Self {
            code: code.to_owned(),
            text,
            reference,
            rows,
        }
    }
}
