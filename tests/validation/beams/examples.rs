//! Worked examples, each with its source.

use approx::assert_abs_diff_eq;
use sillmark::beam::{Beam, LinearLoad, Response};
use sillmark::quantity::unit::{
    Force, Length, foot, in_newton_metres, inch, newton_square_metres, pound_force,
};

use super::{ANY_RIGIDITY, load, newtons, plank, post};

/// J. M. Gere, Mechanics of Materials, problem 5.5-12: a vertical plank of a wall, pinned at
/// the top and the bottom, water over its whole height of 2.0 m, 120 mm thick, 9.81 kN/m³.
#[test]
fn gere_a_vertical_plank() {
    let at_the_bottom = 9810.0 * 2.0; // on a width of 1 m
    let response = plank(2.0, ANY_RIGIDITY, load(2.0, at_the_bottom, 0.0));
    let moment = in_newton_metres(response.greatest_moment().value);
    assert_abs_diff_eq!(moment, 5034.5, epsilon = 0.1);
    let modulus = 0.120_f64.powi(2) / 6.0;
    assert_abs_diff_eq!(moment / modulus / 1e6, 2.10, epsilon = 0.005);
}

/// Gere, problem 5.6-21: planks 3 in thick between round posts 12 in in diameter, a wall of
/// 5 ft under 100 psf at its top and 400 psf at its bottom, 1,200 psi allowed in bending.
mod gere_planks_between_posts {
    use super::*;

    const ALLOWED: f64 = 1200.0; // psi

    fn pounds_per_foot(number: f64) -> sillmark::quantity::LineLoad {
        Force::new::<pound_force>(number) / Length::new::<foot>(1.0)
    }

    /// Stress in psi of a section modulus in in³.
    fn stress(response: &Response, modulus: f64) -> f64 {
        let pound_inch = Force::new::<pound_force>(1.0) * Length::new::<inch>(1.0);
        (response.greatest_moment().value / pound_inch).value / modulus
    }

    /// The lowest foot of planks under 400 psf; the stress grows with the square of the spacing.
    #[test]
    fn the_planks_allow_72_0_in() {
        let span = Length::new::<inch>(60.0);
        let zero = Length::default();
        let response = Beam::simple(span, newton_square_metres(ANY_RIGIDITY))
            .with_load(LinearLoad::uniform(zero, span, pounds_per_foot(400.0)))
            .response()
            .unwrap();
        let modulus = 12.0 * 3.0 * 3.0 / 6.0;
        let spacing = 60.0 * (ALLOWED / stress(&response, modulus)).sqrt();
        assert_abs_diff_eq!(spacing, 72.0, epsilon = 0.05);
    }

    /// A post for each foot of wall; the stress grows with the spacing.
    #[test]
    fn the_posts_allow_81_4_in() {
        let height = Length::new::<foot>(5.0);
        let response = Beam::cantilever(height, newton_square_metres(ANY_RIGIDITY))
            .with_load(LinearLoad {
                from: Length::default(),
                to: height,
                at_from: pounds_per_foot(400.0),
                at_to: pounds_per_foot(100.0),
            })
            .response()
            .unwrap();
        let modulus = std::f64::consts::PI * 12.0_f64.powi(3) / 32.0;
        let spacing = 12.0 * ALLOWED / stress(&response, modulus);
        assert_abs_diff_eq!(spacing, 81.4, epsilon = 0.05);
    }
}

/// mathalino.com/?page=7, a wall of planks 300 mm by 75 mm driven into the ground: 2.4 m of
/// soil of 17.3 kN/m³ with a coefficient of active pressure of 1/3, 10.4 N/mm² allowed.
#[test]
fn mathalino_a_wall_of_planks() {
    let (height, width, thickness) = (2.4, 0.300, 0.075);
    let at_the_base = 17_300.0 / 3.0 * height * width;
    let response = post(height, ANY_RIGIDITY, load(height, at_the_base, 0.0));
    let moment = in_newton_metres(response.greatest_moment().value);
    let bending = moment / (width * thickness * thickness / 6.0);
    assert_abs_diff_eq!(bending / 1e6, 14.2, epsilon = 0.05);
    let shear = 1.5 * newtons(response.greatest_shear().value) / (width * thickness);
    assert_abs_diff_eq!(shear / 1e6, 0.33, epsilon = 0.005);
    // The next size of lumber, in steps of 10 mm, is the published 90 mm.
    let needed = (6.0 * moment / (width * 10.4e6)).sqrt();
    assert_abs_diff_eq!((needed * 100.0).ceil() / 100.0, 0.090, epsilon = 1e-9);
}
