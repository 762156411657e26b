//! Room for texts: how wide they are, and how they keep clear of each other.

/// How wide a text is at most, in pixels, for a font of `size` pixels.
///
/// 0.6 of the size for a character is on the wide side for mixed text in a sans-serif font
/// (common practice, no source); which font it will be is not known before a page is shown.
#[allow(clippy::cast_precision_loss)] // a short text
pub(in crate::report) fn width(text: &str, size: f64) -> f64 {
    text.chars().count() as f64 * size * 0.6
}

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
        assert_eq!(fitted("gatehouse door", 10.0, 60.0), "gatehouse…");
        assert_eq!(fitted("été", 10.0, 6.0), "…");
    }
}
