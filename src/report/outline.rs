//! What a report says before it has a look: headings, paragraphs, lists and tables.
//!
//! The text for a terminal and the page are laid out from the same outline, so that both say
//! the same in the same words.

use std::ops::Range;

/// The blocks of a report from top to bottom.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::report) struct Outline {
    blocks: Vec<Block>,
}

/// A part of an outline.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::report) enum Block {
    /// Over what follows.
    Heading(String),
    /// A paragraph behind a mark, such as `- ` for an item of a list; spaces alone set it in
    /// below the one before.
    Paragraph {
        /// The mark, possibly empty.
        mark: String,
        /// The sentences.
        text: String,
    },
    /// Figures side by side.
    Table(Table),
    /// Air between two blocks.
    Gap,
}

impl Outline {
    pub(in crate::report) fn blocks(&self) -> &[Block] {
        &self.blocks
    }

    pub(in crate::report) fn gap(&mut self) {
        self.blocks.push(Block::Gap);
    }

    pub(in crate::report) fn heading(&mut self, heading: &str) {
        self.blocks.push(Block::Heading(heading.to_owned()));
    }

    pub(in crate::report) fn paragraph(&mut self, text: &str, mark: &str) {
        self.blocks.push(Block::Paragraph {
            mark: mark.to_owned(),
            text: text.to_owned(),
        });
    }

    pub(in crate::report) fn table(&mut self, table: Table) {
        self.blocks.push(Block::Table(table));
    }

    /// Adds all of another outline at the end.
    pub(in crate::report) fn append(&mut self, other: Self) {
        self.blocks.extend(other.blocks);
    }
}

/// A table. Its first column says what each row is about.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::report) struct Table {
    header: Vec<String>,
    rows: Vec<Vec<String>>,
    figures: Vec<Range<usize>>,
}

impl Table {
    /// A table with a header.
    pub(in crate::report) fn with_header<Name: Into<String>>(
        header: impl IntoIterator<Item = Name>,
    ) -> Self {
        Self {
            header: header.into_iter().map(Into::into).collect(),
            ..Self::default()
        }
    }

    pub(in crate::report) fn add_row<Cell: Into<String>>(
        &mut self,
        row: impl IntoIterator<Item = Cell>,
    ) {
        self.rows.push(row.into_iter().map(Into::into).collect());
    }

    /// Says that columns hold figures, which stand at the right.
    pub(in crate::report) fn figures(&mut self, columns: Range<usize>) {
        self.figures.push(columns);
    }

    pub(in crate::report) fn header(&self) -> &[String] {
        &self.header
    }

    pub(in crate::report) fn rows(&self) -> &[Vec<String>] {
        &self.rows
    }

    pub(in crate::report) fn has_figures(&self, column: usize) -> bool {
        self.figures.iter().any(|columns| columns.contains(&column))
    }

    pub(in crate::report) fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }
}
