//! The answers to the rows of a chunk, from their readings.

use std::borrow::Cow;
use std::collections::HashMap;

use super::answer;
use super::chunk::{Chunk, RowFault};
use super::job::Answers;
use super::row::{OpeningRow, Row};
use super::row_fault::of_row;
use super::same_ids::id_hash;
use super::stored::{Packed, Unusual};
use super::summary::{RowFigures, Summary};
use super::worker::Worker;
use super::{RunError, site_of_row};
use crate::assess::{Assessment, assess_read};
use crate::quantity::{AnnualChance, UnitSystem};

impl Worker<'_> {
    pub(super) fn answer(
        &mut self,
        chunk: &Chunk,
        readings: &[Packed],
        mut unusual: HashMap<u32, Unusual>,
    ) -> Result<Answers, RunError> {
        let mut answers = Answers {
            rejects: chunk.faults.clone(),
            ids: chunk.ids_of_faults.clone(),
            lines: Vec::with_capacity(chunk.rows.len() * LINE_BYTES),
            summary: std::mem::take(&mut self.counted),
        };
        for (number, (row, packed)) in chunk.rows.iter().zip(readings).enumerate() {
            let lead = chunk.lead(number);
            let id = id_of(lead);
            let opening = row
                .opening
                .as_ref()
                .map_or("", |opening| opening.opening.as_str());
            answers.ids.push((id_hash(&id, opening), row.line));
            site_of_row::fill(&mut self.site, &row);
            let [us, si] = &self.methods;
            let method = match row.units {
                UnitSystem::Us => us,
                UnitSystem::Si => si,
            };
            let position = u32::try_from(number).unwrap_or(u32::MAX);
            let read = packed.readings(position, &mut unusual, &self.own.sources, method);
            // An assessment is large and stays where it is made.
            let fault = match read {
                Ok(read) => match assess_read(&self.site, read, &self.own.sources, method) {
                    Ok(ref assessment) => {
                        answer::write(&mut answers.lines, lead, assessment, &self.plan.columns);
                        summarise(&mut answers.summary, &id, &row, assessment);
                        continue;
                    }
                    Err(error) => of_row(&row, error)?,
                },
                Err(fault) => fault,
            };
            answers.rejects.push(RowFault {
                id: id.into_owned(),
                fault,
            });
        }
        answers.rejects.sort_by_key(|reject| reject.fault.line);
        for reject in &answers.rejects {
            answers
                .summary
                .reject(&reject.fault.field, &reject.fault.problem);
        }
        // Else every stretch would make the same cells and join them again.
        self.counted = Summary::after(&answers.summary);
        Ok(answers)
    }
}

/// Bytes that lines of the result mostly take.
const LINE_BYTES: usize = 300;

/// The id at the start of a line of the result; nearly every id stands there as it is.
fn id_of(lead: &[u8]) -> Cow<'_, str> {
    let plain = lead.split(|byte| *byte == b',').next().unwrap_or_default();
    match std::str::from_utf8(plain) {
        Ok(id) if !id.starts_with('"') => Cow::Borrowed(id),
        _ => Cow::Owned(quoted_id(lead)),
    }
}

fn quoted_id(lead: &[u8]) -> String {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(lead);
    let mut record = csv::StringRecord::new();
    let found = reader.read_record(&mut record).unwrap_or(false);
    let id = if found { record.get(0) } else { None };
    id.unwrap_or_default().to_owned()
}

fn summarise(summary: &mut Summary, id: &str, row: &Row<&OpeningRow>, assessment: &Assessment<'_>) {
    let Some(opening) = assessment.openings.first() else {
        return;
    };
    let codes: smallvec::SmallVec<[&'static str; 8]> = assessment
        .cautions
        .iter()
        .map(crate::verdict::Caution::code)
        .collect();
    summary.add(&RowFigures {
        id,
        location: Some(row.location),
        verdict: opening.verdict,
        zone: assessment
            .place
            .zone
            .as_ref()
            .map(|here| here.worst.code.as_str()),
        level_source: assessment
            .place
            .flood_level
            .as_ref()
            .map(|level| level.decided.source),
        protection_height: opening.protection_height,
        chance_at_sill: answer::chance_at_sill(opening).and_then(AnnualChance::new),
        threshold_is_estimate: assessment.site.threshold.is_estimate(),
        reason: opening.reasons.first().map(crate::verdict::Reason::code),
        cautions: &codes,
    });
}
