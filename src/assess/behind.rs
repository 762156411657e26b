//! The last step: all barriers of the building together.

use super::study::Study;
use super::{AssessError, OpeningAssessment, Trail, Value};
use crate::barrier::{BarrierAnswer, BehindBarriers};
use crate::inflow::FillingTime;
use crate::statement::Choice;
use crate::verdict::{Reason, Verdict};

impl<'a> Study<'a> {
    /// What all barriers together ask of a pump and of people. Where they are not up before
    /// the water, every opening that needs one needs an engineer.
    pub(super) fn behind(
        &mut self,
        openings: &mut [OpeningAssessment<'a>],
    ) -> Result<Option<Box<BehindBarriers>>, AssessError> {
        let conditions = &self.site.conditions;
        let barriers: Vec<&BarrierAnswer> = openings
            .iter()
            .filter_map(|opening| opening.barrier.as_deref())
            .collect();
        let warning = conditions.water.warning;
        let found = BehindBarriers::of(&barriers, &conditions.inside, &conditions.fitting, warning)
            .map_err(Box::new)?;
        let Some(behind) = &found else {
            return Ok(None);
        };
        self.trail.note(|trail| behind_trail(trail, behind));
        if let Some(late) = Reason::not_in_time(behind, warning) {
            let waiting = openings
                .iter_mut()
                .filter(|opening| opening.barrier.is_some());
            for opening in waiting {
                opening.reasons.push(late.clone());
                Reason::weightiest_first(&mut opening.reasons);
                opening.verdict = Verdict::of(&opening.reasons);
                self.trail.note(|trail| {
                    trail.add(
                        format!(
                            "verdict at \"{}\", with the time to put up all barriers",
                            opening.opening.id
                        ),
                        Value::Words(opening.verdict.word().to_owned()),
                        "the worst that the opening's reasons ask for",
                        "",
                    );
                });
            }
        }
        Ok(found.map(Box::new))
    }
}

/// What all barriers together ask for.
pub(super) fn behind_trail(trail: &mut Trail, behind: &BehindBarriers) {
    let at_least = if behind.pump.is_at_least() {
        "at least: not every way in has a number; "
    } else {
        ""
    };
    trail.add(
        "pump behind the barriers",
        Value::Flow(behind.pump.capacity),
        format!("{at_least}all inflow × {}", behind.pump.margin),
        behind.pump.citation.to_string(),
    );
    if let Some(filling) = &behind.filling {
        let sooner = if filling.may_be_sooner() {
            "; sooner, since not every way in has a number"
        } else {
            ""
        };
        trail.add(
            "time until the water inside reaches the stated depth, without a pump",
            match filling.time {
                FillingTime::After(time) => Value::Time(time),
                FillingTime::Never => Value::Words("never by what is counted".to_owned()),
            },
            format!("{}{sooner}", filling.method),
            "",
        );
    }
    if let Some(found) = &behind.impermeable {
        let at_least = if found.not_counted.is_empty() {
            ""
        } else {
            "at least: not every way in has a number; "
        };
        trail.add(
            "depth that gathers on the floor in 24 hours, without pump and rain",
            Value::Length(found.depth_in_24_hours),
            format!("{at_least}leakage × 24 h / floor"),
            found.citation.to_string(),
        );
    }
    if let Some(time) = behind.fitting_time {
        trail.add(
            "time to put up all barriers",
            Value::Time(time),
            "stated time for a plank and a post × the pieces of one party",
            "",
        );
    }
}
