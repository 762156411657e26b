//! An outline as HTML.

use askama::Template;

use crate::report::outline::{Block, Outline, Table};

/// The blocks of an outline, lists gathered.
#[derive(Template)]
#[template(path = "report/page/blocks.html")]
pub(super) struct Blocks<'a> {
    /// Level of the headings.
    level: u8,
    parts: Vec<Part<'a>>,
}

enum Part<'a> {
    Heading(&'a str),
    Paragraph(&'a str),
    /// Items, each with the lines that are set in below it.
    List(Vec<Vec<&'a str>>),
    /// Numbered sources: mark and text.
    Notes(Vec<(&'a str, &'a str)>),
    Table(Grid<'a>),
}

/// A table cell by cell.
struct Grid<'a> {
    header: Vec<Cell<'a>>,
    rows: Vec<Vec<Cell<'a>>>,
}

struct Cell<'a> {
    text: &'a str,
    /// Whether it stands at the right.
    figure: bool,
}

impl<'a> Grid<'a> {
    fn of(table: &'a Table) -> Self {
        // A row may end before the last column; a line below it does not.
        let columns = table.rows().iter().map(Vec::len).max().unwrap_or_default();
        let columns = columns.max(table.header().len());
        let cells = |row: &'a [String]| {
            let texts = row.iter().map(|text| text.trim());
            let cells = texts.chain(std::iter::repeat("")).enumerate();
            cells
                .take(columns)
                .map(|(column, text)| Cell {
                    text,
                    figure: table.has_figures(column),
                })
                .collect()
        };
        Self {
            header: match table.header() {
                [] => Vec::new(),
                header => cells(header),
            },
            rows: table.rows().iter().map(|row| cells(row)).collect(),
        }
    }
}

impl<'a> Blocks<'a> {
    /// The outline as HTML, its headings of a level.
    pub(super) fn render(outline: &'a Outline, level: u8) -> Result<String, askama::Error> {
        let mut parts = Vec::new();
        for block in outline.blocks() {
            match block {
                Block::Heading(heading) => parts.push(Part::Heading(heading)),
                Block::Table(table) => parts.push(Part::Table(Grid::of(table))),
                Block::Paragraph { mark, text } => paragraph(&mut parts, mark.trim(), text),
                Block::Gap => {}
            }
        }
        Self { level, parts }.render()
    }
}

fn paragraph<'a>(parts: &mut Vec<Part<'a>>, mark: &'a str, text: &'a str) {
    match (mark, parts.last_mut()) {
        ("-", Some(Part::List(items))) => items.push(vec![text]),
        ("-", _) => parts.push(Part::List(vec![vec![text]])),
        ("", Some(Part::List(items))) => {
            if let Some(item) = items.last_mut() {
                item.push(text);
            }
        }
        ("", _) => parts.push(Part::Paragraph(text)),
        (mark, Some(Part::Notes(notes))) => notes.push((mark, text)),
        (mark, _) => parts.push(Part::Notes(vec![(mark, text)])),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_are_gathered_and_texts_escaped() {
        let mut outline = Outline::default();
        outline.heading("<b>Why</b>");
        outline.paragraph("one", "- ");
        outline.paragraph("more of one", "  ");
        outline.paragraph("two", "- ");
        outline.paragraph("a source", "[1] ");
        let mut table = Table::with_header(["Part", "Force"]);
        table.add_row(["plank", "3 N"]);
        table.figures(1..2);
        outline.table(table);
        insta::assert_snapshot!(Blocks::render(&outline, 3).unwrap(), @r#"
        <h3>&#60;b&#62;Why&#60;/b&#62;</h3>
        <ul>
        <li>one<br>more of one</li>
        <li>two</li>
        </ul>
        <ul class="notes">
        <li><span class="key">[1]</span> a source</li>
        </ul>
        <div class="wide"><table>
        <thead><tr><th scope="col">Part</th><th scope="col" class="figure">Force</th></tr></thead>
        <tbody>
        <tr><th scope="row">plank</th><td class="figure">3 N</td></tr>
        </tbody></table></div>
        "#);
    }
}
