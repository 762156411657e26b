//! Numbers, verdicts and places in words.

use crate::portfolio::summary::HeightBin;
use crate::quantity::UnitSystem;
use crate::site::Location;

/// A count with a comma at every thousand.
pub(super) fn counted(number: u64) -> String {
    let digits = number.to_string();
    let mut text = String::with_capacity(digits.len() + digits.len() / 3);
    for (position, digit) in digits.chars().enumerate() {
        if position > 0 && (digits.len() - position).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

/// "1 row", "1,204 rows".
pub(super) fn rows(number: u64) -> String {
    match number {
        1 => "1 row".to_owned(),
        _ => format!("{} rows", counted(number)),
    }
}

/// A part of a whole in percent; a part that is there never reads as nothing, and one that is
/// not the whole never as all.
pub(super) fn share(part: u64, whole: u64) -> String {
    if whole == 0 {
        return "–".to_owned();
    }
    let percent = per_whole(part, whole) * 100.0;
    match part {
        0 => "0 %".to_owned(),
        _ if part == whole => "100 %".to_owned(),
        _ if percent < 0.1 => "< 0.1 %".to_owned(),
        _ if percent > 99.9 => "> 99.9 %".to_owned(),
        _ => format!("{percent:.1} %"),
    }
}

/// `part / whole`, and 0 of nothing.
#[allow(clippy::cast_precision_loss)] // exact up to 9e15 rows
pub(super) fn per_whole(part: u64, whole: u64) -> f64 {
    if whole == 0 {
        0.0
    } else {
        part as f64 / whole as f64
    }
}

/// A code as words: `sill-below` is "sill below".
pub(super) fn code_words(code: &str) -> String {
    code.replace('-', " ")
}

/// A place to a metre or so.
pub(super) fn place(location: Option<Location>) -> String {
    let Some(location) = location else {
        return "no place".to_owned();
    };
    let (latitude, longitude) = (location.latitude(), location.longitude());
    format!(
        "{:.5}° {}, {:.5}° {}",
        latitude.abs(),
        if latitude < 0.0 { "S" } else { "N" },
        longitude.abs(),
        if longitude < 0.0 { "W" } else { "E" },
    )
}

/// A yearly chance, given as a fraction, in percent.
pub(super) fn yearly_chance(fraction: f64) -> String {
    let percent = fraction * 100.0;
    match percent {
        _ if percent >= 10.0 => format!("{percent:.0} %"),
        _ if percent >= 1.0 => format!("{percent:.1} %"),
        _ if percent >= 0.01 => format!("{percent:.2} %"),
        _ => "< 0.01 %".to_owned(),
    }
}

/// The heights that a bin holds.
pub(super) fn heights(bin: &HeightBin, units: UnitSystem) -> String {
    match (bin.above, bin.up_to) {
        (Some(above), Some(up_to)) => {
            format!("{} to {}", units.height(above), units.height(up_to))
        }
        (Some(above), None) => format!("more than {}", units.height(above)),
        (None, _) => "nothing to protect".to_owned(),
    }
}

/// At most `limit` characters, the last of them `…` where some are left out.
pub(super) fn cut(text: &str, limit: usize) -> String {
    if text.chars().count() <= limit {
        return text.to_owned();
    }
    let kept = text.chars().take(limit.saturating_sub(1));
    kept.chain(std::iter::once('…')).collect()
}
