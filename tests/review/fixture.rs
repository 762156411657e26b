//! A house in a stated flood, and proposals for it.

use sillmark::assess::{Detail, Method, Sources, Uncertainty, assess};
use sillmark::barrier::{DesignRules, Kit};
use sillmark::crs::{DatumSettings, Datums};
use sillmark::design::rules;
use sillmark::level::LevelMaps;
use sillmark::load::LoadZone;
use sillmark::proposal::Proposal;
use sillmark::quantity::unit::{Length, foot, meter};
use sillmark::quantity::{AnnualChance, UnitSystem, VerticalDatum};
use sillmark::review::{
    Finding, KnownShift, Outcome, OutcomeKind, Point, Review, Shifts, Subject, Topic, review,
};
use sillmark::site::{RuleChoice, Site};
use sillmark::terrain::Terrain;
use sillmark::verdict::Limits;

/// A door 1.9 ft below its design level: flood level 9 ft ± 0.1 ft, 1 ft of freeboard, sill
/// 8.1 ft ± 0.13 ft, ground 6 ft.
pub(crate) const SITE: &str = r#"name = "Test House"
location = { longitude = -74.0, latitude = 40.0 }
threshold = "8.1 ft NAVD88"
occupancy = "commercial"
lowest_adjacent_grade = "6 ft NAVD88"
rule = "us-nfip-floodproofing"
[[flood_level]]
event = "1%"
level = "9 ft NAVD88"
standard_deviation = "0.05 ft"
source = "county study, profile 12"
[[opening]]
id = "door"
width = "36 in"
reveal = "6 in"
wall = "unreinforced masonry"
"#;

pub(crate) fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

/// NAVD88 lies so many feet over NGVD29 here, to 0.05 ft.
pub(crate) fn ngvd29(feet_to_add: f64) -> Shifts {
    Shifts {
        known: vec![KnownShift {
            from: VerticalDatum::Ngvd29,
            to: VerticalDatum::Navd88,
            shift: feet(feet_to_add),
            sd: Some(feet(0.05)),
            source: "county study, table 2".to_owned(),
        }],
        unknown: Vec::new(),
    }
}

/// The points of a review with what the whole comes to.
pub(crate) struct Reviewed {
    pub(crate) points: Vec<Point>,
    pub(crate) worst: OutcomeKind,
}

pub(crate) fn with<Answer>(
    site: &str,
    proposal: &str,
    shifts: &Shifts,
    look: impl FnOnce(&Review<'_>) -> Answer,
) -> Answer {
    let site = Site::from_toml("site.toml", site).unwrap();
    let proposal = Proposal::from_toml("offer.toml", proposal).unwrap();
    let kit = Kit::demonstration().unwrap();
    let id = match &site.rule {
        Some(RuleChoice::Named { id, .. }) => id.clone(),
        _ => "none".to_owned(),
    };
    let mut known = rules().unwrap().into_iter();
    let method = Method {
        rule: known.find(|rule| rule.id == id).unwrap(),
        rules: DesignRules::of(&kit, &site.conditions.loads, LoadZone::Other).unwrap(),
        kit,
        limits: Limits::shipped().unwrap(),
        event: AnnualChance::ONE_PERCENT,
        grade_radius: Length::new::<meter>(10.0),
        uncertainty: Uncertainty::of(&site.uncertainty, None).unwrap(),
        years: 30,
        units: UnitSystem::Us,
        detail: Detail::Full,
    };
    let sources = Sources {
        zones: Vec::new(),
        levels: LevelMaps::default(),
        terrain: Terrain::new(Vec::new()),
        datums: Datums::new(DatumSettings::default()).unwrap(),
    };
    let assessment = assess(&site, &sources, &method).unwrap();
    look(&review(&assessment, &proposal, shifts))
}

pub(crate) fn reviewed(site: &str, proposal: &str, shifts: &Shifts) -> Reviewed {
    with(site, proposal, shifts, |review| Reviewed {
        points: review.points.clone(),
        worst: review.worst(),
    })
}

/// The house's review of a proposal, without any shift between datums.
pub(crate) fn of_house(proposal: &str) -> Reviewed {
    reviewed(SITE, proposal, &Shifts::default())
}

/// The house's review of what a proposal says of the door.
pub(crate) fn of_door(fields: &str) -> Reviewed {
    of_house(&format!("[[opening]]\nid = \"door\"\n{fields}"))
}

impl Reviewed {
    pub(crate) fn find(&self, topic: Topic) -> Option<&Point> {
        self.points.iter().find(|point| point.topic == topic)
    }

    #[track_caller]
    pub(crate) fn point(&self, topic: Topic) -> &Point {
        self.find(topic)
            .unwrap_or_else(|| panic!("no {}", topic.code()))
    }

    /// The point of one opening.
    #[track_caller]
    pub(crate) fn of(&self, opening: &str, topic: Topic) -> &Point {
        let subject = Subject::Opening(opening.to_owned());
        let mut points = self.points.iter();
        points
            .find(|point| point.topic == topic && point.subject == subject)
            .unwrap_or_else(|| panic!("no {} of {opening}", topic.code()))
    }

    /// What a point comes to, in words, with its figure in US units.
    #[track_caller]
    pub(crate) fn outcome(&self, topic: Topic) -> String {
        outcome(self.point(topic))
    }

    /// The codes of the findings of a point.
    #[track_caller]
    pub(crate) fn codes(&self, topic: Topic) -> Vec<&'static str> {
        codes(self.point(topic))
    }

    /// The sentences of the findings of a point.
    #[track_caller]
    pub(crate) fn sentences(&self, topic: Topic) -> String {
        let findings = self.point(topic).findings.iter();
        let texts: Vec<String> = findings.map(|found| found.text(UnitSystem::Us)).collect();
        texts.join("\n")
    }
}

pub(crate) fn outcome(point: &Point) -> String {
    let word = point.outcome.kind().words();
    match &point.outcome {
        Outcome::Exceeds { by: Some(by) } | Outcome::FallsShort { by: Some(by) } => {
            format!("{word} by {}", by.text(UnitSystem::Us))
        }
        Outcome::CannotBeChecked { missing } => format!("{word}: {}", missing.join("; ")),
        _ => word.to_owned(),
    }
}

pub(crate) fn codes(point: &Point) -> Vec<&'static str> {
    point.findings.iter().map(Finding::code).collect()
}
