//! Sheet-flow zones: a depth over the highest ground against the wall.

use super::{Candidate, LevelSource, Question};
use crate::hazard::ZoneClass;
use crate::quantity::{AnnualChance, Elevation, Length, parse_length};

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
    let zone = question
        .deciding_zones()
        .find(|zone| zone.class == ZoneClass::SheetFlow)?;
    // A depth that is there but could not be read is not the same as no depth number.
    if zone.depth.is_none() && zone.depth_is_stated {
        return None;
    }
    let grade = question.highest_grade?;
    let chance =
        AnnualChance::new(zone.annual_chance).filter(|chance| chance.same_event(question.event))?;
    let how = match zone.depth {
        Some(_) => "surveyed highest adjacent grade + the zone's depth number".to_owned(),
        None => format!(
            "surveyed highest adjacent grade + {DEPTH_WITHOUT_NUMBER}, because the zone has no depth number"
        ),
    };
    Some(Candidate {
        source: LevelSource::DepthOverGrade,
        elevation: depth_over_grade(grade, zone.depth),
        sd: None,
        chance,
        how,
        reference: format!("44 CFR 60.3(c)(7); {}", zone.record()),
    })
}
