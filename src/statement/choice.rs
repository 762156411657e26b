//! Values that a user picks from a short list of words.

/// A type whose values are words in a file.
pub trait Choice: Copy + PartialEq + 'static {
    /// The words and what they mean, in the order to offer them.
    const CHOICES: &'static [(&'static str, Self)];

    /// The word for this value.
    fn word(self) -> &'static str {
        Self::CHOICES
            .iter()
            .find(|(_, choice)| *choice == self)
            .map_or("", |(word, _)| word)
    }
}

impl Choice for bool {
    const CHOICES: &'static [(&'static str, Self)] = &[("true", true), ("false", false)];
}
