//! Posts, braces, anchors and people of `sillmark barrier` against calculations by hand.
//!
//! The barrier is 14 ft wide in the reveal, so that its planks need a post in the middle:
//! (168 − 2·2 − 4)/2 = 80 in clear on each side, 84 in = 7 ft of water on the post.

use serde_json::Value;

use super::figures::{FOOT, INCH, POUND, is, one};
use super::scratch::Scratch;

const GATE: [&str; 4] = ["--width", "14 ft", "--reveal", "6 in"];

/// Pound-feet, in newton metres.
const POUND_FOOT: f64 = POUND * FOOT;

fn gate(more: &[&str]) -> Value {
    Scratch::new().barrier_json(&[&GATE[..], more].concat())
}

/// A cut plank reaches 1.75 − 0.25 in into the pocket at the wall and 1.5 − 0.25 in into that
/// of the post between.
#[test]
fn cut_lengths() {
    let result = gate(&["--depth", "2 ft"]);
    assert_eq!(result["barrier"]["intermediate_posts"], 1);
    for span in ["/barrier/legs/0/spans/0", "/barrier/legs/0/spans/1"] {
        is(&result, &format!("{span}/clear_m"), 80.0 * INCH);
        is(
            &result,
            &format!("{span}/bearing_m"),
            (80.0 + 2.75 / 2.0) * INCH,
        );
        is(&result, &format!("{span}/cut_m"), 82.75 * INCH);
    }
    let plank = one(&result, "/barrier/pieces", "name", "plank");
    is(plank, "/length_m", 82.75 * INCH);
    assert_eq!(plank["count"], 8);
    assert_eq!(
        one(&result, "/barrier/pieces", "name", "end post")["count"],
        2
    );
    // 2.7 lb/ft (the kit), a pound of mass being 0.453 592 37 kg.
    is(plank, "/mass_kg", 2.7 * 82.75 / 12.0 * 0.453_592_37);
}

/// The end post takes half of 80 in and its own 2 in, 3.5 ft: 124.8 lb/ft · 3.5 ft at 8 in, and
/// 124.8 lb/ft² · 3.5 ft at the most.
#[test]
fn force_on_the_jambs() {
    let result = gate(&["--depth", "2 ft"]);
    let forces = "/barrier/end_post/forces/0";
    is(&result, "/barrier/end_post/tributary_m", 3.5 * FOOT);
    is(&result, &format!("{forces}/force_n"), 124.8 * 3.5 * POUND);
    is(&result, &format!("{forces}/height_m"), 8.0 * INCH);
    is(
        &result,
        &format!("{forces}/greatest_n_per_m"),
        124.8 * 3.5 * POUND / FOOT,
    );
    assert!(result["barrier"]["end_post"]["forces"][0]["bearing_pa"].is_null());
    // On the face the post bears over its 2 in.
    let outside = gate(&["--depth", "2 ft", "--mount", "outside", "--face", "8 in"]);
    let greatest = outside["barrier"]["end_post"]["forces"][0]["greatest_n_per_m"].as_f64();
    is(
        &outside,
        &format!("{forces}/bearing_pa"),
        greatest.unwrap() / (2.0 * INCH),
    );
}

/// A cantilever under 2 ft: V = 62.4·2²/2·7 = 873.6 lb, M = V·2/3 = 582.4 lb-ft. Its anchors
/// stand 11 in apart in two rows of two; with the factor 1.6 the row at the water side is
/// pulled with 1.6·582.4/(11/12) lb, and each of the four takes a quarter of the shear.
#[test]
fn a_post_that_stands_alone() {
    let result = gate(&["--depth", "2 ft"]);
    let post = "/barrier/posts/0";
    assert!(result["barrier"]["posts"][0]["brace"].is_null());
    is(&result, &format!("{post}/tributary_m"), 7.0 * FOOT);
    is(&result, &format!("{post}/base/0/shear_n"), 873.6 * POUND);
    is(
        &result,
        &format!("{post}/base/0/moment_nm"),
        582.4 * POUND_FOOT,
    );
    let anchors = one(&result, "/barrier/anchors", "post", "intermediate post");
    let row = 1.6 * 582.4 / (11.0 / 12.0) * POUND;
    is(anchors, "/factor", 1.6);
    is(anchors, "/lever_arm_m", 11.0 * INCH);
    is(anchors, "/tension_on_row_n", row);
    is(anchors, "/tension_on_anchor_n", row / 2.0);
    is(anchors, "/shear_on_anchor_n", 1.6 * 873.6 / 4.0 * POUND);
}

/// Under 4 ft the post needs its brace at 2/3 of its height. A cantilever under a triangle of
/// w = 62.4·4·7 lb/ft at its foot bends by w·z²·(10H³ − 10H²z + 5Hz² − z³)/(120·E·I·H) at z;
/// a force R there bends it back by R·z³/(3·E·I) (beam tables, from memory): R = 1378.3 lb.
/// The brace's foot stands 3 ft behind.
#[test]
fn a_post_with_a_brace() {
    let result = gate(&["--depth", "4 ft", "--brace", "dry side"]);
    let (height, load) = (4.0_f64, 62.4 * 4.0 * 7.0);
    let at = height * 2.0 / 3.0;
    let sum =
        10.0 * height.powi(3) - 10.0 * height.powi(2) * at + 5.0 * height * at.powi(2) - at.powi(3);
    let held = load * sum / (40.0 * height * at);
    let (slope, whole) = (at / 3.0, load * height / 2.0);
    let brace = "/barrier/posts/0/brace";
    is(&result, &format!("{brace}/at_m"), at * FOOT);
    is(&result, &format!("{brace}/horizontal_n"), held * POUND);
    is(
        &result,
        &format!("{brace}/along_n"),
        held * slope.hypot(1.0) * POUND,
    );
    is(
        &result,
        &format!("{brace}/vertical_n"),
        held * slope * POUND,
    );
    let base = "/barrier/posts/0/base/0";
    let moment = whole * height / 3.0 - held * at;
    is(&result, &format!("{base}/shear_n"), (whole - held) * POUND);
    is(&result, &format!("{base}/moment_nm"), moment * POUND_FOOT);
    is(&result, &format!("{base}/uplift_n"), held * slope * POUND);
    // The lift is shared by both rows.
    let anchors = one(&result, "/barrier/anchors", "post", "intermediate post");
    let row = 1.6 * (moment / (11.0 / 12.0) + held * slope / 2.0);
    is(anchors, "/tension_on_row_n", row * POUND);
}

/// On the water side the brace is a tie: it presses the post's foot down, and lifts its own.
#[test]
fn a_brace_on_the_water_side() {
    let [dry, water] =
        ["dry side", "water side"].map(|side| gate(&["--depth", "4 ft", "--brace", side]));
    let uplift = |result: &Value| result["barrier"]["posts"][0]["base"][0]["uplift_n"].as_f64();
    assert!(uplift(&dry).unwrap() > 0.0);
    is(
        &water,
        "/barrier/posts/0/base/0/uplift_n",
        -uplift(&dry).unwrap(),
    );
    let foot = one(&water, "/barrier/anchors", "post", "brace");
    is(foot, "/forces/uplift_n", uplift(&dry).unwrap());
}

/// Legs of 6 ft and 8 ft under 2 ft: to the middle of the corner post, less its 2 in and the
/// 2 in of the end post, 68 in and 92 in clear; half of each with half of its 4 in bears on the
/// corner, 36 in and 48 in, by their vector sum 60 in.
#[test]
fn a_corner_takes_the_vector_sum() {
    let result = Scratch::new().barrier_json(&["--run", "6 ft, 8 ft", "--depth", "2 ft"]);
    assert_eq!(result["barrier"]["corner_posts"], 1);
    assert_eq!(result["barrier"]["mount"], "against the wall");
    let corner = one(&result, "/barrier/posts", "role", "corner");
    is(corner, "/tributary_m", 60.0 * INCH);
    is(corner, "/base/0/shear_n", 124.8 * 5.0 * POUND);
    is(&result, "/width_m", 14.0 * FOOT);
}

/// Five planks in two spans at 2 min each by two parties of five, then one post of 10 min: 20
/// min. With an hour of warning 11 h are wanting to the twelve of ASCE 24.
#[test]
fn time_to_fit() {
    let scratch = Scratch::new();
    let fitting = "[fitting]\ntime_a_plank = \"2 min\"\ntime_a_post = \"10 min\"\nparties = 2\n";
    let with_warning = |warning: &str| {
        scratch.write(
            "people.toml",
            format!("{fitting}[water]\nwarning = \"{warning}\"\n"),
        );
        let options = ["--depth", "2.5 ft", "--conditions", "people.toml"];
        scratch.barrier_json(&[&GATE[..], &options].concat())
    };
    let result = with_warning("1 h");
    is(&result, "/behind/fitting/minutes", 20.0);
    assert_eq!(result["behind"]["fitting"]["in_time"], "twelve-hour-rule");
    is(&result, "/behind/fitting/wanting_minutes", 11.0 * 60.0);
    let result = with_warning("15 min");
    assert_eq!(result["behind"]["fitting"]["in_time"], "too-short");
    is(&result, "/behind/fitting/wanting_minutes", 5.0);
    let result = with_warning("13 h");
    assert_eq!(result["behind"]["fitting"]["in_time"], "enough");
    is(&result, "/behind/fitting/spare_minutes", 13.0 * 60.0 - 20.0);
}
