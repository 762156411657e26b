//! Sentences under a drawing.

use super::sheet::{Anchor, Sheet};

/// From one line to the next, in pixels.
const LINE: f64 = 16.0;
/// Characters of a line on a sheet 640 pixels wide.
const COLUMNS: usize = 84;

/// Sentences broken into lines.
pub(super) struct Footnotes(Vec<String>);

impl Footnotes {
    /// Breaks sentences into lines; a word that is longer than a line is broken too.
    pub(super) fn of(sentences: &[String]) -> Self {
        let lines = sentences.iter().flat_map(|sentence| {
            let lines = textwrap::wrap(sentence, COLUMNS);
            lines.into_iter().map(std::borrow::Cow::into_owned)
        });
        Self(lines.collect())
    }

    /// The height that they take.
    #[allow(clippy::cast_precision_loss)] // a few lines
    pub(super) fn height(&self) -> f64 {
        self.0.len() as f64 * LINE
    }

    /// Draws them from a height down.
    pub(super) fn draw(&self, sheet: &mut Sheet, left: f64, top: f64) {
        let mut baseline = top + 12.0;
        for line in &self.0 {
            sheet.text("small soft", (left, baseline), Anchor::Start, line);
            baseline += LINE;
        }
    }
}
