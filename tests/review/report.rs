//! A review for its readers.

use sillmark::quantity::UnitSystem;
use sillmark::report::review::{json, page, text};

use super::fixture::{SITE, ngvd29, with};

const OFFER: &str = r#"name = "Offer <b>9</b>"
flood_level = "9.00 ft NGVD29"
freeboard = "1 ft"
leakage = "0.2 gal/h/ft"
[[opening]]
id = "door"
barrier_height = "2 ft"
[opening.load]
depth = "3.00 ft"
force_per_width = "93.6 lb/ft"
[[opening]]
id = "<script>alert(1)</script>"
barrier_height = "2 ft"
"#;

#[test]
fn as_text() {
    let text = with(SITE, OFFER, &ngvd29(-1.1), |review| text(review, 96));
    insta::assert_snapshot!("review_text", text);
}

#[test]
fn text_keeps_its_columns() {
    let text = with(SITE, OFFER, &ngvd29(-1.1), |review| text(review, 96));
    for line in text.lines() {
        assert!(line.chars().count() <= 96, "{line}");
    }
}

#[test]
fn as_json() {
    let written = with(SITE, OFFER, &ngvd29(-1.1), |review| json(review).unwrap());
    let read: serde_json::Value = serde_json::from_str(&written).unwrap();
    assert_eq!(read["worst"], "falls-short");
    let points = read["points"].as_array().unwrap();
    let level = points
        .iter()
        .find(|point| point["topic"] == "flood-level")
        .unwrap();
    assert_eq!(level["outcome"], "falls-short");
    assert_eq!(level["by"]["text"], "1.10 ft");
    assert_eq!(level["proposed"]["written"], "9.00 ft NGVD29");
    let finding = &level["findings"][0];
    assert_eq!(finding["code"], "datum-shift");
    assert_eq!(finding["reference"], "county study, table 2");
    let total: u64 = ["falls_short", "cannot_be_checked", "exceeds", "holds"]
        .iter()
        .map(|kind| read["counts"][kind].as_u64().unwrap())
        .sum();
    assert_eq!(total as usize, points.len());
}

#[test]
fn as_a_page() {
    let page = with(SITE, OFFER, &ngvd29(-1.1), |review| page(review).unwrap());
    assert!(!page.contains("<script"), "a name is escaped");
    assert!(!page.contains("<b>9</b>"));
    assert!(page.contains("&#60;script&#62;"));
    // Nothing is loaded from elsewhere, and no script is needed.
    for sign in [
        "http://",
        "https://",
        "src=",
        "@import",
        "url(",
        "javascript:",
    ] {
        assert!(!page.contains(sign), "{sign}");
    }
    // Each outcome stands in words, each table has headers with their scope.
    for words in ["falls short by", "cannot be checked; missing:", "holds"] {
        assert!(page.contains(words), "{words}");
    }
    assert_eq!(
        page.matches("<table").count(),
        page.matches("<thead>").count()
    );
    assert_eq!(
        page.matches("<th ").count(),
        page.matches("<th scope=").count()
    );
    insta::assert_snapshot!("review_page", page);
}

#[test]
fn every_finding_is_a_possibility() {
    with(SITE, OFFER, &ngvd29(-1.1), |review| {
        let findings = review.points.iter().flat_map(|point| &point.findings);
        for finding in findings {
            let text = finding.text(UnitSystem::Si);
            for word in ["wrong person", "mistake", "error", "fraud", "false"] {
                assert!(!text.contains(word), "{text}");
            }
            assert!(!text.ends_with('.'), "{text}");
        }
    });
}
