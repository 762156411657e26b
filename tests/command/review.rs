//! `sillmark review`: somebody's proposal held against the house, or against Alder Lock Mill.

use std::fmt::Write as _;

use serde_json::{Value, json};

#[path = "review/demonstration.rs"]
mod demonstration;

use demonstration::{DEMONSTRATION, demonstration};

use super::browser::opens;
use super::json_schema;
use super::scratch::{SITE, Scratch, zone_over};

const RUN: [&str; 5] = [
    "review",
    "offer.toml",
    "site.toml",
    "--zones",
    "zones.geojson",
];

fn scratch(offer: &str) -> Scratch {
    let scratch = Scratch::new();
    scratch.write("offer.toml", offer);
    scratch
}

impl Scratch {
    /// The JSON of a review, which has to fit its published schema.
    fn review_json(&self, more: &[&str]) -> Value {
        let arguments = [&RUN[..], more, &["--format", "json"]].concat();
        let result = serde_json::from_str(&self.answer(&arguments)).unwrap();
        json_schema::check_review(&result);
        result
    }
}

fn point<'a>(review: &'a Value, topic: &str) -> &'a Value {
    let mut points = review["points"].as_array().unwrap().iter();
    points
        .find(|point| point["topic"] == topic)
        .unwrap_or_else(|| panic!("no {topic}"))
}

fn codes(point: &Value) -> Vec<&str> {
    let findings = point["findings"].as_array().unwrap().iter();
    findings
        .map(|finding| finding["code"].as_str().unwrap())
        .collect()
}

#[test]
fn an_offer_that_falls_short_is_an_answer() {
    let scratch =
        scratch("freeboard = \"0 ft\"\n[[opening]]\nid = \"door\"\nbarrier_height = \"1 ft\"");
    let outcome = scratch.run(&RUN);
    assert_eq!((outcome.status, outcome.stderr.as_str()), (0, ""));
    assert!(outcome.stdout.contains("fall short"), "{}", outcome.stdout);
    let review = scratch.review_json(&[]);
    assert_eq!(review["worst"], "falls-short");
    assert_eq!(codes(point(&review, "freeboard")), ["freeboard-forgotten"]);
}

#[test]
fn an_empty_offer_is_an_answer_too() {
    let review = scratch("").review_json(&[]);
    assert_eq!(review["worst"], "cannot-be-checked");
    assert_eq!(review["proposal"]["name"], Value::Null);
    assert_eq!(review["proposal"]["file"], "offer.toml");
}

#[test]
fn a_datum_mix_up_with_a_stated_offset() {
    // The zone's level is a whole foot of 9 ft NAVD88: ± 0.58 ft.
    let scratch = scratch("flood_level = \"9.0 ft NGVD29\"\nsource = \"a study\"");
    let offset = [
        "--datum-offset",
        "NGVD29 -> NAVD88 = -1.4 ft; county study, table 4",
    ];
    let review = scratch.review_json(&offset);
    let level = point(&review, "flood-level");
    assert_eq!(level["outcome"], "falls-short");
    assert_eq!(codes(level), ["datum-shift"]);
    let text = level["findings"][0]["text"].as_str().unwrap();
    assert!(
        text.contains("from NGVD29 to NAVD88 (-1.40 ft,") && text.ends_with("was not applied"),
        "{text}"
    );
    assert_eq!(review["shifts"][0]["from"], "NGVD29");
    // An offset that the site file states does as well, and one that is too small is none.
    let small = [
        "--datum-offset",
        "NGVD29 -> NAVD88 = -0.4 ft; county study, table 4",
    ];
    let review = scratch.review_json(&small);
    assert_eq!(point(&review, "flood-level")["outcome"], "holds");
    assert!(!codes(point(&review, "flood-level")).contains(&"datum-shift"));
}

#[test]
fn without_the_shift_it_says_what_would_give_it() {
    let scratch = scratch("flood_level = \"9.0 ft NGVD29\"\ndesign_level = \"10.0 ft NGVD29\"");
    let review = scratch.review_json(&[]);
    let design = point(&review, "design-level");
    assert_eq!(design["proposed"]["written"], "10.0 ft NGVD29");
    let level = point(&review, "flood-level");
    assert_eq!(level["outcome"], "cannot-be-checked");
    let missing = level["missing"][0].as_str().unwrap();
    assert_eq!(level["proposed"]["written"], "9.0 ft NGVD29");
    assert!(
        missing.contains("us_noaa_vertcon") && missing.contains("--datum-offset"),
        "{missing}"
    );
    assert_eq!(review["shifts"], json!([]));
}

#[test]
fn what_cannot_be_used_is_named() {
    for (offer, message) in [
        (
            "[[opening]]\nid = \"door\"\nbarier_height = \"3 ft\"",
            "error: offer.toml, line 3: opening.barier_height: there is no such field here; perhaps barrier_height is meant; accepted: id, sill, ground, protection_height, barrier_height, measured_from, planks, plank_height, posts, intermediate_posts, span, wall, load\n",
        ),
        (
            "flood_level = \"9.2 ft\"",
            "error: offer.toml, line 1: flood_level \"9.2 ft\": it has no vertical datum; accepted: a height with its unit and vertical datum, such as \"8.1 ft NAVD88\" or \"2.47 m EPSG:5703\"\n",
        ),
        (
            "flood_level = ",
            "error: offer.toml, line 1: text \"flood_level =\": ",
        ),
    ] {
        let said = scratch(offer).refused(&RUN);
        assert!(said.starts_with(message), "{said}");
    }
    let scratch = scratch("");
    scratch.write("offer.bin", b"name = \"\xff\"");
    let said = scratch.refused(&["review", "offer.bin", "site.toml"]);
    assert_eq!(
        said,
        "error: offer.bin, line 1: it is not UTF-8 text; accepted: a proposal file (TOML in UTF-8)\n"
    );
    let said = scratch.refused(&["review", "none.toml", "site.toml"]);
    assert!(
        said.starts_with("error: none.toml: cannot be read"),
        "{said}"
    );
    let said = scratch.refused(&["review", "offer.toml"]);
    assert!(said.contains("<SITE>"), "{said}");
    // The site file's own faults are told as ever.
    scratch.write("site.toml", SITE.replace("8.1 ft NAVD88", "8.1 ft"));
    let said = scratch.refused(&RUN);
    assert!(
        said.starts_with(
            "error: site.toml, line 3: threshold \"8.1 ft\": it has no vertical datum"
        ),
        "{said}"
    );
}

#[test]
fn a_result_is_not_written_over_a_file_that_is_read() {
    let scratch = scratch("freeboard = \"1 ft\"");
    for file in ["offer.toml", "site.toml", "zones.geojson"] {
        let said = scratch.refused(&[&RUN[..], &["-o", file]].concat());
        assert!(
            said.contains("is read by this run and would be written over"),
            "{said}"
        );
    }
    let outcome = scratch.run(&[&RUN[..], &["--format", "html", "-o", "review.html"]].concat());
    assert_eq!((outcome.status, outcome.stdout.as_str()), (0, ""));
    assert!(scratch.read("review.html").starts_with("<!DOCTYPE html>"));
}

#[test]
fn names_that_mean_harm_are_harmless() {
    let name = "<script>alert(1)</script>";
    let scratch = scratch(&format!(
        "name = \"{name}\"\nsource = \"\\\"><img onerror=alert(1)>\"\n[[opening]]\nid = \"=cmd()\"\n[[opening]]\nid = \"{name}\""
    ));
    scratch.site_with("Test House", "</title><script>alert(2)</script>");
    let page = scratch.answer(&[&RUN[..], &["--format", "html"]].concat());
    for sign in ["<script", "<img", "</title><"] {
        assert!(!page.contains(sign), "{sign}");
    }
    let review = scratch.review_json(&[]);
    assert_eq!(review["proposal"]["name"], name);
    let text = scratch.answer(&RUN);
    assert!(text.chars().all(|each| each == '\n' || !each.is_control()));
    let long = "x".repeat(200);
    scratch.write("offer.toml", format!("[[opening]]\nid = \"{long}\""));
    scratch.answer(&RUN);
    scratch.write("offer.toml", "name = \"a\\u001b[2J\"");
    assert!(
        scratch
            .refused(&RUN)
            .contains("it has a line break or another control character")
    );
}

#[test]
fn the_same_bytes_every_time_and_in_both_units() {
    let scratch = scratch("freeboard = \"2 ft\"\n[[opening]]\nid = \"door\"\nspan = \"3 ft\"");
    for format in ["text", "json", "html"] {
        let run = || scratch.answer(&[&RUN[..], &["--format", format]].concat());
        assert_eq!(run(), run());
    }
    let metres = scratch.answer(&[&RUN[..], &["--units", "si"]].concat());
    assert!(
        metres.contains("ours 0.305 m; proposed 0.610 m (from 2 ft)"),
        "{metres}"
    );
}

#[test]
fn no_building_with_an_opening_in_a_coastal_zone_complies() {
    let scratch = scratch("compliance = true");
    scratch.site_and("location = { longitude = -73.999, latitude = 40.0 }");
    let coastal = json!({"FLD_AR_ID": "Z2", "FLD_ZONE": "VE", "STATIC_BFE": 13});
    scratch.zones(&[
        zone_over(&json!({}), [-74.01, 39.99, -73.9995, 40.01]),
        zone_over(&coastal, [-73.9995, 39.99, -73.99, 40.01]),
    ]);
    let review = scratch.review_json(&[]);
    assert_eq!(point(&review, "compliance")["outcome"], "falls-short");
    scratch.write("offer.toml", "[[opening]]\nid = \"door\"");
    let review = scratch.review_json(&[]);
    assert_eq!(
        point(&review, "barrier-height")["reference"],
        "our design level where it stands, 14.00 ft NAVD88, less our sill"
    );
}

/// A house of forty openings with long names, and an offer of hostile ones.
fn crowd() -> (String, String) {
    let long = "Donaudampfschifffahrtsgesellschaftskapitänskajütentür";
    let (mut site, mut offer) = (
        SITE.to_owned(),
        format!(
            "name = \"{}\"\nsource = \"{}\"\nflood_level = \"9.123456789 ft NAVD88\"\n",
            "W".repeat(200),
            "x".repeat(200)
        ),
    );
    for number in 1..40 {
        let _ = write!(
            site,
            "[[opening]]\nid = \"{long} {number}\"\nwidth = \"3 ft\"\n"
        );
        let _ = write!(
            offer,
            "[[opening]]\nid = \"{long} {number}\"\nbarrier_height = \"0.64 ft\"\nmeasured_from = \"sill\"\n[opening.load]\ndepth = \"2.1 ft\"\nforce_per_width = \"65.5 lb/ft\"\n"
        );
    }
    offer.push_str("[[opening]]\nid = \"</style><script>alert(1)</script>\"\n");
    (site, offer)
}

#[test]
fn its_page_opens_in_a_browser() {
    let scratch = demonstration();
    let mut pages = Vec::new();
    let mut page = |name: &str, arguments: &[&str]| {
        let html = [&RUN[..], arguments, &["--format", "html", "-o", name]].concat();
        assert_eq!(scratch.answer(&html), "");
        pages.push(scratch.path(name));
    };
    page("feet.html", &DEMONSTRATION);
    let metres = [&DEMONSTRATION[..], &["--units", "si"]].concat();
    page("metres.html", &metres);
    let (site, offer) = crowd();
    scratch.write("site.toml", site);
    scratch.write("offer.toml", offer);
    scratch.zones(&[zone_over(&json!({}), [-74.01, 39.99, -73.99, 40.01])]);
    page("crowd.html", &[]);
    scratch.write("offer.toml", "");
    page("empty.html", &[]);
    opens(&pages);
}
