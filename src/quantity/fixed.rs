//! Numbers with a fixed count of decimals.

use std::io::Write as _;

/// Powers of ten that are exact, for as many decimals.
const SCALES: [f64; 10] = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

/// Up to here a scaled number is an integer with room for the error of its product.
const LARGEST: f64 = 4_503_599_627_370_496.0;

/// Appends a number with so many decimals, nothing where it is not finite.
///
/// The digits are those of `format!("{number:.decimals$}")`, which rounds the number's exact
/// value, to even where it lies exactly between; only a zero never has a sign.
///
/// ```
/// let mut line = Vec::new();
/// sillmark::quantity::push_fixed(&mut line, -2.675, 2);
/// assert_eq!(line, b"-2.67"); // the number is a little nearer to zero than it is written
/// ```
pub fn push_fixed(line: &mut Vec<u8>, number: f64, decimals: usize) {
    if !number.is_finite() {
        return;
    }
    let scaled = SCALES.get(decimals).map(|scale| number.abs() * scale);
    match scaled.filter(|scaled| *scaled < LARGEST).and_then(rounded) {
        Some(whole) => push_scaled(line, number < 0.0, whole, decimals),
        None => push_exact(line, number, decimals),
    }
}

/// The product rounded; `None` where its error, half a unit in its last place, could change
/// how the number is rounded.
fn rounded(scaled: f64) -> Option<u64> {
    // Not `floor`, which is a call where the processor may be an old one.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 2⁵²
    let whole = scaled as u64;
    #[allow(clippy::cast_precision_loss)] // as above
    let beyond = scaled - whole as f64 - 0.5;
    (beyond.abs() > scaled * f64::EPSILON).then(|| whole + u64::from(beyond > 0.0))
}

fn push_scaled(line: &mut Vec<u8>, is_negative: bool, whole: u64, decimals: usize) {
    if is_negative && whole > 0 {
        line.push(b'-');
    }
    let mut digits = itoa::Buffer::new();
    let digits = digits.format(whole).as_bytes();
    if decimals == 0 {
        line.extend_from_slice(digits);
        return;
    }
    let before = digits.len().saturating_sub(decimals);
    let (before, after) = digits.split_at(before);
    line.extend_from_slice(if before.is_empty() { b"0" } else { before });
    line.push(b'.');
    line.resize(line.len() + decimals - after.len(), b'0');
    line.extend_from_slice(after);
}

fn push_exact(line: &mut Vec<u8>, number: f64, decimals: usize) {
    let start = line.len();
    // Writing to memory does not fail.
    let _ = write!(line, "{number:.decimals$}");
    let is_zero = line[start..].iter().all(|byte| b"-0.".contains(byte));
    if is_zero && line.get(start) == Some(&b'-') {
        line.remove(start);
    }
}

/// A number with a fixed count of decimals, and no minus before a rounded zero.
pub(super) fn fixed(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return format!("{value:.decimals$}");
    }
    let mut text = Vec::with_capacity(12);
    push_fixed(&mut text, value, decimals);
    String::from_utf8(text).unwrap_or_default()
}
