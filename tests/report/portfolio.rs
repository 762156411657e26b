//! The summary of a portfolio, as text, page and JSON.

use serde_json::Value;
use sillmark::portfolio::summary::Summary;
use sillmark::quantity::UnitSystem;
use sillmark::report::portfolio::{json, page, portfolio_summary_schema, text};
use sillmark::report::verdict_colour;
use sillmark::statement::Choice;
use sillmark::verdict::{CautionTexts, Verdict};

use super::portfolio_cases as cases;

fn texts() -> CautionTexts {
    CautionTexts::shipped().unwrap()
}

fn all() -> [(&'static str, Summary); 7] {
    [
        ("river", cases::river(3000)),
        ("one row", cases::one_row()),
        ("all rejected", cases::all_rejected()),
        ("antimeridian", cases::antimeridian()),
        ("one point", cases::one_point()),
        ("long names", cases::long_names()),
        ("nothing", Summary::default()),
    ]
}

fn page_of(summary: &Summary) -> String {
    page(summary, &cases::run(UnitSystem::Us), &texts()).unwrap()
}

#[test]
fn text_us() {
    insta::assert_snapshot!(text(
        &cases::river(3000),
        &cases::run(UnitSystem::Us),
        &texts()
    ));
}

#[test]
fn text_si() {
    insta::assert_snapshot!(text(
        &cases::antimeridian(),
        &cases::run(UnitSystem::Si),
        &texts()
    ));
}

#[test]
fn text_all_rejected() {
    insta::assert_snapshot!(text(
        &cases::all_rejected(),
        &cases::run(UnitSystem::Us),
        &texts()
    ));
}

#[test]
fn page_us() {
    insta::assert_snapshot!(page_of(&cases::one_row()));
}

#[test]
fn page_si() {
    let run = cases::run(UnitSystem::Si);
    insta::assert_snapshot!(page(&cases::river(120), &run, &texts()).unwrap());
}

#[test]
fn lines_of_text_keep_to_their_columns() {
    for (name, summary) in all() {
        for line in text(&summary, &cases::run(UnitSystem::Us), &texts()).lines() {
            assert!(line.chars().count() <= 96, "{name}: {line}");
        }
    }
}

#[test]
fn nothing_is_called_safe() {
    for (name, summary) in all() {
        let run = cases::run(UnitSystem::Us);
        let told = text(&summary, &run, &texts()) + &page_of(&summary);
        assert!(!told.to_lowercase().contains("safe"), "{name}");
    }
}

/// Every element closes, in order; text holds no bare `<`, and `&` begins a reference.
fn assert_well_formed(name: &str, page: &str) {
    const EMPTY: [&str; 2] = ["meta", "!DOCTYPE"];
    let mut open: Vec<&str> = Vec::new();
    let mut rest = page;
    while let Some(start) = rest.find('<') {
        let tag_end = start + rest[start..].find('>').unwrap();
        let tag = &rest[start + 1..tag_end];
        rest = &rest[tag_end + 1..];
        let element = tag
            .trim_start_matches('/')
            .split([' ', '/'])
            .next()
            .unwrap();
        let letters = |text: &str| {
            text.chars()
                .all(|letter| letter.is_ascii_alphanumeric() || letter == '!')
        };
        assert!(!element.is_empty() && letters(element), "{name}: <{tag}>");
        assert!(
            tag.matches('"').count().is_multiple_of(2),
            "{name}: <{tag}>"
        );
        if tag.starts_with('/') {
            assert_eq!(open.pop(), Some(element), "{name}: <{tag}>");
        } else if !tag.ends_with('/') && !EMPTY.contains(&element) {
            open.push(element);
        }
    }
    assert!(open.is_empty(), "{name}: {open:?} stay open");
    for after in page.split('&').skip(1) {
        let reference: String = after.chars().take(8).collect();
        assert!(
            reference.starts_with('#') && reference.contains(';'),
            "{name}: &{reference}"
        );
    }
}

#[test]
fn pages_are_well_formed_and_need_nothing_else() {
    for (name, summary) in all() {
        let page = page_of(&summary);
        assert_well_formed(name, &page);
        for foreign in [
            "<script", "http://", "https://", "src=", "@import", "url(\"", "NaN", "\"inf",
        ] {
            assert!(!page.contains(foreign), "{name}: {foreign}");
        }
    }
}

#[test]
fn names_from_outside_are_escaped() {
    let mut run = cases::run(UnitSystem::Us);
    run.input = "<img src=x>&\"'.csv".to_owned();
    run.options.push(("<b>".to_owned(), "</style>".to_owned()));
    let page = page(&cases::long_names(), &run, &texts()).unwrap();
    assert_well_formed("escaped", &page);
    for wild in ["<img", "<script", "<i>use", "<b>zone", "</style><"] {
        assert!(!page.contains(wild), "{wild}");
    }
    assert!(page.contains("&#60;script&#62;alert(59)"));
    assert!(page.contains("&#60;img src=x&#62;"));
}

#[test]
fn a_page_without_rows_draws_nothing() {
    let page = page_of(&cases::all_rejected());
    assert!(!page.contains("<svg"));
    assert!(page.contains("None of the 1,251 rows of homes.csv could be read"));
    assert!(page.contains("is not a number between -90 and 90"));
}

#[test]
fn the_meridian_of_180_degrees_does_not_tear_the_map() {
    let page = page_of(&cases::antimeridian());
    assert!(page.contains("180°"), "labels of meridians");
    assert!(page.contains("178° E") && page.contains("179° W"));
}

#[test]
fn every_summary_fits_the_schema() {
    let schema: Value = serde_json::from_str(&portfolio_summary_schema().unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    for (name, summary) in all() {
        let told = json(&summary, &cases::run(UnitSystem::Us), &texts()).unwrap();
        let told: Value = serde_json::from_str(&told).unwrap();
        let faults: Vec<String> = validator
            .iter_errors(&told)
            .map(|fault| format!("{}: {fault}", fault.instance_path()))
            .collect();
        assert!(faults.is_empty(), "{name}: {}", faults.join("\n"));
        assert_eq!(told["rows_read"], summary.read());
        assert_eq!(
            told["verdicts"]["protect"],
            summary.verdicts().of(Verdict::Protect)
        );
    }
}

#[test]
fn the_schema_refuses_what_is_no_summary() {
    let schema: Value = serde_json::from_str(&portfolio_summary_schema().unwrap()).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let told = json(&cases::river(300), &cases::run(UnitSystem::Us), &texts()).unwrap();
    let told: Value = serde_json::from_str(&told).unwrap();
    let mut broken = told.clone();
    broken["highest_needs"][0]["verdict"] = "safe".into();
    assert!(!validator.is_valid(&broken), "verdict");
    broken = told.clone();
    broken["highest_needs"][0]["colour"] = "grey".into();
    assert!(!validator.is_valid(&broken), "more in a row");
    broken = told.clone();
    broken["verdicts"]["safe"] = 0.into();
    assert!(!validator.is_valid(&broken), "more verdicts");
    broken = told;
    broken.as_object_mut().unwrap().remove("rows_read");
    assert!(!validator.is_valid(&broken), "less");
}

/// Relative luminance of W3C, Web Content Accessibility Guidelines 2.2.
fn luminance(colour: [u8; 3]) -> f64 {
    let [red, green, blue] = colour.map(|part| {
        let part = f64::from(part) / 255.0;
        if part <= 0.04045 {
            part / 12.92
        } else {
            ((part + 0.055) / 1.055).powf(2.4)
        }
    });
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

fn contrast(one: [u8; 3], two: [u8; 3]) -> f64 {
    let (one, two) = (luminance(one), luminance(two));
    (one.max(two) + 0.05) / (one.min(two) + 0.05)
}

/// Paper and ink of the page, by day and by night.
const SHEETS: [([u8; 3], [u8; 3]); 2] = [
    ([0xfb, 0xfa, 0xf6], [0x1b, 0x24, 0x2d]),
    ([0x14, 0x19, 0x1e], [0xe8, 0xe9, 0xe6]),
];

#[test]
fn colours_stand_out() {
    let style = page_of(&cases::one_row());
    for (paper, ink) in SHEETS {
        for part in [paper, ink] {
            let [red, green, blue] = part;
            assert!(style.contains(&format!("#{red:02x}{green:02x}{blue:02x}")));
        }
        // Text, and the outline around every mark: 4.5 (success criterion 1.4.3).
        assert!(contrast(paper, ink) > 4.5);
        for (word, verdict) in Verdict::CHOICES {
            // Marks without their outline: 3 (criterion 1.4.11), but for orange on white, which
            // its outline carries.
            let least = if *verdict == Verdict::Protect {
                2.0
            } else {
                2.9
            };
            let found = contrast(verdict_colour(*verdict), paper);
            assert!(found > least, "{word}: {found}");
        }
    }
}

#[test]
fn colours_differ_in_grey_too() {
    let mut greys: Vec<f64> = Verdict::CHOICES
        .iter()
        .map(|(_, verdict)| luminance(verdict_colour(*verdict)))
        .collect();
    greys.sort_by(f64::total_cmp);
    for pair in greys.windows(2) {
        assert!((pair[1] + 0.05) / (pair[0] + 0.05) > 1.2, "{pair:?}");
    }
}
