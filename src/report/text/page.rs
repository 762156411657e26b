//! A page of plain text that grows from top to bottom.

use std::ops::Range;

use comfy_table::{CellAlignment, ContentArrangement, Table, presets};

use crate::report::paragraph;

/// The page so far.
pub(in crate::report) struct Page {
    pub(in crate::report) text: String,
    columns: usize,
}

impl Page {
    pub(in crate::report) fn new(columns: usize) -> Self {
        Self {
            text: String::new(),
            columns,
        }
    }

    pub(in crate::report) fn blank(&mut self) {
        self.text.push('\n');
    }

    pub(in crate::report) fn heading(&mut self, heading: &str) {
        self.blank();
        self.paragraph(heading, "");
    }

    /// A paragraph behind a mark; its further lines are set in below the first.
    pub(in crate::report) fn paragraph(&mut self, text: &str, mark: &str) {
        let set_in = " ".repeat(mark.chars().count());
        self.text
            .push_str(&paragraph(text, mark, &set_in, self.columns));
    }

    pub(in crate::report) fn table(&mut self, table: &Table) {
        for line in table.to_string().lines() {
            self.text.push_str(line.trim_end());
            self.blank();
        }
    }
}

/// A table without lines; what does not fit is not broken.
pub(in crate::report) fn plain_table() -> Table {
    let mut table = Table::new();
    table
        .load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Disabled);
    table
}

/// Figures stand at the right of their columns.
pub(in crate::report) fn columns_to_the_right(table: &mut Table, columns: Range<usize>) {
    for column in columns {
        if let Some(column) = table.column_mut(column) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
}
