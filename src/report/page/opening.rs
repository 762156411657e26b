//! What the page says of one opening.

use super::answer::anchor;
use super::blocks::Blocks;
use crate::assess::{Assessment, OpeningAssessment};
use crate::report::drawing::{elevation, pressure, stage_chance};
use crate::report::outline::Outline;
use crate::report::words::{
    asks_for, findings, label, place_table, reasons, sheet as sheet_outline,
};
use crate::statement::Choice;
use crate::verdict::Reason;

/// One opening: drawing, reasons, and the barrier's sheet for the engineer.
pub(super) struct OpeningPart<'a> {
    pub(super) name: &'a str,
    pub(super) anchor: String,
    pub(super) word: &'static str,
    pub(super) label: &'static str,
    pub(super) asked: &'static str,
    /// The elevation drawing; `None` where its sill is not known.
    pub(super) drawing: Option<String>,
    /// Why it has its verdict.
    pub(super) reasons: String,
    /// What to build, and how often water comes.
    pub(super) findings: Vec<String>,
    /// What is known where it stands, if that is not where the site is.
    pub(super) place: Option<String>,
    /// What would answer what is unresolved.
    pub(super) resolved_by: Vec<&'static str>,
    /// Levels of several floods where it stands, if that is not where the site is.
    pub(super) chances: Option<String>,
    /// Pressure over the height.
    pub(super) pressure: Option<String>,
    /// Every load, check, piece and anchor.
    pub(super) sheet: Option<String>,
}

impl<'a> OpeningPart<'a> {
    pub(super) fn of(
        number: usize,
        opening: &'a OpeningAssessment<'_>,
        assessment: &Assessment<'_>,
    ) -> Result<Self, askama::Error> {
        let units = assessment.method.units;
        let place = opening.place.as_ref().map(|place| {
            let mut outline = Outline::default();
            outline.table(place_table(place, assessment, ""));
            Blocks::render(&outline, 4)
        });
        let sheet = opening.barrier.as_ref();
        let sheet = sheet.map(|barrier| Blocks::render(&sheet_outline(barrier, units), 3));
        let anchor = anchor(number);
        Ok(Self {
            name: &opening.opening.id,
            word: opening.verdict.word(),
            label: label(opening.verdict),
            asked: asks_for(opening.verdict),
            drawing: elevation(&format!("{anchor}-elevation"), assessment, opening),
            reasons: reasons(opening, units),
            place: place.transpose()?,
            findings: findings(opening, assessment),
            resolved_by: opening
                .reasons
                .iter()
                .filter_map(Reason::resolved_by)
                .collect(),
            pressure: opening.barrier.as_ref().and_then(|barrier| {
                let id = format!("{anchor}-pressure");
                pressure(&id, &opening.opening.id, &barrier.design, units)
            }),
            chances: stage_chance(&format!("{anchor}-chances"), assessment, Some(opening)),
            sheet: sheet.transpose()?,
            anchor,
        })
    }
}
