//! The answer as a table: a line an opening.

use crate::assess::{Assessment, OpeningAssessment};
use crate::quantity::{Length, UnitSystem};
use crate::report::words::label;
use crate::statement::Choice;

/// An opening and what is asked for it.
pub(super) struct AnswerLine<'a> {
    pub(super) opening: &'a str,
    /// Where its part of the page is.
    pub(super) anchor: String,
    /// The verdict's word.
    pub(super) word: &'static str,
    pub(super) asked: &'static str,
    pub(super) protect: String,
    pub(super) height: String,
    pub(super) planks: Vec<String>,
    pub(super) posts: Vec<String>,
}

impl<'a> AnswerLine<'a> {
    pub(super) fn all(assessment: &'a Assessment<'_>) -> Vec<Self> {
        let units = assessment.method.units;
        let openings = assessment.openings.iter().enumerate();
        openings
            .map(|(number, opening)| Self::of(number, opening, units))
            .collect()
    }

    fn of(number: usize, opening: &'a OpeningAssessment<'_>, units: UnitSystem) -> Self {
        let height = |length: Option<Length>| {
            length.map_or_else(
                || "not known".to_owned(),
                |length| {
                    if length.value > 0.0 {
                        units.height(length)
                    } else {
                        "–".to_owned()
                    }
                },
            )
        };
        Self {
            opening: &opening.opening.id,
            anchor: anchor(number),
            word: opening.verdict.word(),
            asked: label(opening.verdict),
            protect: height(opening.protection_height),
            height: height(opening.planks.map(|planks| planks.height)),
            planks: pieces(opening, units, |name| name == "plank"),
            posts: pieces(opening, units, |name| name != "plank"),
        }
    }
}

/// Where an opening's part of the page is.
pub(super) fn anchor(number: usize) -> String {
    format!("opening-{}", number + 1)
}

/// Pieces of the cut list whose name is wanted.
fn pieces(
    opening: &OpeningAssessment<'_>,
    units: UnitSystem,
    wanted: impl Fn(&str) -> bool,
) -> Vec<String> {
    let pieces = opening.barrier.iter();
    let pieces = pieces.flat_map(|barrier| &barrier.design.pieces);
    pieces
        .filter(|piece| wanted(&piece.name))
        .map(|piece| piece.text(units))
        .collect()
}
