//! Why a text is not a quantity.

/// What was looked for, and what would have been accepted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Expected {
    Length,
    SignedLength,
    Elevation,
    Velocity,
    Duration,
    AnnualChance,
    /// A number and a unit; the words stand in its table.
    Measure {
        noun: &'static str,
        accepted: &'static str,
    },
}

impl Expected {
    const fn noun(self) -> &'static str {
        match self {
            Self::Length | Self::SignedLength => "a length",
            Self::Elevation => "an elevation",
            Self::Velocity => "a water speed",
            Self::Duration => "a time",
            Self::AnnualChance => "an annual chance",
            Self::Measure { noun, .. } => noun,
        }
    }

    const fn accepted(self) -> &'static str {
        match self {
            Self::Length => {
                "a length with its unit, such as \"36 in\", \"3 ft 4 1/2 in\" or \"0.91 m\""
            }
            Self::SignedLength => {
                "a length with its unit, negative for below, such as \"-2 in\", \"0 in\" or \"0.15 m\""
            }
            Self::Elevation => {
                "a height with its unit and vertical datum, such as \"8.1 ft NAVD88\" or \"2.47 m EPSG:5703\""
            }
            Self::Velocity => "a speed with its unit, such as \"2 ft/s\" or \"0.6 m/s\"",
            Self::Duration => {
                "a time with its unit, such as \"12 h\", \"1 h 30 min\" or \"3 days\""
            }
            Self::AnnualChance => {
                "a percentage between 0% and 100%, such as \"1%\" or \"0.2%\", or \"1 in 100\""
            }
            Self::Measure { accepted, .. } => accepted,
        }
    }
}

/// A text that could not be read as a quantity.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{text:?} is not {}: {problem}; accepted: {}", expected.noun(), expected.accepted())]
pub struct QuantityError {
    text: String,
    expected: Expected,
    problem: String,
}

impl QuantityError {
    pub(super) fn new(text: &str, expected: Expected, problem: impl Into<String>) -> Self {
        Self {
            text: text.to_owned(),
            expected,
            problem: problem.into(),
        }
    }

    /// The text as it was written.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// What is wrong with it.
    #[must_use]
    pub fn problem(&self) -> &str {
        &self.problem
    }

    /// What would have been accepted.
    #[must_use]
    pub const fn accepted(&self) -> &'static str {
        self.expected.accepted()
    }
}
