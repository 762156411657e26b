//! Text without blanks around it.

/// As [`str::trim`], which looks at whole characters from both ends: most values begin and end
/// with a letter or a digit, and two bytes tell.
pub(super) fn trimmed(text: &str) -> &str {
    match text.as_bytes() {
        [first, .., last] if first.is_ascii_graphic() && last.is_ascii_graphic() => text,
        _ => text.trim(),
    }
}

#[cfg(test)]
mod tests {
    use super::trimmed;

    #[test]
    fn blanks_of_every_kind_go() {
        for text in [
            "",
            " ",
            "a",
            " a",
            "ab",
            "a b",
            "a ",
            "\u{a0}a b\u{2003}",
            "é",
            "é b\t",
        ] {
            assert_eq!(trimmed(text), text.trim());
        }
    }
}
