//! How finely a quantity is written.

use super::scan::{is_hours, is_unit_of_length, leading_number, leading_word, starts_a_number};

/// One unit in the last digit of a quantity as it is written, as a quantity in the same unit:
/// `0.1 ft NAVD88` of `9.2 ft NAVD88`. Of a length in feet and inches it is that of the inches,
/// of a fraction its part. `None` where the text does not begin with a number.
///
/// ```
/// use sillmark::quantity::last_digit;
/// assert_eq!(last_digit("9.2 ft NAVD88").as_deref(), Some("0.1 ft NAVD88"));
/// assert_eq!(last_digit("3 ft 4 1/2 in").as_deref(), Some("1/2 in"));
/// assert_eq!(last_digit("281 lb/ft").as_deref(), Some("1 lb/ft"));
/// ```
#[must_use]
pub fn last_digit(text: &str) -> Option<String> {
    let mut rest = text.trim();
    let mut last = None;
    while starts_a_number(rest) {
        let (_, behind) = leading_number(rest).ok()?;
        let number = rest[..rest.len() - behind.len()].trim_end();
        last = Some((number, behind));
        let (word, following) = leading_word(behind);
        // Only feet and inches, and hours and minutes, stand together; `m2/s` is one unit.
        let is_mark = !word.bytes().all(|byte| byte.is_ascii_alphabetic());
        let is_apart = is_mark || behind.len() > word.len() + following.len();
        let goes_on = is_unit_of_length(word) || (is_hours(word) && starts_a_number(following));
        if !is_apart || !goes_on {
            break;
        }
        rest = following;
    }
    let (number, unit) = last?;
    Some(format!("{} {unit}", unit_of_last_digit(number)))
}

/// `1/2` of `4 1/2`, `0.01` of `9.25`, `1` of `12`.
fn unit_of_last_digit(number: &str) -> String {
    if let Some((_, denominator)) = number.rsplit_once('/') {
        return format!("1/{denominator}");
    }
    let decimals = number
        .rsplit_once('.')
        .map_or(0, |(_, behind)| behind.len());
    match decimals {
        0 => "1".to_owned(),
        _ => format!("0.{}1", "0".repeat(decimals - 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_digit_of_what_people_write() {
        for (text, unit) in [
            ("9 ft NGVD29", "1 ft NGVD29"),
            ("9.20 ft EPSG:5703", "0.01 ft EPSG:5703"),
            ("-2 in", "1 in"),
            ("3' 4\"", "1 \""),
            ("3'4.5\"", "0.1 \""),
            ("35-1/2 in", "1/2 in"),
            ("3 ft", "1 ft"),
            ("4.905 kN/m", "0.001 kN/m"),
            ("0.001 m2/s", "0.001 m2/s"),
            ("600 ft2", "1 ft2"),
            ("12 h", "1 h"),
            ("1 h 30 min", "1 min"),
        ] {
            assert_eq!(last_digit(text).as_deref(), Some(unit), "{text}");
        }
        for text in ["", "about 9 ft", "ft 9", "1,000 ft", "1e3 ft", "1/0 ft"] {
            assert_eq!(last_digit(text), None, "{text}");
        }
    }
}
