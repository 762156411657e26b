//! Three equations with three unknowns.

/// The inverse of a symmetric matrix by its cofactors; `None` where it has none.
#[allow(clippy::many_single_char_names)] // the six numbers of a symmetric matrix
pub(super) fn inverse(of: &[[f64; 3]; 3]) -> Option<[[f64; 3]; 3]> {
    let [[a, b, c], [_, d, e], [_, _, f]] = *of;
    let (first, second, third) = (d * f - e * e, c * e - b * f, b * e - c * d);
    let determinant = a * first + b * second + c * third;
    let scaled = |cofactor: f64| cofactor / determinant;
    determinant.is_normal().then(|| {
        [
            [scaled(first), scaled(second), scaled(third)],
            [scaled(second), scaled(a * f - c * c), scaled(b * c - a * e)],
            [scaled(third), scaled(b * c - a * e), scaled(a * d - b * b)],
        ]
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inverse_is_one() {
        let matrix: [[f64; 3]; 3] = [[4.0, 1.0, -0.5], [1.0, 3.0, 0.2], [-0.5, 0.2, 2.0]];
        let found = inverse(&matrix).unwrap();
        for (row, line) in matrix.iter().enumerate() {
            for column in 0..3 {
                let products = line
                    .iter()
                    .zip(&found)
                    .map(|(cell, line)| cell * line[column]);
                let expected = f64::from(u8::from(row == column));
                assert!((products.sum::<f64>() - expected).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn two_equations_that_say_the_same_have_none() {
        assert!(inverse(&[[1.0, 1.0, 0.0], [1.0, 1.0, 0.0], [0.0, 0.0, 1.0]]).is_none());
    }
}
