//! Sheet-flow zones: a depth over the highest ground against the wall.

use super::water::deciding;
use super::{Candidate, HighestGrade, LevelSource, Question};
use crate::hazard::{Zone, ZoneClass};
use crate::quantity::{AnnualChance, Elevation, Length, parse_length};
use crate::risk::root_sum_square;

/// The depth that counts where a sheet-flow zone has no depth number: two feet, 44 CFR
/// 60.3(c)(7).
pub const DEPTH_WITHOUT_NUMBER: &str = "2 ft";

/// The flood level in a sheet-flow zone: highest adjacent grade plus the zone's depth number,
/// or two feet where the map has none (44 CFR 60.3(c)(7)).
///
/// A building code that asks for more (IRC R322.2.1: one foot more) is a freeboard rule, not
/// a level.
///
/// ```
/// use sillmark::level::depth_over_grade;
/// use sillmark::quantity::{Length, parse_elevation, unit::foot};
/// let grade = parse_elevation("100 ft NAVD88")?;
/// assert_eq!(depth_over_grade(grade, None), parse_elevation("102 ft NAVD88")?);
/// assert_eq!(depth_over_grade(grade, Some(Length::new::<foot>(1.0))), parse_elevation("101 ft NAVD88")?);
/// # Ok::<(), sillmark::quantity::QuantityError>(())
/// ```
#[must_use]
pub fn depth_over_grade(highest_adjacent_grade: Elevation, depth: Option<Length>) -> Elevation {
    let without_number = parse_length(DEPTH_WITHOUT_NUMBER).unwrap_or_default();
    highest_adjacent_grade.raised(depth.unwrap_or(without_number))
}

/// The level in the worst sheet-flow zone, where the highest adjacent grade is known.
pub(super) fn candidate(question: &Question<'_>) -> Option<Candidate> {
    let grade = question.highest_grade?;
    candidate_over(
        deciding(question.zones),
        question.event,
        grade,
        question.depth_sd,
    )
}

/// The level of the event in the deepest sheet-flow zone among `zones`, over the highest
/// adjacent grade; `None` where no such zone is of the event, or where one of them states a
/// depth that could not be used: that is not the same as no depth.
///
/// `depth_sd` is the standard deviation of the zone's depth (the `depth-number` of
/// `data/uncertainty.toml`, say). The level's own is known where both parts are, and not
/// where the map has no depth: the two feet are a rule's minimum, not a measurement.
#[must_use]
pub fn candidate_over<'zone>(
    zones: impl IntoIterator<Item = &'zone Zone>,
    event: AnnualChance,
    grade: &HighestGrade,
    depth_sd: Option<Length>,
) -> Option<Candidate> {
    let without_number = parse_length(DEPTH_WITHOUT_NUMBER).unwrap_or_default();
    let depth_of = |zone: &Zone| zone.depth.unwrap_or(without_number).value;
    let sheet_flow = zones
        .into_iter()
        .filter(|zone| zone.class == ZoneClass::SheetFlow && zone.annual_chance.same_event(event));
    let mut deepest: Option<&Zone> = None;
    for zone in sheet_flow {
        if zone.depth.is_none() && zone.depth_is_stated {
            return None;
        }
        if deepest.is_none_or(|deepest| depth_of(zone) > depth_of(deepest)) {
            deepest = Some(zone);
        }
    }
    let zone = deepest?;
    let depth = match zone.depth {
        Some(_) => "the zone's depth number".to_owned(),
        None => format!("{DEPTH_WITHOUT_NUMBER}, because the zone has no depth number"),
    };
    let sd = match (zone.depth, grade.sd, depth_sd) {
        (Some(_), Some(grade), Some(depth)) => Some(root_sum_square([grade, depth])),
        _ => None,
    };
    Some(Candidate {
        source: LevelSource::DepthOverGrade,
        elevation: depth_over_grade(grade.elevation, zone.depth),
        sd,
        chance: zone.annual_chance,
        how: format!("{} + {depth}", grade.how),
        reference: format!("44 CFR 60.3(c)(7); {}; {}", zone.record(), grade.reference),
    })
}
