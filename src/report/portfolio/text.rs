//! The summary as plain text.

use super::cautions::{counted as counted_cautions, standing};
use super::run_facts::RunFacts;
use super::sentences::{headline, heights, left_out};
use super::words::{code_words, counted, cut, place, rows, share, yearly_chance};
use crate::level::LevelSource;
use crate::portfolio::summary::{RankedRow, Summary, VerdictCounts};
use crate::quantity::unit::{Length, meter};
use crate::report::outline::{Outline, Table};
use crate::report::text::lay_out;
use crate::report::words::{ORDER, asks_for};
use crate::statement::Choice;
use crate::verdict::CautionTexts;

const COLUMNS: usize = 96;
/// Characters of an id or a problem in a table.
const CELL: usize = 44;

/// The summary in lines of at most 96 characters: what was counted, the highest needs, what to
/// mend, and what the figures do not cover.
///
/// Lines with a file name or a sentence without spaces that is longer stay whole.
#[must_use]
pub fn text(summary: &Summary, run: &RunFacts, texts: &CautionTexts) -> String {
    let mut page = Outline::default();
    page.paragraph(&headline(summary, run), "");
    if summary.assessed() > 0 {
        verdicts(&mut page, summary);
        if let Some(sentence) = heights(summary, run) {
            page.gap();
            page.paragraph(&format!("{sentence}."), "");
        }
        zones(&mut page, summary);
        sources(&mut page, summary);
        reasons(&mut page, summary);
        needs(&mut page, summary, run);
        chances(&mut page, summary);
    }
    rejects(&mut page, summary, run);
    not_covered(&mut page, summary, run, texts);
    page.heading("The run");
    for (name, value) in run.list() {
        page.paragraph(&format!("{name}: {value}"), "- ");
    }
    lay_out(&page, COLUMNS)
}

fn section(
    page: &mut Outline,
    heading: &str,
    header: &[&str],
    rows: Vec<Vec<String>>,
    right: std::ops::Range<usize>,
) {
    if rows.is_empty() {
        return;
    }
    let mut table = Table::with_header(header.to_vec());
    for row in rows {
        table.add_row(row);
    }
    table.figures(right);
    page.heading(heading);
    page.table(table);
}

fn verdicts(page: &mut Outline, summary: &Summary) {
    let assessed = summary.assessed();
    let lines = ORDER.map(|verdict| {
        let number = summary.verdicts().of(verdict);
        let needed = asks_for(verdict).to_owned();
        vec![
            verdict.word().to_owned(),
            counted(number),
            share(number, assessed),
            needed,
        ]
    });
    let header = ["Verdict", "Rows", "Share", "What is needed"];
    section(page, "Verdicts", &header, lines.into(), 1..3);
}

fn zones(page: &mut Outline, summary: &Summary) {
    let line = |zone: &str, verdicts: &VerdictCounts| {
        let mut line = vec![cut(zone, CELL)];
        line.extend(ORDER.map(|verdict| counted(verdicts.of(verdict))));
        line.push(counted(verdicts.total()));
        line
    };
    let named = summary.zones().each();
    let rest = [
        ("further zones", summary.zones().others()),
        ("no zone", summary.without_zone()),
    ];
    let lines = named.map(|(code, verdicts)| line(code, verdicts)).chain(
        rest.into_iter()
            .filter(|(_, rows)| !rows.is_empty())
            .map(|(name, rows)| line(name, rows)),
    );
    let mut header = vec!["Zone"];
    header.extend(ORDER.map(Choice::word));
    header.push("all");
    section(
        page,
        "Flood zones, by verdict",
        &header,
        lines.collect(),
        1..6,
    );
}

fn sources(page: &mut Outline, summary: &Summary) {
    let known =
        LevelSource::ALL.map(|source| (source.title(), summary.level_sources().of(source.code())));
    let all = known
        .into_iter()
        .chain([("no level", summary.without_level())]);
    let lines = all
        .filter(|(_, number)| *number > 0)
        .map(|(title, number)| {
            vec![
                title.to_owned(),
                counted(number),
                share(number, summary.assessed()),
            ]
        });
    section(
        page,
        "Where flood levels come from",
        &["Source", "Rows", "Share"],
        lines.collect(),
        1..3,
    );
}

fn reasons(page: &mut Outline, summary: &Summary) {
    let lines = summary.reasons().by_count().into_iter();
    let lines = lines.map(|(code, number)| {
        vec![
            code_words(code),
            counted(number),
            share(number, summary.assessed()),
        ]
    });
    section(
        page,
        "What decided",
        &["Reason", "Rows", "Share"],
        lines.collect(),
        1..3,
    );
}

fn needs(page: &mut Outline, summary: &Summary, run: &RunFacts) {
    let height = |row: &RankedRow| run.units.height(Length::new::<meter>(row.figure));
    ranking(
        page,
        "Highest protection heights",
        "Height",
        summary.highest_needs().rows(),
        height,
    );
}

fn chances(page: &mut Outline, summary: &Summary) {
    let chance = |row: &RankedRow| yearly_chance(row.figure);
    ranking(
        page,
        "Highest chances of water at the sill in any one year",
        "Chance",
        summary.highest_chances().rows(),
        chance,
    );
}

fn ranking(
    page: &mut Outline,
    heading: &str,
    figure_name: &str,
    rows: &[RankedRow],
    figure: impl Fn(&RankedRow) -> String,
) {
    let lines = rows.iter().map(|row| {
        vec![
            figure(row),
            cut(&row.id, CELL),
            row.verdict.word().to_owned(),
            place(row.location),
        ]
    });
    section(
        page,
        heading,
        &[figure_name, "Row", "Verdict", "Place"],
        lines.collect(),
        0..1,
    );
}

fn rejects(page: &mut Outline, summary: &Summary, run: &RunFacts) {
    if summary.rejected() == 0 {
        return;
    }
    let kinds = summary.rejects().each();
    let mut lines: Vec<_> = kinds
        .map(|(kind, number)| {
            vec![
                counted(*number),
                cut(&kind.field, 24),
                cut(&kind.problem, 60),
            ]
        })
        .collect();
    let others = *summary.rejects().others();
    if others > 0 {
        lines.push(vec![counted(others), "others".to_owned(), String::new()]);
    }
    section(
        page,
        "Rejected rows, and what to mend",
        &["Rows", "Field", "Problem"],
        lines,
        0..1,
    );
    page.gap();
    let listed = run.rejects_file.as_ref();
    let listed = listed.map(|file| format!("{file} lists them with their lines. "));
    page.paragraph(
        &format!(
            "{}Mend these fields in {} and run it again; no other figure counts these rows.",
            listed.unwrap_or_default(),
            run.table(),
        ),
        "",
    );
}

fn not_covered(page: &mut Outline, summary: &Summary, run: &RunFacts, texts: &CautionTexts) {
    page.heading("What the figures do not cover");
    for line in left_out(summary) {
        page.paragraph(&line, "- ");
    }
    for caution in standing(summary, run, texts) {
        page.paragraph(&format!("every row: {}", caution.text), "- ");
    }
    for caution in counted_cautions(summary, texts) {
        page.paragraph(&format!("{}: {}", rows(caution.rows), caution.text), "- ");
    }
}
