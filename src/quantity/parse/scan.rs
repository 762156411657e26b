//! Splitting a text into numbers and words.

use crate::quantity::{LengthUnit, VerticalDatum};

/// One number with the unit of length behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Part {
    pub number: f64,
    pub unit: LengthUnit,
}

/// Reads as many `number unit` parts as there are and returns them with the words that
/// follow (the datum of an elevation, empty for a length).
pub(super) fn numbers_and_words(text: &str) -> Result<(Vec<Part>, &str), String> {
    let mut parts = Vec::new();
    let mut rest = text.trim();
    while starts_a_number(rest) {
        let (number, behind) = leading_number(rest)?;
        let before = behind;
        let (word, behind) = leading_word(behind);
        if word.is_empty() {
            return Err("it has no unit".to_owned());
        }
        let unit = word.parse().map_err(|_| not_a_unit(word, before))?;
        parts.push(Part { number, unit });
        rest = behind;
    }
    if parts.is_empty() {
        return Err(if rest.is_empty() {
            "it is empty"
        } else {
            "it does not begin with a number"
        }
        .to_owned());
    }
    Ok((parts, rest))
}

/// What is wrong with a word where a unit should be; `from_there` is the text from it on.
fn not_a_unit(word: &str, from_there: &str) -> String {
    if from_there.parse::<VerticalDatum>().is_ok() {
        "it has no unit".to_owned()
    } else {
        format!(
            "{word:?} is not a unit of length (those are {})",
            LengthUnit::ACCEPTED
        )
    }
}

/// Whether a word stands for hours.
pub(super) fn is_hours(word: &str) -> bool {
    ["h", "hour", "hours"]
        .iter()
        .any(|hours| word.eq_ignore_ascii_case(hours))
}

/// Reads one number and returns what follows it.
pub(super) fn number_and_rest(text: &str) -> Result<(f64, &str), String> {
    let text = text.trim();
    if text.is_empty() {
        return Err("it is empty".to_owned());
    }
    if !starts_a_number(text) {
        return Err("it does not begin with a number".to_owned());
    }
    leading_number(text)
}

pub(super) fn starts_a_number(text: &str) -> bool {
    text.starts_with(|character: char| {
        character.is_ascii_digit() || matches!(character, '+' | '-' | '.')
    })
}

/// A decimal, a fraction, or a whole number and a fraction: `0.5`, `1/2`, `35 1/2`, `35-1/2`.
pub(super) fn leading_number(text: &str) -> Result<(f64, &str), String> {
    let unsigned = text.strip_prefix(['+', '-']).unwrap_or(text);
    let sign = if text.starts_with('-') { -1.0 } else { 1.0 };
    let (first, rest) = leading_digits(unsigned);
    if let Some(behind) = rest.strip_prefix('/') {
        let (value, rest) = fraction(first, behind)?;
        return Ok((sign * value, rest));
    }
    if rest.starts_with(',') {
        return Err(
            "it has a comma; write a point for decimals and no thousands separator".to_owned(),
        );
    }
    if rest.starts_with(['e', 'E'])
        && rest[1..].starts_with(|next: char| next.is_ascii_digit() || matches!(next, '+' | '-'))
    {
        return Err("it is in scientific notation; write it out".to_owned());
    }
    let value = decimal(first)?;
    let after_space = rest
        .trim_start()
        .strip_prefix('-')
        .unwrap_or_else(|| rest.trim_start());
    let (numerator, behind) = leading_digits(after_space);
    match behind.strip_prefix('/') {
        Some(behind) if !numerator.is_empty() => {
            let (part, rest) = fraction(numerator, behind)?;
            Ok((sign * (value + part), rest))
        }
        _ => Ok((sign * value, rest.trim_start())),
    }
}

/// Whether a word is a unit of length.
pub(super) fn is_unit_of_length(word: &str) -> bool {
    word.parse::<LengthUnit>().is_ok()
}

fn fraction<'text>(numerator: &str, behind: &'text str) -> Result<(f64, &'text str), String> {
    let (denominator, rest) = leading_digits(behind);
    let (top, bottom) = (decimal(numerator)?, decimal(denominator)?);
    if bottom == 0.0 {
        return Err("it divides by zero".to_owned());
    }
    Ok((top / bottom, rest.trim_start()))
}

fn decimal(digits: &str) -> Result<f64, String> {
    digits
        .parse::<f64>()
        .map_err(|_| format!("{digits:?} is not a number"))
}

fn leading_digits(text: &str) -> (&str, &str) {
    let end = text
        .find(|character: char| !(character.is_ascii_digit() || character == '.'))
        .unwrap_or(text.len());
    text.split_at(end)
}

pub(super) fn leading_word(text: &str) -> (&str, &str) {
    let mark_length = text
        .chars()
        .next()
        .filter(|first| matches!(first, '\'' | '"' | '\u{2032}' | '\u{2033}'))
        .map(char::len_utf8);
    let end = mark_length.unwrap_or_else(|| {
        text.find(|character: char| character.is_whitespace() || character.is_ascii_digit())
            .unwrap_or(text.len())
    });
    let (word, rest) = text.split_at(end);
    (word, rest.trim_start())
}
