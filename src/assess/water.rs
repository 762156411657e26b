//! Step 3: the flood level at a place.

use super::study::{Spot, Study};
use super::{AssessError, Value};
use crate::hazard::ZonesHere;
use crate::level::{LevelAnswer, Question, Refusal, Silence, flood_level};

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
    ) -> Result<LevelAnswer, AssessError> {
        let answer = flood_level(&Question {
            location: spot.location,
            event: self.method.event,
            datum: self.site.threshold.datum(),
            datums: &self.sources.datums,
            stated: &self.site.flood_levels,
            zones: &here.zones,
            zones_given: !self.sources.zones.is_empty(),
            level_lines: &self.sources.level_lines,
            highest_grade: self.site.grade.highest.filter(|_| self.is_at_site(spot)),
        });
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
        let whose = spot.whose;
        if let Some(level) = &answer.level {
            let decided = &level.decided;
            self.trail.add(
                format!("flood level{whose}, {} annual chance", decided.chance),
                Value::Elevation(decided.elevation),
                format!("{}: {}", decided.source.title(), decided.how),
                decided.reference.clone(),
            );
            if let Some(sd) = decided.sd {
                self.trail.add(
                    format!("standard deviation of the flood level{whose}"),
                    Value::Length(sd),
                    decided.how.clone(),
                    "",
                );
            }
            for other in &level.others {
                self.trail.add(
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
            self.trail
                .add(format!("flood level{whose}"), Value::Unknown, how, "");
        }
        for Silence { source, why } in &answer.silent {
            self.trail.add(
                format!("flood level{whose}, no answer"),
                Value::Unknown,
                format!("{}: {why}", source.title()),
                "",
            );
        }
        for Refusal { candidate, error } in &answer.refused {
            self.trail.add(
                format!("flood level{whose}, refused"),
                Value::Elevation(candidate.elevation),
                format!("{}: {error}", candidate.source.title()),
                candidate.reference.clone(),
            );
        }
    }
}
