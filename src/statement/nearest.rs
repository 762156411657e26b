//! The word that somebody may have meant.

/// The word of a list that differs from `text` by the fewest slips of a letter (inserted, left
/// out, replaced, or swapped with its neighbour), case apart; `None` where every word differs by more than a third of its
/// letters, for then it is a guess.
///
/// ```
/// use sillmark::statement::nearest;
/// assert_eq!(nearest("flod_level", ["freeboard", "flood_level"]), Some("flood_level"));
/// assert_eq!(nearest("colour", ["freeboard", "flood_level"]), None);
/// ```
#[must_use]
pub fn nearest<'word>(
    text: &str,
    words: impl IntoIterator<Item = &'word str>,
) -> Option<&'word str> {
    let text = letters(text);
    // Distances grow with the square of the length; no word of a list is that long.
    if text.len() > LONGEST {
        return None;
    }
    words
        .into_iter()
        .map(|word| (letters(word), word))
        .filter(|(letters, _)| letters.len() <= LONGEST)
        .map(|(letters, word)| (slips(&text, &letters), letters.len(), word))
        .filter(|(slips, length, _)| slips * 3 <= *length)
        .min_by_key(|(slips, ..)| *slips)
        .map(|(.., word)| word)
}

const LONGEST: usize = 100;

fn letters(text: &str) -> Vec<char> {
    text.trim().chars().flat_map(char::to_lowercase).collect()
}

/// The edit distance with swaps of neighbours (optimal string alignment).
fn slips(one: &[char], other: &[char]) -> usize {
    let columns = other.len() + 1;
    let mut before: Vec<usize> = Vec::new();
    let mut above: Vec<usize> = (0..columns).collect();
    for (line, left) in one.iter().enumerate() {
        let mut row = vec![line + 1; columns];
        for (column, right) in other.iter().enumerate() {
            let replaced = above[column] + usize::from(left != right);
            let least = replaced.min(above[column + 1] + 1).min(row[column] + 1);
            let swapped =
                line > 0 && column > 0 && *left == other[column - 1] && one[line - 1] == *right;
            row[column + 1] = if swapped {
                least.min(before[column - 1] + 1)
            } else {
                least
            };
        }
        before = std::mem::replace(&mut above, row);
    }
    above[columns - 1]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_counted() {
        for (one, other, count) in [
            ("", "", 0),
            ("sill", "sill", 0),
            ("sil", "sill", 1),
            ("silll", "sill", 1),
            ("sall", "sill", 1),
            ("widht", "width", 1),
            ("ab", "ba", 1),
            ("kitten", "sitting", 3),
        ] {
            assert_eq!(
                slips(&letters(one), &letters(other)),
                count,
                "{one} {other}"
            );
        }
    }

    #[test]
    fn a_long_text_is_no_slip() {
        assert_eq!(nearest(&"sill".repeat(1000), ["sill"]), None);
        assert_eq!(nearest("SILL ", ["sill"]), Some("sill"));
        assert_eq!(nearest("sill", []), None);
    }
}
