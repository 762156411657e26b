//! Loads, planks and flows of `sillmark barrier` against calculations by hand.
//!
//! Sources: fresh water 62.4 lb/ft³, salt water 64.0 lb/ft³ (FEMA P-259, "seen" in our data);
//! the formulas stand at each test. The planks are those of `data/kits/demonstration.toml`:
//! 6 in high, 1.488 in⁴; inside posts 2 in wide with a pocket of 1.75 in, of which 0.25 in
//! stay free behind the plank.

use approx::assert_relative_eq;
use serde_json::Value;

use super::figures::{FOOT, INCH, POUND, POUND_PER_SQUARE_FOOT, is, number, one};
use super::scratch::Scratch;

/// Pounds on a foot of width, in newtons on a metre.
const POUND_PER_FOOT: f64 = POUND / FOOT;

/// A door of 36 in with its barrier in the reveal.
fn door(more: &[&str]) -> Value {
    let options = ["--width", "36 in", "--reveal", "6 in"];
    Scratch::new().barrier_json(&[&options[..], more].concat())
}

#[test]
fn still_water() {
    // γh²/2 at h/3 and γh³/6 with h = 2 ft (ASCE 7-10 5.4.2).
    for (salinity, weight) in [("fresh", 62.4), ("salt", 64.0)] {
        let result = door(&["--depth", "2 ft", "--salinity", salinity]);
        let force = weight * 2.0 * 2.0 / 2.0;
        let load = "/barrier/loads/0";
        is(
            &result,
            &format!("{load}/force_n_per_m"),
            force * POUND_PER_FOOT,
        );
        is(&result, &format!("{load}/height_m"), 2.0 / 3.0 * FOOT);
        is(
            &result,
            &format!("{load}/moment_n"),
            force * 2.0 / 3.0 * POUND,
        );
        let pressure = weight * 2.0 * POUND_PER_SQUARE_FOOT;
        is(&result, &format!("{load}/greatest_pressure_pa"), pressure);
    }
}

/// Three feet of barrier under 2 ft of water: the second case has the water at its top.
#[test]
fn water_at_the_top() {
    let result = door(&["--depth", "2 ft", "--height", "2.75 ft"]);
    is(&result, "/barrier/barrier_height_m", 3.0 * FOOT);
    is(
        &result,
        "/barrier/loads/0/force_n_per_m",
        62.4 * 2.0 * POUND_PER_FOOT,
    );
    is(
        &result,
        "/barrier/loads/1/force_n_per_m",
        62.4 * 4.5 * POUND_PER_FOOT,
    );
}

/// The lowest plank under 2 ft: 1.75 ft of mean depth on half a foot, w = 54.6 lb/ft. It
/// bears between the middles of what stands in the pockets: 36 − 2·2 + 1.5 = 33.5 in, and is
/// cut 36 − 2·2 + 2·1.5 = 35 in long. M = wL²/8, V = wL/2, δ = 5wL⁴/(384·E·I) with E =
/// 10,100 ksi (Aluminum Design Manual).
#[test]
fn the_lowest_plank() {
    let result = door(&["--depth", "2 ft"]);
    is(&result, "/barrier/legs/0/spans/0/clear_m", 32.0 * INCH);
    is(&result, "/barrier/legs/0/spans/0/bearing_m", 33.5 * INCH);
    is(&result, "/barrier/legs/0/spans/0/cut_m", 35.0 * INCH);
    is(&result, "/barrier/planks/cut_m/0", 35.0 * INCH);
    is(
        &result,
        "/barrier/loads/0/planks/0/force_n_per_m",
        54.6 * POUND_PER_FOOT,
    );
    let (load, span) = (54.6 / 12.0, 33.5_f64);
    let checks = result["barrier"]["checks"].as_array().unwrap();
    for (index, what, expected) in [
        (0, "bending", load * span.powi(2) / 8.0 * POUND * INCH),
        (1, "shear", load * span / 2.0 * POUND),
        (
            2,
            "deflection",
            5.0 * load * span.powi(4) / (384.0 * 10.1e6 * 1.488) * INCH,
        ),
    ] {
        assert_eq!(checks[index]["part"], "plank 1");
        assert_eq!(checks[index]["what"], what);
        assert_eq!(checks[index]["case"], "design-level");
        is(&checks[index], "/demand", expected);
        assert_eq!(checks[index]["holds"], true);
    }
    // L/120 (common practice, no source).
    is(&checks[2], "/capacity", 33.5 / 120.0 * INCH);
}

/// Seals leak 0.5 gal/h on each foot of sill and of both sides: 3 + 2·2 ft. Rain of an inch an
/// hour on 600 ft² is 50 ft³/h. The pump has half as much again; without it 2 in of water
/// (100 ft³) stand on the floor after 100 ft³ over the inflow. A gallon is 231 in³.
#[test]
fn leakage_rain_pump_and_filling() {
    let scratch = Scratch::new();
    scratch.write(
        "inside.toml",
        "[inside]\nfloor_area = \"600 ft2\"\ngreatest_depth = \"2 in\"\nrain = \"1 in/h\"\npump_margin = 1.5\n",
    );
    let result = scratch.barrier_json(&[
        "--width",
        "36 in",
        "--depth",
        "2 ft",
        "--conditions",
        "inside.toml",
    ]);
    let leakage = 0.5 * 7.0 * 231.0 / 1728.0;
    let cubic_feet_an_hour = FOOT.powi(3) / 3600.0;
    let near = |way: &str, expected: f64| {
        assert_relative_eq!(number(&result, way), expected, epsilon = 1.1e-9);
    };
    near(
        "/barrier/inflow/total_m3_per_s",
        leakage * cubic_feet_an_hour,
    );
    near(
        "/behind/inflow/total_m3_per_s",
        (leakage + 50.0) * cubic_feet_an_hour,
    );
    near(
        "/behind/pump/capacity_m3_per_s",
        1.5 * (leakage + 50.0) * cubic_feet_an_hour,
    );
    is(&result, "/behind/filling/hours", 100.0 / (leakage + 50.0));
    // In 24 hours the leakage alone, on 600 ft².
    is(
        &result,
        "/behind/impermeable/depth_in_24_hours_m",
        leakage * 24.0 / 600.0 * FOOT,
    );
}

/// Rain without an area runs to no pump that could be sized: it is listed, not taken as none.
#[test]
fn rain_without_an_area() {
    let scratch = Scratch::new();
    scratch.write("rain.toml", "[inside]\nrain = \"1 in/h\"\n");
    let result = scratch.barrier_json(&[
        "--width",
        "36 in",
        "--depth",
        "2 ft",
        "--conditions",
        "rain.toml",
    ]);
    let missing = one(&result, "/behind/inflow/not_counted", "way", "rain");
    assert!(missing["reason"].as_str().unwrap().contains("rain_area"));
    assert_eq!(result["behind"]["pump"]["at_least"], true);
}
