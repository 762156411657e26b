//! Formulas of beam tables and textbooks, each with its source.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use sillmark::beam::Response;
use sillmark::quantity::unit::{in_newton_metres, meter};

use super::{ANY_RIGIDITY, EXACT, load, metres, newtons, plank, post, propped};

/// A cantilever under a triangle with its greatest value w at the base.
mod post_in_still_water {
    use super::*;

    const HEIGHT: f64 = 1.3;
    const AT_THE_BASE: f64 = 9810.0 * HEIGHT;
    const RIGIDITY: f64 = 2.5e4;

    fn response() -> Response {
        post(HEIGHT, RIGIDITY, load(HEIGHT, AT_THE_BASE, 0.0))
    }

    /// A public beam table: total load W, M = W·L/3, tip deflection W·L³/(15·E·I).
    #[test]
    fn beam_table() {
        let total = AT_THE_BASE * HEIGHT / 2.0;
        let moment = in_newton_metres(response().greatest_moment().value);
        assert_relative_eq!(moment, total * HEIGHT / 3.0, max_relative = EXACT);
        let tip = response().greatest_deflection();
        let expected = total * HEIGHT.powi(3) / (15.0 * RIGIDITY);
        assert_relative_eq!(tip.value.get::<meter>(), expected, max_relative = EXACT);
        assert_relative_eq!(tip.at.get::<meter>(), HEIGHT);
    }

    /// curioustab.com, questions 64988 and 65239: M = w·l²/6, V = w·l/2, the resultant l/3
    /// above the base.
    #[test]
    fn moment_shear_and_resultant() {
        let start = response().start();
        let (shear, moment) = (newtons(start.force), in_newton_metres(start.moment));
        assert_relative_eq!(shear, AT_THE_BASE * HEIGHT / 2.0, max_relative = EXACT);
        assert_relative_eq!(
            moment,
            AT_THE_BASE * HEIGHT.powi(2) / 6.0,
            max_relative = EXACT
        );
        assert_relative_eq!(moment / shear, HEIGHT / 3.0, max_relative = EXACT);
    }

    /// holooly.com, solutions of Gere's examples 8.4 and 9.4: V = q₀·(L − x)²/(2·L),
    /// E·I·v″ = −q₀·(L − x)³/(6·L) with v upwards under a load downwards, so here M is that
    /// and the deflection positive.
    #[test]
    fn shear_and_moment_along_the_post() {
        for share in [0.0, 0.1, 0.35, 0.5, 0.8, 0.99] {
            let (x, beyond) = (metres(share * HEIGHT), (1.0 - share) * HEIGHT);
            let shear = AT_THE_BASE * beyond.powi(2) / (2.0 * HEIGHT);
            assert_relative_eq!(newtons(response().shear_at(x)), shear, epsilon = 1e-9);
            let moment = -AT_THE_BASE * beyond.powi(3) / (6.0 * HEIGHT);
            let found = in_newton_metres(response().moment_at(x));
            assert_relative_eq!(found, moment, epsilon = 1e-9);
        }
        let tip = response().deflection_at(metres(HEIGHT)).get::<meter>();
        let expected = AT_THE_BASE * HEIGHT.powi(4) / (30.0 * RIGIDITY);
        assert_relative_eq!(tip, expected, max_relative = EXACT);
    }

    /// A public beam table: v = w·x²·(10h³ − 10h²x + 5hx² − x³)/(120·h·E·I).
    #[test]
    fn deflection_along_the_post() {
        let h = HEIGHT;
        for share in [0.0, 0.05, 0.3, 0.5, 0.77, 1.0] {
            let x = share * h;
            let bracket = 10.0 * h.powi(3) - 10.0 * h * h * x + 5.0 * h * x * x - x.powi(3);
            let expected = AT_THE_BASE * x * x * bracket / (120.0 * h * RIGIDITY);
            let found = response().deflection_at(metres(x)).get::<meter>();
            assert_relative_eq!(found, expected, max_relative = 1e-10);
        }
    }
}

/// A plank under equal load: M = q·L²/8, v = 5·q·L⁴/(384·E·I), both in the middle (from
/// memory).
#[test]
fn plank_under_equal_load() {
    let (span, rigidity, q) = (2.7, 1.9e4, 640.0);
    let response = plank(span, rigidity, load(span, q, q));
    let moment = response.greatest_moment();
    assert_relative_eq!(
        in_newton_metres(moment.value),
        q * span * span / 8.0,
        max_relative = EXACT
    );
    assert_relative_eq!(moment.at.get::<meter>(), span / 2.0, max_relative = 1e-9);
    let deflection = response.greatest_deflection();
    let expected = 5.0 * q * span.powi(4) / (384.0 * rigidity);
    assert_relative_eq!(
        deflection.value.get::<meter>(),
        expected,
        max_relative = EXACT
    );
    assert_relative_eq!(
        deflection.at.get::<meter>(),
        span / 2.0,
        max_relative = 1e-9
    );
}

/// A vertical panel from sill to lintel in still water: M = w·L²/(9·√3) = 0.06415·w·L² at
/// 0.57735·L from the water surface, reactions w·L/6 there and w·L/3 at the sill, v =
/// 0.006522·w·L⁴/(E·I) at 0.51933·L (derived; from memory).
#[test]
fn vertical_panel_in_still_water() {
    let response = plank(1.0, 1.0, load(1.0, 0.0, 1.0));
    let moment = response.greatest_moment();
    let exact = 1.0 / (9.0 * 3.0_f64.sqrt());
    assert_relative_eq!(in_newton_metres(moment.value), exact, max_relative = EXACT);
    assert_abs_diff_eq!(in_newton_metres(moment.value), 0.06415, epsilon = 5e-6);
    assert_abs_diff_eq!(moment.at.get::<meter>(), 0.57735, epsilon = 5e-6);
    assert_relative_eq!(
        newtons(response.start().force),
        1.0 / 6.0,
        max_relative = EXACT
    );
    assert_relative_eq!(newtons(response.other()), 1.0 / 3.0, max_relative = EXACT);
    let deflection = response.greatest_deflection();
    assert_abs_diff_eq!(deflection.value.get::<meter>(), 0.006_522, epsilon = 5e-7);
    assert_abs_diff_eq!(deflection.at.get::<meter>(), 0.51933, epsilon = 5e-6);
}

/// curioustab.com, question 70542: a propped cantilever under equal load, R = 3·w·L/8 at the
/// prop and M = w·L²/8 at the base.
#[test]
fn propped_under_equal_load() {
    let (length, q) = (3.2, 710.0);
    let response = propped(length, ANY_RIGIDITY, length, load(length, q, q));
    assert_relative_eq!(
        newtons(response.other()),
        3.0 * q * length / 8.0,
        max_relative = EXACT
    );
    let moment = response.greatest_moment();
    assert_relative_eq!(
        in_newton_metres(moment.value),
        q * length * length / 8.0,
        max_relative = EXACT
    );
    assert_abs_diff_eq!(moment.at.get::<meter>(), 0.0);
}

/// A post in still water, propped at the water surface: R = w·h/10, base shear 0.4·w·h, base
/// moment w·h²/15, in the field 0.02981·w·h² at 0.4472·h below the prop, v = 0.002385·w·h⁴/(E·I)
/// (derived; from memory).
#[test]
fn propped_at_the_water_surface() {
    let response = propped(1.0, 1.0, 1.0, load(1.0, 1.0, 0.0));
    let start = response.start();
    assert_relative_eq!(newtons(response.other()), 0.1, max_relative = EXACT);
    assert_relative_eq!(newtons(start.force), 0.4, max_relative = EXACT);
    assert_relative_eq!(
        in_newton_metres(start.moment),
        1.0 / 15.0,
        max_relative = EXACT
    );
    let field = |height: f64| in_newton_metres(response.moment_at(metres(height)));
    let place = 1.0 - 0.4472;
    assert_abs_diff_eq!(field(place), 0.02981, epsilon = 5e-6);
    assert!(field(place) > field(place - 0.001) && field(place) > field(place + 0.001));
    let deflection = response.greatest_deflection().value.get::<meter>();
    assert_abs_diff_eq!(deflection, 0.002_385, epsilon = 5e-7);
}

/// A post in still water to its top, held by a kicker at a part of its height: R = w·(10h³ −
/// 10h²a + 5ha² − a³)/(40·h·a), base shear w·h/2 − R, base moment w·h²/6 − R·a, at the kicker
/// w·(h − a)³/(6·h) (derived, with the values of three heights to five digits).
#[test]
fn held_by_a_kicker() {
    for (a, force, base) in [
        (0.8, 0.14650, 0.04947),
        (2.0 / 3.0, 0.19722, 0.03519),
        (0.5, 0.30625, 0.01354),
    ] {
        let response = propped(1.0, 1.0, a, load(1.0, 1.0, 0.0));
        let start = response.start();
        let kicker = newtons(response.other());
        let formula = (10.0 - 10.0 * a + 5.0 * a * a - a * a * a) / (40.0 * a);
        assert_relative_eq!(kicker, formula, max_relative = EXACT);
        assert_abs_diff_eq!(kicker, force, epsilon = 5e-6);
        assert_abs_diff_eq!(newtons(start.force), 0.5 - formula, epsilon = EXACT);
        assert_abs_diff_eq!(in_newton_metres(start.moment), base, epsilon = 5e-6);
        let at_kicker = in_newton_metres(response.moment_at(metres(a)));
        assert_abs_diff_eq!(at_kicker, -(1.0 - a).powi(3) / 6.0, epsilon = EXACT);
    }
}
