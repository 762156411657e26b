//! Step 3: the flood level at a place.

use super::study::{Spot, Study};
use super::{AssessError, Detail, Trail, Value};
use crate::hazard::ZonesHere;
use crate::level::{HighestGrade, LevelAnswer, MapLevels, Question, Refusal, Silence, flood_level};

impl Study<'_> {
    /// What all sources say of the flood level, on the datum of the threshold.
    ///
    /// # Errors
    /// [`AssessError::Datum`] where a level with at least the authority of the deciding one
    /// cannot be put on the datum of the threshold: it may be the higher one.
    pub(super) fn flood_level(
        &mut self,
        spot: Spot<'_>,
        here: &ZonesHere<'_>,
        read: MapLevels,
        highest_grade: Option<&HighestGrade>,
    ) -> Result<LevelAnswer, AssessError> {
        let uncertainty = &self.method.uncertainty;
        let question = Question {
            location: spot.location,
            event: self.method.event,
            datum: self.site.threshold.datum(),
            datums: &self.sources.datums,
            stated: &self.site.flood_levels,
            zones: &here.zones,
            highest_grade,
            depth_sd: Some(uncertainty.depth_number.sd),
            level_sd: &|source| uncertainty.of_level(source),
            words: self.method.detail == Detail::Full,
        };
        let answer = flood_level(&question, read);
        self.trail_levels(&answer, spot);
        let decided = answer.level.as_ref().map(|level| level.decided.source);
        let weighty =
            |refusal: &Refusal| decided.is_none_or(|decided| refusal.candidate.source <= decided);
        match answer.refused.iter().find(|refusal| weighty(refusal)) {
            None => Ok(answer),
            Some(Refusal { candidate, error }) => {
                let what = format!(
                    "the flood level ({}, {})",
                    candidate.source.title(),
                    candidate.reference
                );
                Err(AssessError::other_datum(
                    self.site,
                    &what,
                    candidate.elevation,
                    error.clone(),
                ))
            }
        }
    }

    fn trail_levels(&mut self, answer: &LevelAnswer, spot: Spot<'_>) {
        self.trail
            .note(|trail| trail_levels(trail, answer, spot.whose));
    }
}

fn trail_levels(trail: &mut Trail, answer: &LevelAnswer, whose: &str) {
    if let Some(level) = &answer.level {
        let decided = &level.decided;
        trail.add(
            format!("flood level{whose}, {} annual chance", decided.chance),
            Value::Elevation(decided.elevation),
            format!("{}: {}", decided.source.title(), decided.how),
            decided.reference.clone(),
        );
        if let Some(sd) = decided.sd {
            trail.add(
                format!("standard deviation of the flood level{whose}"),
                Value::Length(sd),
                decided.how.clone(),
                "",
            );
        }
        for other in &level.others {
            trail.add(
                format!("flood level{whose}, other source"),
                Value::Elevation(other.elevation),
                format!(
                    "{}: {}; not used, a source with more authority is there",
                    other.source.title(),
                    other.how
                ),
                other.reference.clone(),
            );
        }
    } else if answer.refused.is_empty() {
        let how = "no source has a level for the place";
        trail.add(format!("flood level{whose}"), Value::Unknown, how, "");
    }
    if let Some(curve) = &answer.curve {
        for level in curve.stages.levels() {
            trail.add(
                format!("level{whose} of the {} annual chance flood", level.chance),
                Value::Elevation(level.elevation),
                "a point of the curve of level and chance",
                curve.reference.clone(),
            );
        }
    }
    if let Some(beside) = &answer.beside {
        trail.add(
            format!("level of the river beside the place{whose}, not used"),
            Value::Elevation(beside.elevation),
            format!(
                "{}: {}; the map puts the place outside the flood",
                beside.source.title(),
                beside.how
            ),
            beside.reference.clone(),
        );
    }
    for Silence { source, why } in &answer.silent {
        trail.add(
            format!("flood level{whose}, no answer"),
            Value::Unknown,
            format!("{}: {why}", source.title()),
            "",
        );
    }
    for Refusal { candidate, error } in &answer.refused {
        trail.add(
            format!("flood level{whose}, refused"),
            Value::Elevation(candidate.elevation),
            format!("{}: {error}", candidate.source.title()),
            candidate.reference.clone(),
        );
    }
}
