//! The summary as a page: one file of HTML that needs nothing beside it.

mod bars;
mod columns;
mod extent;
mod frame;
mod graticule;
mod map;
mod scale_bar;
mod tables;

use askama::Template;

use self::bars::Bars;
use self::columns::Columns;
use self::map::Map;
use self::tables::{Figure, Reject, Shade, Standing, ZoneLine};
use super::cautions;
use super::run_facts::RunFacts;
use super::sentences;
use super::words::{code_words, counted, rows, share, yearly_chance};
use crate::portfolio::summary::Summary;
use crate::quantity::unit::{Length, meter};
use crate::verdict::CautionTexts;

/// The summary as one HTML file, with a map and plots drawn in it; no scripts, and nothing is
/// loaded from elsewhere.
///
/// # Errors
/// [`askama::Error`], which does not happen for this template.
pub fn page(
    summary: &Summary,
    run: &RunFacts,
    texts: &CautionTexts,
) -> Result<String, askama::Error> {
    Page::of(summary, run, texts).render()
}

#[derive(Template)]
#[template(path = "report/portfolio/page/page.html")]
struct Page {
    input: String,
    event: String,
    rule_name: String,
    date: String,
    headline: String,
    heights_sentence: Option<String>,
    shades: Vec<Shade>,
    figures: Vec<Figure>,
    share_bar: Option<Bars>,
    map: Option<Map>,
    heights: Option<Columns>,
    zones: Option<Bars>,
    zone_table: Vec<ZoneLine>,
    sources: Option<Bars>,
    needs: Vec<Standing>,
    chances: Vec<Standing>,
    reasons: Vec<[String; 3]>,
    rejected: String,
    rejects: Vec<Reject>,
    rejects_file: Option<String>,
    left_out: Vec<String>,
    every_row: Vec<String>,
    some_rows: Vec<[String; 2]>,
    facts: Vec<(String, String)>,
}

impl Page {
    fn of(summary: &Summary, run: &RunFacts, texts: &CautionTexts) -> Self {
        let assessed = summary.assessed();
        let height = |metres| run.units.height(Length::new::<meter>(metres));
        let reasons = summary.reasons().by_count().into_iter();
        let standing = cautions::standing(summary, run, texts).into_iter();
        let some = cautions::counted(summary, texts).into_iter();
        Self {
            input: run.table(),
            event: run.event.to_string(),
            rule_name: run.rule_name.clone(),
            date: run.date.clone(),
            headline: sentences::headline(summary, run),
            heights_sentence: sentences::heights(summary, run),
            shades: Shade::all(),
            figures: Figure::all(summary),
            share_bar: Bars::of_verdicts(summary),
            map: Map::of(summary.lattice(), run.units),
            heights: Columns::of(summary.heights(), run.units),
            zones: Bars::of_zones(summary),
            zone_table: ZoneLine::all(summary),
            sources: Bars::of_sources(summary),
            needs: Standing::all(summary.highest_needs(), height),
            chances: Standing::all(summary.highest_chances(), yearly_chance),
            reasons: reasons
                .map(|(code, number)| [code_words(code), counted(number), share(number, assessed)])
                .collect(),
            rejected: rows(summary.rejected()),
            rejects: Reject::all(summary),
            rejects_file: run.rejects_file.clone(),
            left_out: sentences::left_out(summary),
            every_row: standing.map(|caution| caution.text).collect(),
            some_rows: some
                .map(|caution| [rows(caution.rows), caution.text])
                .collect(),
            facts: run.list(),
        }
    }
}
