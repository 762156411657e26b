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

/// The part of the load at the design level, in newtons on a metre, and its height in metres.
fn part(result: &Value, name: &str) -> (f64, f64) {
    let part = one(result, "/barrier/loads/0/parts", "part", name);
    (number(part, "/force_n_per_m"), number(part, "/height_m"))
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

/// dh = a·V²/(2g) = 1.25·25/64.4 = 0.4852 ft, so 30.28 lb/ft² over 2 ft (Simi Valley Municipal
/// Code 7-5.703).
#[test]
fn flowing_water() {
    let result = door(&["--depth", "2 ft", "--velocity", "5 ft/s"]);
    let pressure = 62.4 * 1.25 * 25.0 / 64.4;
    assert_relative_eq!(pressure, 30.3, max_relative = 1e-3);
    let (force, height) = part(&result, "flowing-water");
    assert_relative_eq!(force, pressure * 2.0 * POUND_PER_FOOT, max_relative = 1e-6);
    assert_relative_eq!(height, FOOT, max_relative = 1e-6);
    let whole = 62.4 * 2.0 + pressure * 2.0;
    is(
        &result,
        "/barrier/loads/0/force_n_per_m",
        whole * POUND_PER_FOOT,
    );
}

/// Faster than 10 ft/s: Cd·ρ·V²/2 with Cd 1.25 for a wall up to 12 times as wide as the water
/// is deep and 1.94 slug/ft³ (FEMA P-55 vol. II Eq. 8.8 and table 8-2): 1.25·1.94·144/2 =
/// 174.6 lb/ft².
#[test]
fn water_that_drags() {
    let scratch = Scratch::new();
    scratch.write(
        "wide.toml",
        "[water]\nvelocity = \"12 ft/s\"\nwall_width = \"20 ft\"\n",
    );
    let options = ["--width", "36 in", "--reveal", "6 in", "--depth", "2 ft"];
    let stated = [&options[..], &["--conditions", "wide.toml"]].concat();
    let result = scratch.barrier_json(&stated);
    let (force, _) = part(&result, "flowing-water");
    let expected = 1.25 * 1.94 * 144.0 / 2.0 * 2.0 * POUND_PER_FOOT;
    assert_relative_eq!(force, expected, max_relative = 1e-2);
    let unstated = [&options[..], &["--velocity", "12 ft/s"]].concat();
    let result = scratch.barrier_json(&unstated);
    let parts = result["barrier"]["loads"][0]["parts"].as_array().unwrap();
    assert!(parts.iter().all(|part| part["part"] != "flowing-water"));
}

/// Risk category III on 2 ft of stillwater: 1.1·3.2·γd² + 2.4·γd² = 1477.6 lb/ft (FEMA P-55
/// vol. II Eq. 8.6a, Cp 3.2 seen). The barrier reaches over the crest, 1.2·d above the
/// stillwater; the triangles behind the code's formula have 2.42 for its 2.4.
#[test]
fn breaking_waves() {
    let scratch = Scratch::new();
    scratch.write(
        "coast.toml",
        "[water]\nwaves = \"breaking\"\n[loads]\nrisk_category = \"III\"\n",
    );
    let result = scratch.barrier_json(&[
        "--width",
        "36 in",
        "--reveal",
        "6 in",
        "--depth",
        "2 ft",
        "--height",
        "4.5 ft",
        "--sill-above-ground",
        "0 ft",
        "--conditions",
        "coast.toml",
    ]);
    let (force, _) = part(&result, "breaking-waves");
    let code = (1.1 * 3.2 + 2.4) * 62.4 * 4.0;
    assert_relative_eq!(force, code * POUND_PER_FOOT, max_relative = 0.01);
    // Still water is in it and not added again.
    is(&result, "/barrier/loads/0/force_n_per_m", force);
}

/// A level of crests stands over less stillwater: d = 0.65·(level − ground) (ASCE 7 5.4.4).
#[test]
fn breaking_waves_under_a_level_of_crests() {
    let scratch = Scratch::new();
    scratch.write("coast.toml", "[loads]\nrisk_category = \"III\"\n");
    let result = scratch.barrier_json(&[
        "--width",
        "36 in",
        "--reveal",
        "6 in",
        "--depth",
        "3 ft",
        "--height",
        "4.5 ft",
        "--sill-above-ground",
        "0 ft",
        "--conditions",
        "coast.toml",
        "--waves",
        "breaking",
        "--wave-level",
        "crest",
    ]);
    let depth: f64 = 0.65 * 3.0;
    let code = (1.1 * 3.2 + 2.4) * 62.4 * depth.powi(2);
    let (force, _) = part(&result, "breaking-waves");
    assert_relative_eq!(force, code * POUND_PER_FOOT, max_relative = 0.01);
}

/// Special debris: 100 lb on each foot, along the barrier (Simi Valley Municipal Code, after
/// the Corps of Engineers).
#[test]
fn special_debris() {
    let scratch = Scratch::new();
    scratch.write("ice.toml", "[loads]\ndebris = \"special\"\n");
    let result = scratch.barrier_json(&[
        "--width",
        "36 in",
        "--depth",
        "2 ft",
        "--conditions",
        "ice.toml",
    ]);
    is(
        &result,
        "/barrier/loads/0/impact/force_n_per_m",
        100.0 * POUND_PER_FOOT,
    );
    assert!(result["barrier"]["loads"][0]["impact"]["width_m"].is_null());
}

/// Soft clay of 106 lb/ft³ over 1 ft adds (106 − 62.4)·1²/2 = 21.8 lb/ft at a third of a foot
/// to the still water (FEMA P-259 chapter 4, from memory).
#[test]
fn saturated_soil() {
    let result = door(&[
        "--depth",
        "2 ft",
        "--soil",
        "soft clay",
        "--sill-above-ground",
        "-1 ft",
    ]);
    let (force, height) = part(&result, "saturated-soil");
    assert_relative_eq!(force, 21.8 * POUND_PER_FOOT, max_relative = 1e-6);
    assert_relative_eq!(height, FOOT / 3.0, max_relative = 1e-5);
    is(
        &result,
        "/barrier/loads/0/force_n_per_m",
        (124.8 + 21.8) * POUND_PER_FOOT,
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
