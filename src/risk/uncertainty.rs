//! Uncertainties of several sources together.

use super::Deviation;
use crate::quantity::{Length, unit::meter};

/// The standard deviation of a sum of independent errors: the root of the sum of squares.
///
/// ```
/// use sillmark::quantity::{Length, unit::meter};
/// use sillmark::risk::root_sum_square;
/// let metres = Length::new::<meter>;
/// let sd = root_sum_square([metres(0.10), metres(0.15)]);
/// assert!((sd.get::<meter>() - 0.180).abs() < 5e-4);
/// ```
#[must_use]
pub fn root_sum_square(deviations: impl IntoIterator<Item = Length>) -> Length {
    let square = |sd: Length| sd.get::<meter>().powi(2);
    let sum: f64 = deviations.into_iter().map(square).sum();
    Length::new::<meter>(sum.sqrt())
}

/// What an uncertainty is made of, and what is missing from it.
///
/// An unknown part is not nothing: the sum of the others is then a lower bound, and
/// [`missing`](Self::missing) says of what.
///
/// ```
/// use sillmark::quantity::{Length, unit::meter};
/// use sillmark::risk::UncertaintyBudget;
/// let mut budget = UncertaintyBudget::default();
/// budget.add("flood level", Some(Length::new::<meter>(0.03)));
/// budget.add("terrain", None);
/// assert_eq!(budget.sd(), Some(Length::new::<meter>(0.03)));
/// assert_eq!(budget.missing(), ["terrain"]);
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct UncertaintyBudget {
    parts: Vec<(String, Length)>,
    missing: Vec<String>,
}

impl UncertaintyBudget {
    /// Adds a part by the name that people read; `None` where its deviation is not known.
    pub fn add(&mut self, part: impl Into<String>, sd: Option<Length>) {
        match sd {
            Some(sd) => self.parts.push((part.into(), sd)),
            None => self.missing.push(part.into()),
        }
    }

    /// Adds a part of the catalogue.
    pub fn add_deviation(&mut self, deviation: &Deviation) {
        self.add(deviation.name.clone(), Some(deviation.sd));
    }

    /// The parts with their standard deviations, in the order in which they were added.
    #[must_use]
    pub fn parts(&self) -> &[(String, Length)] {
        &self.parts
    }

    /// The parts whose standard deviation is not known.
    #[must_use]
    pub fn missing(&self) -> &[String] {
        &self.missing
    }

    /// The known parts together; `None` where there is none.
    #[must_use]
    pub fn sd(&self) -> Option<Length> {
        let parts = self.parts.iter().map(|(_, sd)| *sd);
        (!self.parts.is_empty()).then(|| root_sum_square(parts))
    }
}
