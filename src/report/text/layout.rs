//! An outline as plain text.

use comfy_table::{CellAlignment, ContentArrangement, presets};

use crate::report::outline::{Block, Outline, Table};
use crate::report::paragraph;

/// The outline as plain text: paragraphs in lines of at most `columns`, their further lines
/// set in below the first; tables as wide as they are.
pub(in crate::report) fn lay_out(outline: &Outline, columns: usize) -> String {
    let mut text = String::new();
    for block in outline.blocks() {
        match block {
            Block::Heading(heading) => {
                text.push('\n');
                text.push_str(&paragraph(heading, "", "", columns));
            }
            Block::Paragraph { mark, text: words } => {
                let set_in = " ".repeat(mark.chars().count());
                text.push_str(&paragraph(words, mark, &set_in, columns));
            }
            Block::Table(table) => {
                for line in without_lines(table).to_string().lines() {
                    text.push_str(line.trim_end());
                    text.push('\n');
                }
            }
            Block::Gap => text.push('\n'),
        }
    }
    text
}

/// A table without lines; what does not fit is not broken.
fn without_lines(table: &Table) -> comfy_table::Table {
    let mut drawn = comfy_table::Table::new();
    drawn
        .load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Disabled);
    if !table.header().is_empty() {
        drawn.set_header(table.header());
    }
    for row in table.rows() {
        drawn.add_row(row);
    }
    for (number, column) in drawn.column_iter_mut().enumerate() {
        if table.has_figures(number) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    drawn
}
