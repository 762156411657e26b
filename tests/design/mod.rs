//! Freeboard rules: the highest of their terms, and what happens where a level is missing.

use approx::assert_abs_diff_eq;
use sillmark::design::{
    Base, BaseLevel, DesignGap, DesignLevel, FloodEvent, KnownLevels, Occupancy, Rule, StatedLevel,
    design_level, rules,
};
use sillmark::quantity::unit::foot;
use sillmark::quantity::{AnnualChance, Elevation, parse_elevation};
use sillmark::statement::Document;

fn level(text: &str) -> Elevation {
    parse_elevation(text).unwrap()
}

fn known(event: FloodEvent, text: &str) -> StatedLevel {
    StatedLevel {
        event,
        elevation: level(text),
        sd: None,
        source: "test".to_owned(),
    }
}

fn shipped(id: &str) -> Rule {
    rules()
        .unwrap()
        .into_iter()
        .find(|rule| rule.id == id)
        .unwrap()
}

fn design(rule: &Rule, flood: BaseLevel, stated: &[StatedLevel]) -> Result<DesignLevel, DesignGap> {
    design_level(rule, None, KnownLevels { flood, stated })
}

/// A town's own rule: base flood + 3 ft or flood of record + 1 ft, whichever is higher.
fn towns_rule() -> Rule {
    let text = r#"
        [rule]
        name = "Town code"
        source = "ordinance 12 of 2019, section 4"
        [[rule.term]]
        to = "flood level"
        add = "3 ft"
        [[rule.term]]
        to = "record"
        add = "1 ft"
    "#;
    let document = Document::parse("site.toml", text).unwrap();
    Rule::read_stated(&document.root().table("rule").unwrap().unwrap()).unwrap()
}

#[test]
fn a_towns_rule_takes_whichever_is_higher() {
    let flood = BaseLevel::Known(level("100 ft NAVD88"));
    let high_water = [known(FloodEvent::Record, "103.5 ft NAVD88")];
    let found = design(&towns_rule(), flood, &high_water).unwrap();
    assert_abs_diff_eq!(
        found.elevation.height().get::<foot>(),
        104.5,
        epsilon = 1e-9
    );
    assert_eq!(found.governing, Base::Event(FloodEvent::Record));
    assert_abs_diff_eq!(found.freeboard.unwrap().get::<foot>(), 4.5, epsilon = 1e-9);

    let low_water = [known(FloodEvent::Record, "101 ft NAVD88")];
    let found = design(&towns_rule(), flood, &low_water).unwrap();
    assert_abs_diff_eq!(
        found.elevation.height().get::<foot>(),
        103.0,
        epsilon = 1e-9
    );
    assert_eq!(found.governing, Base::FloodLevel);
}

#[test]
fn a_level_that_a_rule_always_compares_with_has_to_be_known() {
    let flood = BaseLevel::Known(level("100 ft NAVD88"));
    let gap = design(&towns_rule(), flood, &[]).unwrap_err();
    assert_eq!(
        gap,
        DesignGap::MissingLevel {
            base: Base::Event(FloodEvent::Record),
            at_least: Some(level("100 ft NAVD88").raised(towns_rule().terms[0].add))
        }
    );
}

#[test]
fn a_level_that_a_community_may_have_adopted_is_noted_where_it_is_not_stated() {
    let flood = BaseLevel::Known(level("100 ft NAVD88"));
    let found = design(&shipped("us-residential-code-r322"), flood, &[]).unwrap();
    assert_eq!(found.not_compared, [Base::Event(FloodEvent::Community)]);
}

#[test]
fn outside_the_mapped_flood_a_rule_on_that_flood_has_nothing_to_say() {
    let outside = BaseLevel::NotReached(AnnualChance::ONE_PERCENT);
    assert_eq!(
        design(&shipped("us-nfip-floodproofing"), outside, &[]),
        Err(DesignGap::NotReached)
    );
}

#[test]
fn outside_the_mapped_flood_the_flood_of_record_still_counts() {
    let outside = BaseLevel::NotReached(AnnualChance::ONE_IN_500);
    let record = [known(FloodEvent::Record, "101 ft NAVD88")];
    let found = design(&towns_rule(), outside, &record).unwrap();
    assert_abs_diff_eq!(
        found.elevation.height().get::<foot>(),
        102.0,
        epsilon = 1e-9
    );
    assert_eq!(found.freeboard, None);
}

#[test]
fn a_rarer_flood_is_not_ruled_out_by_a_map_of_the_one_percent_flood() {
    let class_4 = shipped("us-floodproofing-class-4");
    let outside_one_percent = BaseLevel::NotReached(AnnualChance::ONE_PERCENT);
    let missing = design(&class_4, outside_one_percent, &[]).unwrap_err();
    assert!(matches!(
        missing,
        DesignGap::MissingLevel {
            base: Base::Event(FloodEvent::Chance(_)),
            at_least: None
        }
    ));
    let outside_both = BaseLevel::NotReached(AnnualChance::ONE_IN_500);
    assert_eq!(
        design(&class_4, outside_both, &[]),
        Err(DesignGap::NotReached)
    );
}

#[test]
fn a_rule_by_use_needs_the_use() {
    let rule = shipped("us-ffrms-freeboard");
    let levels = KnownLevels {
        flood: BaseLevel::Known(level("100 ft NAVD88")),
        stated: &[],
    };
    let feet = |occupancy| {
        design_level(&rule, occupancy, levels)
            .map(|found| found.freeboard.unwrap().get::<foot>().round())
    };
    assert_eq!(feet(Some(Occupancy::Commercial)), Ok(2.0));
    assert_eq!(feet(Some(Occupancy::Critical)), Ok(3.0));
    assert_eq!(feet(None), Err(DesignGap::MissingOccupancy));
}

#[test]
fn a_level_on_another_datum_is_an_error() {
    let flood = BaseLevel::Known(level("100 ft NAVD88"));
    let other = [known(FloodEvent::Record, "101 ft NGVD29")];
    assert!(matches!(
        design(&towns_rule(), flood, &other),
        Err(DesignGap::Datums(_))
    ));
}

#[test]
fn ids_of_the_catalogue_are_different_and_without_spaces() {
    let rules = rules().unwrap();
    for (position, rule) in rules.iter().enumerate() {
        assert!(!rule.id.contains(char::is_whitespace), "{}", rule.id);
        assert!(
            rules[..position].iter().all(|other| other.id != rule.id),
            "{} twice",
            rule.id
        );
        assert!(!rule.citation.source.is_empty());
    }
}
