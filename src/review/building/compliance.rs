//! Whether barriers may be sold as what makes a building comply.

use super::SITE;
use crate::design::Occupancy;
use crate::review::desk::{Desk, is_coastal_high_hazard};
use crate::review::point::Proposed;
use crate::review::{Figure, Finding, Outcome, Point, Topic};
use crate::statement::Choice;

/// Where the flood-plain rules stand on dwellings and on coastal zones.
const REFERENCE: &str = "44 CFR 60.3(c)(2) and (c)(3); FEMA glossary, floodproofing; data/cautions.toml, residential-compliance and coastal-zone";

/// Only where the proposal says that it is, or is not, offered as compliance.
pub(super) fn compliance(desk: &Desk<'_>) -> Option<Point> {
    let offered = desk.proposal.compliance?;
    let theirs = desk.proposal.occupancy;
    let ours = desk.assessment.site.occupancy;
    let words =
        |occupancy: Option<Occupancy>| occupancy.map_or("use not stated", Choice::word).to_owned();
    let residential = [theirs, ours].contains(&Some(Occupancy::Residential));
    let openings = desk.assessment.openings.iter();
    let coastal = std::iter::once(&desk.assessment.place)
        .chain(openings.filter_map(|opening| opening.place.as_deref()))
        .any(is_coastal_high_hazard);
    let outcome = if !offered {
        Outcome::Holds
    } else if residential || coastal {
        Outcome::FallsShort { by: None }
    } else if ours.or(theirs).is_none() {
        Outcome::CannotBeChecked {
            missing: vec![
                "the use of the building (occupancy), in site file and proposal".to_owned(),
            ],
        }
    } else {
        Outcome::Holds
    };
    let claim = if offered {
        "offered as compliance"
    } else {
        "not offered as compliance"
    };
    let stands = match (residential, coastal) {
        (true, _) => "no dwelling complies by barriers".to_owned(),
        (false, true) => {
            "no building in a coastal high-hazard zone complies by barriers".to_owned()
        }
        (false, false) => words(ours.or(theirs)),
    };
    let other = match (theirs, ours) {
        (Some(theirs), Some(ours)) if theirs != ours => {
            Some(Finding::OtherOccupancy { theirs, ours })
        }
        _ => None,
    };
    Some(Point {
        ours: Some(Figure::Words(stands)),
        theirs: Some(Proposed::follows(Figure::Words(claim.to_owned()))),
        ..Point::bare(&SITE, Topic::Compliance, outcome, REFERENCE).with(other)
    })
}
