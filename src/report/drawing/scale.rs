//! From quantities to pixels.

use super::nice::{at_least, decimals};

/// A straight scale: where a number lies on the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::report) struct Scale {
    from: f64,
    at: f64,
    pixels_each: f64,
}

impl Scale {
    /// The scale that puts `low` at one pixel and `high` at another; for heights the latter
    /// is the smaller.
    pub(in crate::report) fn between(
        (low, high): (f64, f64),
        (at_low, at_high): (f64, f64),
    ) -> Self {
        let span = if high > low { high - low } else { 1.0 };
        Self {
            from: low,
            at: at_low,
            pixels_each: (at_high - at_low) / span,
        }
    }

    /// Where a number lies.
    pub(in crate::report) fn at(self, number: f64) -> f64 {
        self.at + (number - self.from) * self.pixels_each
    }

    /// Round numbers from `low` to `high`, at least `apart` pixels from each other, each with
    /// its label.
    pub(in crate::report) fn ticks(
        self,
        (low, high): (f64, f64),
        apart: f64,
    ) -> Vec<(f64, String)> {
        let step = at_least(apart / self.pixels_each.abs());
        let digits = decimals(step);
        let first = (low / step - 1e-9).ceil();
        let numbers = (0..1000).map(|number| (first + f64::from(number)) * step);
        numbers
            .take_while(|number| *number <= high + step * 1e-9)
            .map(|number| {
                let number = if number.abs() < step / 2.0 {
                    0.0
                } else {
                    number
                };
                (number, format!("{number:.digits$}"))
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heights_grow_upward() {
        let scale = Scale::between((610.0, 620.0), (200.0, 0.0));
        assert!((scale.at(615.0) - 100.0).abs() < 1e-9);
    }

    #[test]
    fn ticks_are_round_and_apart() {
        let scale = Scale::between((-0.3, 1.1), (0.0, 140.0));
        let labels = scale.ticks((-0.3, 1.1), 30.0);
        let labels: Vec<String> = labels.into_iter().map(|(_, label)| label).collect();
        assert_eq!(labels, ["0.0", "0.5", "1.0"]);
    }
}
