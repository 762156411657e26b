//! Round steps for scales, and short numbers for drawings.

/// The largest of 1, 2 and 5 times a power of ten that is at most `most`.
///
/// `most` is above zero.
pub(in crate::report) fn at_most(most: f64) -> f64 {
    let power = 10_f64.powf(most.log10().floor());
    let factors = [5.0, 2.0, 1.0];
    let largest = factors
        .into_iter()
        .find(|factor| factor * power <= most * (1.0 + 1e-9));
    largest.unwrap_or(1.0) * power
}

/// The smallest such step that is at least `least`.
pub(in crate::report) fn at_least(least: f64) -> f64 {
    let below = at_most(least);
    if below >= least * (1.0 - 1e-9) {
        return below;
    }
    let steps = [2.0, 2.5, 5.0, 10.0].map(|factor| below * factor);
    let next = steps
        .into_iter()
        .find(|step| *step >= least && is_nice(*step));
    next.unwrap_or(below * 10.0)
}

fn is_nice(number: f64) -> bool {
    (at_most(number) / number - 1.0).abs() < 1e-9
}

/// Decimals that a multiple of `step` needs.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 9
pub(in crate::report) fn decimals(step: f64) -> usize {
    (-(step.log10() + 1e-9).floor()).clamp(0.0, 9.0) as usize
}

/// A coordinate of a drawing, to a tenth of a pixel.
pub(in crate::report) fn pixels(number: f64) -> String {
    let text = format!("{number:.1}");
    let short = text.strip_suffix(".0").unwrap_or(&text);
    if short == "-0" {
        "0".to_owned()
    } else {
        short.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round() {
        for (wanted, below, above) in [
            (1.0, 1.0, 1.0),
            (1.9, 1.0, 2.0),
            (3.0, 2.0, 5.0),
            (0.07, 0.05, 0.1),
            (640.0, 500.0, 1000.0),
            (0.2, 0.2, 0.2),
        ] {
            assert!((at_most(wanted) / below - 1.0).abs() < 1e-9, "{wanted}");
            assert!((at_least(wanted) / above - 1.0).abs() < 1e-9, "{wanted}");
        }
    }

    #[test]
    fn decimals_show_the_step() {
        assert_eq!([5.0, 0.5, 0.02, 0.001].map(decimals), [0, 1, 2, 3]);
    }

    #[test]
    fn pixels_are_short() {
        assert_eq!([1.0, -0.01, 2.25].map(pixels), ["1", "0", "2.2"]);
    }
}
