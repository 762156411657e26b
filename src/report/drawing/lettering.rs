//! Room for texts: how wide they are, and how they keep clear of each other.

/// How wide a text is, in pixels, for a font of `size` pixels.
///
/// Which font it will be is not known before a page is shown; the advance widths are those of
/// `DejaVu` Sans 2.37 (read from the font's `hmtx` table, rounded up), the widest of those that
/// the style sheet names.
pub(in crate::report) fn width(text: &str, size: f64) -> f64 {
    text.chars().map(advance).sum::<f64>() * size
}

/// How far a letter moves the pen on, as a part of the font's size.
fn advance(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | 'I' | 'J' | '′' | '\'' => 0.3,
        ' ' | '.' | ',' => 0.32,
        'f' | ':' | ';' | '/' | '-' => 0.36,
        't' | 'r' | '(' | ')' | '[' | ']' => 0.42,
        's' | 'z' | 'c' | '"' | '–' | '_' => 0.55,
        'w' | '±' | '=' | '+' | '<' | '>' => 0.84,
        'm' | 'M' | 'W' | '%' | '…' | '@' | '—' => 1.0,
        'A'..='Z' => 0.79,
        letter if letter.is_ascii() => 0.64,
        // Letters of other scripts: some are twice as wide as a digit.
        _ => 1.0,
    }
}

/// How much wider bold letters are, from the same source.
pub(in crate::report) const BOLD: f64 = 1.12;

/// A text cut to a width, with an ellipsis where something is missing.
pub(in crate::report) fn fitted(text: &str, size: f64, room: f64) -> String {
    if width(text, size) <= room {
        return text.to_owned();
    }
    let mut short = String::new();
    for character in text.chars() {
        let mut longer = short.clone();
        longer.push(character);
        longer.push('…');
        if width(&longer, size) > room {
            break;
        }
        longer.pop();
        short = longer;
    }
    let mut short = short.trim_end().to_owned();
    short.push('…');
    short
}

/// Moves places along one axis until neighbours are `apart` from each other, each as near to
/// where it was wanted as the others allow, between `low` and `high` as far as there is room.
/// The answer is in the order of `wanted`.
#[allow(clippy::cast_precision_loss)] // as many as a drawing has labels
pub(in crate::report) fn spread(wanted: &[f64], apart: f64, (low, high): (f64, f64)) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|one, two| wanted[*one].total_cmp(&wanted[*two]));
    // Less the room of all before it, each place only has to be no lower than the one before:
    // the nearest such sequence is found by pooling neighbours that are the wrong way round.
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (position, index) in order.iter().enumerate() {
        let mut pool = (wanted[*index] - position as f64 * apart, 1);
        while let Some((mean, count)) = pools.pop_if(|(mean, _)| *mean > pool.0) {
            let total = count + pool.1;
            pool = (
                (mean * count as f64 + pool.0 * pool.1 as f64) / total as f64,
                total,
            );
        }
        pools.push(pool);
    }
    let last = wanted.len().saturating_sub(1) as f64 * apart;
    let mut places = vec![0.0; wanted.len()];
    let means = pools
        .into_iter()
        .flat_map(|(mean, count)| std::iter::repeat_n(mean, count));
    for ((position, index), mean) in order.iter().enumerate().zip(means) {
        places[*index] = mean.min(high - last).max(low) + position as f64 * apart;
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_that_have_room_stay() {
        assert_eq!(spread(&[50.0, 10.0], 12.0, (0.0, 100.0)), [50.0, 10.0]);
    }

    #[test]
    fn labels_that_touch_share_the_way() {
        assert_eq!(
            spread(&[52.0, 50.0, 10.0], 12.0, (0.0, 100.0)),
            [57.0, 45.0, 10.0]
        );
    }

    #[test]
    fn labels_stay_on_the_sheet() {
        assert_eq!(spread(&[99.0, 98.0], 10.0, (0.0, 100.0)), [100.0, 90.0]);
        assert_eq!(spread(&[1.0], 10.0, (5.0, 100.0)), [5.0]);
    }

    #[test]
    fn a_long_text_is_cut() {
        assert_eq!(fitted("gatehouse", 10.0, 60.0), "gatehouse");
        assert_eq!(fitted("gatehouse door", 10.0, 66.0), "gatehouse…");
        assert_eq!(fitted("door", 10.0, 6.0), "…");
    }
}
