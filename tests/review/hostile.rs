//! Figures that no offer has, and all the same are typed.

use proptest::prelude::*;
use sillmark::proposal::Proposal;
use sillmark::report::review::{json, page, text};

use super::fixture::{SITE, ngvd29, with};

/// Nothing here may end the program or give a number that is none.
fn bears(proposal: &str) {
    with(SITE, proposal, &ngvd29(-1.1), |review| {
        for point in &review.points {
            for figure in point
                .ours
                .iter()
                .chain(point.theirs.as_ref().map(|it| &it.figure))
            {
                if let Some((number, _)) = figure.in_si() {
                    assert!(number.is_finite(), "{proposal}: {}", point.topic.code());
                }
            }
            if let Some(tolerance) = &point.tolerance {
                assert!(tolerance.half_width() >= 0.0, "{proposal}");
                assert!(tolerance.half_width().is_finite(), "{proposal}");
            }
        }
        assert!(!text(review, 96).contains("NaN"), "{proposal}");
        json(review).unwrap();
        page(review).unwrap();
    });
}

#[test]
fn nothing_and_far_too_much() {
    for height in ["0 ft", "0.0000001 ft", "1000 m", "3 ft 0 in", "1/3 in"] {
        for load in ["0", "0.0001", "99999999"] {
            bears(&format!(
                "freeboard = \"{height}\"\n[[opening]]\nid = \"door\"\nprotection_height = \"{height}\"\nbarrier_height = \"{height}\"\nspan = \"{height}\"\nplanks = 1000\nplank_height = \"{height}\"\nposts = 0\nintermediate_posts = 1000\n[opening.load]\ndepth = \"{height}\"\nforce_per_width = \"{load} N/m\"\nmoment_per_width = \"{load} N·m/m\"\nforce = \"{load} N\"\npressure = \"0 Pa\""
            ));
        }
        bears(&format!(
            "[[opening]]\nid = \"door\"\n[opening.load]\ndepth = \"{height}\"\nwaves = \"breaking\"\nrisk_category = \"IV\"\nforce_per_width = \"1 N/m\""
        ));
    }
    for level in [
        "-499 m NAVD88",
        "8999 m NGVD29",
        "0 ft NAVD88",
        "0.000001 in NGVD29",
    ] {
        bears(&format!(
            "flood_level = \"{level}\"\ndesign_level = \"{level}\"\n[[opening]]\nid = \"door\"\nsill = \"{level}\"\nground = \"{level}\"\nbarrier_height = \"1 ft\"\nmeasured_from = \"ground\""
        ));
    }
    bears("warning = \"0 h\"\nfitting_time = \"366 days\"\nleakage = \"0 L/h/m\"");
    bears("leakage = \"1000 m3/s\"");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,24}", key in 0_usize..6) {
        let key = ["flood_level", "freeboard", "leakage", "warning", "name", "annual_chance"][key];
        let file = format!("{key} = {}", toml::Value::from(text));
        if let Err(error) = Proposal::from_toml("offer.toml", &file) {
            prop_assert!(error.to_string().starts_with("offer.toml, line 1: "), "{}", error);
        }
    }

    #[test]
    fn any_figures_are_compared(level in -400.0_f64..4000.0, height in 0.0_f64..100.0, force in 0.0_f64..1e6) {
        bears(&format!(
            "flood_level = \"{level:.2} ft NGVD29\"\nfreeboard = \"{height:.2} ft\"\n[[opening]]\nid = \"door\"\nbarrier_height = \"{height:.3} ft\"\n[opening.load]\ndepth = \"{height:.1} ft\"\nforce_per_width = \"{force:.1} lb/ft\""
        ));
    }
}
