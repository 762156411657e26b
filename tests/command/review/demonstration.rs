//! The offer of the demonstration.

use std::path::Path;

use super::codes;
use crate::scratch::Scratch;

pub(super) const DEMONSTRATION: [&str; 4] = [
    "--dem",
    "terrain.tif",
    "--datum-offset",
    "NGVD29 -> NAVD88 = -0.6 ft; county flood study, table 4 (invented)",
];

/// The demonstration, with its offer as `offer.toml`.
pub(super) fn demonstration() -> Scratch {
    let scratch = Scratch::new();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/alder-lock");
    for name in ["site.toml", "zones.geojson", "terrain.tif", "proposal.toml"] {
        std::fs::copy(folder.join(name), scratch.path(name)).unwrap();
    }
    std::fs::rename(scratch.path("proposal.toml"), scratch.path("offer.toml")).unwrap();
    scratch
}

/// The offer of the demonstration, with what its comments say of it.
#[test]
fn the_slips_of_the_demonstration_are_found() {
    let review = demonstration().review_json(&DEMONSTRATION);
    let of = |opening: &str, topic: &str| {
        let mut points = review["points"].as_array().unwrap().iter();
        let found = points.find(|point| {
            point["topic"] == topic && point["opening"].as_str().unwrap_or_default() == opening
        });
        found
            .unwrap_or_else(|| panic!("no {topic} of {opening:?}"))
            .clone()
    };
    for (opening, topic, outcome, code) in [
        (
            "",
            "design-level",
            "falls-short",
            "base-level-as-design-level",
        ),
        ("", "leakage-rate", "falls-short", ""),
        ("", "warning", "falls-short", ""),
        ("", "fitting-time", "falls-short", ""),
        (
            "front door",
            "protection-height",
            "exceeds",
            "measured-from-ground",
        ),
        ("front door", "force-per-width", "falls-short", "load-slip"),
        (
            "yard door",
            "barrier-height",
            "falls-short",
            "freeboard-forgotten",
        ),
        ("goods bay", "sill", "falls-short", "datum-shift"),
        ("goods bay", "span", "falls-short", ""),
        ("goods bay", "intermediate-posts", "falls-short", ""),
        ("coal hatch", "kit-height", "falls-short", ""),
        ("coal hatch", "water-on-wall", "falls-short", "other-wall"),
        (
            "lock steps",
            "left-out",
            "falls-short",
            "no-barrier-proposed",
        ),
        (
            "wheel house",
            "left-out",
            "falls-short",
            "no-barrier-proposed",
        ),
        (
            "lock step",
            "unknown-opening",
            "cannot-be-checked",
            "nearest-name",
        ),
    ] {
        let point = of(opening, topic);
        assert_eq!(point["outcome"], outcome, "{opening} {topic}");
        if !code.is_empty() {
            assert!(codes(&point).contains(&code), "{opening} {topic}: {point}");
        }
    }
}
