//! Zone codes, one or a numbered series.

/// One code, or a numbered series such as `A1..A30`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CodePattern {
    /// Exactly this code.
    One(String),
    /// A prefix and a number within bounds, both included.
    Series {
        /// What stands before the number.
        prefix: String,
        /// The least number.
        first: u32,
        /// The greatest number.
        last: u32,
    },
}

impl CodePattern {
    /// What is accepted.
    pub const ACCEPTED: &'static str =
        "a code, or one prefix with two numbers for a series, such as \"A1..A30\"";

    /// Whether a layer's code fits; case and outer spaces do not matter.
    #[must_use]
    pub fn fits(&self, code: &str) -> bool {
        let code = code.trim();
        match self {
            Self::One(one) => one.trim().to_lowercase() == code.to_lowercase(),
            Self::Series {
                prefix,
                first,
                last,
            } => code
                .get(..prefix.len())
                .filter(|start| start.eq_ignore_ascii_case(prefix))
                .and_then(|_| code.get(prefix.len()..))
                .filter(|number| number.bytes().all(|byte| byte.is_ascii_digit()))
                .and_then(|number| number.parse().ok())
                .is_some_and(|number: u32| (*first..=*last).contains(&number)),
        }
    }
}

impl TryFrom<String> for CodePattern {
    type Error = String;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        let Some((first, last)) = text.split_once("..") else {
            return Ok(Self::One(text));
        };
        let split = |end: &str| {
            let prefix = end.trim_end_matches(|character: char| character.is_ascii_digit());
            let number = end.strip_prefix(prefix)?.parse::<u32>().ok()?;
            Some((prefix.to_owned(), number))
        };
        match (split(first), split(last)) {
            (Some((prefix, first)), Some((other, last))) if prefix == other && first <= last => {
                Ok(Self::Series {
                    prefix,
                    first,
                    last,
                })
            }
            _ => Err("it is not a series of codes".to_owned()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_series_holds_its_numbers_only() {
        let series = CodePattern::try_from("A1..A30".to_owned()).unwrap();
        for code in ["A1", "a7", "A30", "A05", " A12 "] {
            assert!(series.fits(code), "{code}");
        }
        for code in ["A", "A0", "A31", "A99", "AE", "V1", "A1E", "Ä1", ""] {
            assert!(!series.fits(code), "{code}");
        }
        assert!(CodePattern::try_from("A1..V30".to_owned()).is_err());
        assert!(CodePattern::try_from("A..B".to_owned()).is_err());
    }
}
