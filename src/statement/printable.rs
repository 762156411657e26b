//! Text of others on a line of ours.

/// A text on one line, in reading order: a line break, an escape sequence, or a mark that turns
/// what follows (Unicode Standard Annex 9) or cannot be seen must not change what stands beside
/// it. Each of them becomes a blank.
///
/// ```
/// use sillmark::statement::printable;
/// assert_eq!(printable("AE\u{202e}\nX\u{1b}[31m"), "AE  X [31m");
/// ```
#[must_use]
pub fn printable(text: &str) -> String {
    let turns = |letter: char| {
        matches!(letter, '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}')
            || matches!(
                letter,
                '\u{2028}' | '\u{2029}' | '\u{2060}'..='\u{2069}' | '\u{feff}'
            )
    };
    text.replace(|letter: char| letter.is_control() || turns(letter), " ")
}
