//! Paragraphs of plain text.

use textwrap::{Options, WordSeparator, WordSplitter};

/// `text` in lines of at most `columns`, the first set in by `first`, the others by
/// `further`; it ends with a line break. Lines break at spaces alone, so that an id, a path
/// or a number with its sign stays whole.
///
/// ```
/// use sillmark::report::paragraph;
/// assert_eq!(paragraph("rule us-nfip-minimum", "- ", "  ", 12), "- rule\n  us-nfip-minimum\n");
/// ```
#[must_use]
pub fn paragraph(text: &str, first: &str, further: &str, columns: usize) -> String {
    let options = Options::new(columns)
        .initial_indent(first)
        .subsequent_indent(further)
        .word_separator(WordSeparator::AsciiSpace)
        .word_splitter(WordSplitter::NoHyphenation)
        .break_words(false);
    let mut lines = textwrap::fill(text, options);
    lines.push('\n');
    lines
}
