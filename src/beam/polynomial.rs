//! Polynomials on one piece of a member, between its ends at t = 0 and t = 1.

/// How often an interval is halved around a root: to 2⁻⁶⁰ of the piece, below the rounding
/// of any place on it.
const HALVINGS: u32 = 60;

/// The powers of t, as numbers.
const POWERS: [f64; 6] = [0.0, 1.0, 2.0, 3.0, 4.0, 5.0];

/// A polynomial in t, up to the fifth degree; the coefficient of tⁿ stands at n.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Polynomial([f64; 6]);

impl Polynomial {
    /// The straight line from one value at t = 0 to another at t = 1.
    pub(super) fn line(at_start: f64, at_end: f64) -> Self {
        Self([at_start, at_end - at_start, 0.0, 0.0, 0.0, 0.0])
    }

    /// The value at `t`.
    pub(super) fn at(&self, t: f64) -> f64 {
        self.0
            .iter()
            .rev()
            .fold(0.0, |value, coefficient| value * t + coefficient)
    }

    /// `start` plus `scale` times the integral from 0 to t. A term of the fifth degree is
    /// lost: the deflection, which has one, is not integrated further.
    pub(super) fn integral(&self, start: f64, scale: f64) -> Self {
        Self(std::array::from_fn(|power| match power {
            0 => start,
            _ => scale * self.0[power - 1] / POWERS[power],
        }))
    }

    fn derivative(&self) -> Self {
        Self(std::array::from_fn(|power| match self.0.get(power + 1) {
            Some(coefficient) => POWERS[power + 1] * coefficient,
            None => 0.0,
        }))
    }

    fn is_constant(&self) -> bool {
        self.0[1..].iter().all(|coefficient| *coefficient == 0.0)
    }

    /// Where the sign changes between 0 and 1, in order.
    ///
    /// Between two zeros of its derivative a polynomial rises or falls throughout, so a
    /// change of sign there is one root, and halving cannot miss it. A zero that is only
    /// touched is no change of sign, hence no extreme of the integral, and is left out.
    pub(super) fn roots(&self) -> Vec<f64> {
        if self.is_constant() {
            return Vec::new();
        }
        let mut bounds = vec![0.0];
        bounds.extend(self.derivative().roots());
        bounds.push(1.0);
        bounds
            .windows(2)
            .filter_map(|ends| self.root_between(ends[0], ends[1]))
            .collect()
    }

    /// The root between two places, where the signs there differ.
    fn root_between(&self, mut lower: f64, mut upper: f64) -> Option<f64> {
        let is_negative = |t| self.at(t) < 0.0;
        let at_lower = is_negative(lower);
        if at_lower == is_negative(upper) {
            return None;
        }
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(lower, upper);
            if is_negative(middle) == at_lower {
                lower = middle;
            } else {
                upper = middle;
            }
        }
        Some(f64::midpoint(lower, upper))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    /// (t − a)(t − b) … for up to four roots.
    fn with_roots(roots: &[f64]) -> Polynomial {
        let mut coefficients = [0.0; 6];
        coefficients[0] = 1.0;
        for root in roots {
            let mut next = [0.0; 6];
            for power in 0..5 {
                next[power + 1] += coefficients[power];
                next[power] -= root * coefficients[power];
            }
            coefficients = next;
        }
        Polynomial(coefficients)
    }

    #[test]
    fn all_roots_between_the_ends_are_found_and_no_others() {
        for roots in [
            vec![0.1, 0.2, 0.7, 0.999],
            vec![0.3, 0.300_001, 0.6, 1.5],
            vec![-0.2, 0.5],
            vec![0.4],
            vec![-1.0, 2.0],
        ] {
            let inside: Vec<f64> = roots
                .iter()
                .copied()
                .filter(|root| (0.0..=1.0).contains(root))
                .collect();
            let found = with_roots(&roots).roots();
            assert_eq!(found.len(), inside.len(), "{roots:?}: {found:?}");
            for (found, root) in found.iter().zip(&inside) {
                assert_abs_diff_eq!(*found, *root, epsilon = 1e-9);
            }
        }
    }

    #[test]
    fn a_zero_that_is_touched_is_no_root_and_one_of_odd_order_is() {
        assert!(with_roots(&[0.5, 0.5]).roots().is_empty());
        let found = with_roots(&[0.5, 0.5, 0.5]).roots();
        assert_eq!(found.len(), 1, "{found:?}");
        // A triple root keeps a third of the digits.
        assert_abs_diff_eq!(found[0], 0.5, epsilon = 1e-5);
    }

    #[test]
    fn integral_and_derivative_undo_each_other() {
        let polynomial = with_roots(&[0.1, 0.2, 0.7, 0.999]);
        let back = polynomial.integral(7.0, 1.0).derivative();
        for (back, coefficient) in back.0.iter().zip(polynomial.0) {
            assert_abs_diff_eq!(*back, coefficient, epsilon = 1e-15);
        }
        assert_abs_diff_eq!(polynomial.integral(7.0, 3.0).at(0.0), 7.0);
    }
}
