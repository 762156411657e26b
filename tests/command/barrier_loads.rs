//! Flow, waves, debris and soil before `sillmark barrier` against calculations by hand. The
//! sources stand at each test; water weighs 62.4 lb/ft³ (FEMA P-259).

use approx::assert_relative_eq;
use serde_json::Value;

use super::figures::{FOOT, POUND, is, number, one};
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
    let (force, _) = part(&result, "flowing-water");
    // Without a width the greatest coefficient of the table is taken, 2.00.
    assert_relative_eq!(force, expected * 2.0 / 1.25, max_relative = 1e-2);
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
