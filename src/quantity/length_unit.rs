//! The units a length can be stated in, by the names that files and people use.

use std::fmt;
use std::str::FromStr;

use super::unit::{Length, centimeter, foot, inch, meter, millimeter, survey_foot};

/// A unit of length as written in a file, a table column or a site description.
///
/// ```
/// use sillmark::quantity::{LengthUnit, unit::meter};
/// let unit: LengthUnit = "Feet".parse()?;
/// assert_eq!(unit.length(10.0).get::<meter>(), 3.048);
/// # Ok::<(), sillmark::quantity::UnknownLengthUnit>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthUnit {
    /// Metre.
    Metre,
    /// Centimetre, 0.01 m.
    Centimetre,
    /// Millimetre, 0.001 m.
    Millimetre,
    /// International foot, 0.3048 m.
    Foot,
    /// US survey foot, 1200/3937 m: two parts in a million longer than the foot.
    SurveyFoot,
    /// Inch, 0.0254 m.
    Inch,
}

/// A name that is not a unit of length.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{text:?} is not a unit of length; accepted: {}", LengthUnit::ACCEPTED)]
pub struct UnknownLengthUnit {
    /// The name as it was written.
    pub text: String,
}

impl LengthUnit {
    /// The spellings to offer in a message.
    pub const ACCEPTED: &'static str = "m, cm, mm, ft, in, ftUS";

    /// `value` of this unit as a length.
    #[must_use]
    pub fn length(self, value: f64) -> Length {
        match self {
            Self::Metre => Length::new::<meter>(value),
            Self::Centimetre => Length::new::<centimeter>(value),
            Self::Millimetre => Length::new::<millimeter>(value),
            Self::Foot => Length::new::<foot>(value),
            Self::SurveyFoot => Length::new::<survey_foot>(value),
            Self::Inch => Length::new::<inch>(value),
        }
    }

    /// A length read in this unit.
    #[must_use]
    pub fn read(self, length: Length) -> f64 {
        length.value / self.length(1.0).value
    }

    /// The unit whose length in metres is `metres`, as a coordinate system states it.
    ///
    /// Survey foot and foot differ by two parts in a million, so the match is exact to
    /// one part in ten million.
    #[must_use]
    pub fn from_metres(metres: f64) -> Option<Self> {
        [
            Self::Metre,
            Self::Foot,
            Self::SurveyFoot,
            Self::Centimetre,
            Self::Millimetre,
            Self::Inch,
        ]
        .into_iter()
        .find(|unit| (metres / unit.length(1.0).value - 1.0).abs() < 1e-7)
    }

    /// The short symbol: `m`, `ft`, `ftUS`.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Metre => "m",
            Self::Centimetre => "cm",
            Self::Millimetre => "mm",
            Self::Foot => "ft",
            Self::SurveyFoot => "ftUS",
            Self::Inch => "in",
        }
    }

    /// Whether the unit belongs to the US customary system.
    #[must_use]
    pub const fn is_customary(self) -> bool {
        matches!(self, Self::Foot | Self::SurveyFoot | Self::Inch)
    }
}

impl fmt::Display for LengthUnit {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.symbol())
    }
}

impl FromStr for LengthUnit {
    type Err = UnknownLengthUnit;

    /// Reads a unit's name; case and inner spaces, dots and underscores do not matter.
    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let key: String = text
            .chars()
            .filter(|character| !matches!(character, ' ' | '.' | '_' | '-'))
            .flat_map(char::to_lowercase)
            .collect();
        Ok(match key.as_str() {
            "m" | "metre" | "metres" | "meter" | "meters" => Self::Metre,
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Self::Centimetre,
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Self::Millimetre,
            "ft" | "foot" | "feet" | "'" | "\u{2032}" | "internationalfoot"
            | "internationalfeet" => Self::Foot,
            "ftus" | "usft" | "ussurveyfoot" | "ussurveyfeet" | "surveyfoot" | "surveyfeet"
            | "footus" => Self::SurveyFoot,
            "in" | "inch" | "inches" | "\"" | "\u{2033}" => Self::Inch,
            _ => {
                return Err(UnknownLengthUnit {
                    text: text.to_owned(),
                });
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spellings_met_in_flood_layers_and_rasters() {
        for text in ["Feet", "FEET", "feet", "ft", "foot"] {
            assert_eq!(text.parse(), Ok(LengthUnit::Foot), "{text}");
        }
        for text in ["U.S. Survey Feet", "US survey foot", "ftUS", "us-ft"] {
            assert_eq!(text.parse(), Ok(LengthUnit::SurveyFoot), "{text}");
        }
        for text in ["Meters", "metre", "m"] {
            assert_eq!(text.parse(), Ok(LengthUnit::Metre), "{text}");
        }
    }

    #[test]
    fn a_coordinate_system_states_its_unit_in_metres() {
        assert_eq!(LengthUnit::from_metres(0.3048), Some(LengthUnit::Foot));
        assert_eq!(
            LengthUnit::from_metres(0.304_800_609_601_219),
            Some(LengthUnit::SurveyFoot)
        );
        assert_eq!(LengthUnit::from_metres(1.0), Some(LengthUnit::Metre));
        assert_eq!(LengthUnit::from_metres(0.5), None);
    }

    #[test]
    fn an_unknown_unit_is_quoted() {
        let error = "furlong".parse::<LengthUnit>().unwrap_err();
        assert_eq!(
            error.to_string(),
            "\"furlong\" is not a unit of length; accepted: m, cm, mm, ft, in, ftUS"
        );
    }
}
