//! A list as text.

use sillmark::quantity::UnitSystem;
use sillmark::report::paragraph;
use sillmark::statement::Citation;

/// Units of lists that are not in those of their source.
pub(super) const UNITS: UnitSystem = UnitSystem::Us;

/// Columns of a line.
const COLUMNS: usize = 96;

/// A list under construction: a line for each entry, its details set in below it.
#[derive(Default)]
pub(super) struct List(pub(super) String);

impl List {
    pub(super) fn entry(&mut self, id: &str, text: &str) {
        if !self.0.is_empty() {
            self.0.push('\n');
        }
        self.lines(&format!("{id}: {text}"), "", "  ");
    }

    pub(super) fn detail(&mut self, text: &str) {
        self.lines(text, "  ", "    ");
    }

    /// A line that stays in one piece.
    pub(super) fn line(&mut self, text: &str) {
        self.0.push_str("  ");
        self.0.push_str(text);
        self.0.push('\n');
    }

    pub(super) fn source(&mut self, citation: &Citation) {
        self.detail(&format!(
            "source ({}): {}",
            citation.confidence, citation.source
        ));
    }

    fn lines(&mut self, text: &str, first: &str, further: &str) {
        self.0.push_str(&paragraph(text, first, further, COLUMNS));
    }
}
