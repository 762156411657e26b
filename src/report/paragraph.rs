//! Paragraphs of plain text.

use textwrap::{Options, WordSeparator, WordSplitter};

/// Stands between a number and its unit while lines are filled.
const GLUE: char = '\u{a0}';

/// `text` in lines of at most `columns`, the first set in by `first`, the others by
/// `further`; it ends with a line break. Lines break at spaces alone, so that an id, a path
/// or a number with its sign stays whole, and not between a number and its unit.
///
/// ```
/// use sillmark::report::paragraph;
/// assert_eq!(paragraph("rule us-nfip-minimum", "- ", "  ", 12), "- rule\n  us-nfip-minimum\n");
/// assert_eq!(paragraph("takes 435 lb", "", "", 10), "takes\n435 lb\n");
/// ```
#[must_use]
pub fn paragraph(text: &str, first: &str, further: &str, columns: usize) -> String {
    let options = Options::new(columns)
        .initial_indent(first)
        .subsequent_indent(further)
        .word_separator(WordSeparator::AsciiSpace)
        .word_splitter(WordSplitter::NoHyphenation)
        .break_words(false);
    let mut lines = textwrap::fill(&units_at_numbers(text), options).replace(GLUE, " ");
    lines.push('\n');
    lines
}

/// The text with every number glued to the word behind it, unless that is in brackets.
fn units_at_numbers(text: &str) -> String {
    let mut glued = String::with_capacity(text.len());
    for (position, word) in text.split(' ').enumerate() {
        if position > 0 {
            let before = glued.rsplit([' ', GLUE]).next().unwrap_or_default();
            let unit = is_number(before) && !word.starts_with('(');
            glued.push(if unit { GLUE } else { ' ' });
        }
        glued.push_str(word);
    }
    glued
}

fn is_number(word: &str) -> bool {
    let digits = word.trim_start_matches(['(', '-', '±']);
    !digits.is_empty()
        && digits
            .chars()
            .all(|each| each.is_ascii_digit() || each == '.')
}
