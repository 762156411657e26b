//! The assessment as a page: one file of HTML that needs nothing beside it.

mod answer;
mod blocks;
mod facts;
mod opening;

use askama::Template;

use self::answer::AnswerLine;
use self::blocks::Blocks;
use self::facts::Fact;
use self::opening::OpeningPart;
use super::SiteRun;
use super::drawing::{DRAWING_STYLE, notes, plan, section, stage_chance};
use super::outline::Outline;
use super::words::{
    behind_lines, caution_lines, fetched_lines, needs, place_table, still_to_settle, trail_table,
};
use crate::assess::Assessment;
use crate::surroundings::Surroundings;
use crate::verdict::CautionTexts;

/// The assessment as one HTML file for reading and printing, with its drawings in it; no
/// scripts, and nothing is loaded from elsewhere.
///
/// # Errors
/// [`askama::Error`], which does not happen for this template.
pub fn page(
    assessment: &Assessment<'_>,
    around: &Surroundings,
    run: &SiteRun,
    texts: &CautionTexts,
) -> Result<String, askama::Error> {
    Page::of(assessment, around, run, texts)?.render()
}

#[derive(Template)]
#[template(path = "report/page/page.html")]
struct Page<'a> {
    style: &'static str,
    name: &'a str,
    date: &'a str,
    version: &'a str,
    event: String,
    rule: &'a str,
    lead: String,
    answers: Vec<AnswerLine<'a>>,
    place: String,
    openings: Vec<OpeningPart<'a>>,
    plan: String,
    section: Option<String>,
    /// Where the maps come from, and what the plan leaves out.
    map_notes: Vec<String>,
    chances: Option<String>,
    behind: Vec<String>,
    to_settle: Vec<String>,
    cautions: Vec<String>,
    /// What came from services, and when.
    fetched: Vec<String>,
    trail: String,
    command: String,
    run: &'a SiteRun,
    facts: Vec<Fact>,
}

impl<'a> Page<'a> {
    fn of(
        assessment: &'a Assessment<'a>,
        around: &Surroundings,
        run: &'a SiteRun,
        texts: &CautionTexts,
    ) -> Result<Self, askama::Error> {
        let method = assessment.method;
        let units = method.units;
        let mut place = Outline::default();
        place.table(place_table(&assessment.place, assessment, ""));
        let mut trail = Outline::default();
        trail.table(trail_table(&assessment.trail, units));
        let openings = assessment.openings.iter().enumerate();
        Ok(Self {
            style: DRAWING_STYLE,
            name: &assessment.site.name,
            date: &run.date,
            version: &run.version,
            event: method.event.to_string(),
            rule: &method.rule.name,
            lead: capitalised(&needs(assessment)),
            answers: AnswerLine::all(assessment),
            place: Blocks::render(&place, 3)?,
            openings: openings
                .map(|(number, opening)| OpeningPart::of(number, opening, assessment))
                .collect::<Result<_, _>>()?,
            plan: plan("plan", assessment, around),
            section: section("section", assessment, around),
            map_notes: notes(assessment, around),
            chances: stage_chance("chances", assessment, None),
            behind: assessment
                .behind
                .iter()
                .flat_map(|behind| behind_lines(behind, units))
                .collect(),
            to_settle: still_to_settle(assessment),
            cautions: caution_lines(&assessment.cautions, texts, units),
            fetched: fetched_lines(&assessment.maps),
            trail: Blocks::render(&trail, 3)?,
            command: run.command_line(),
            run,
            facts: Fact::all(assessment),
        })
    }
}

/// A sentence with its first letter large.
fn capitalised(sentence: &str) -> String {
    let mut letters = sentence.chars();
    let first = letters.next().map(char::to_uppercase);
    first.into_iter().flatten().chain(letters).collect()
}
