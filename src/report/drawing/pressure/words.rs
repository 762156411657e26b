//! The pressure in words.

use super::Shown;
use crate::assess::percent;
use crate::load::Impact;

impl Shown<'_> {
    /// What the drawing does not show.
    pub(super) fn notes(&self) -> Vec<String> {
        let units = self.units;
        let mut notes = vec![
            "The water stands to the left and the planks to the right; without load factors. An arrow is the force of a part on each unit of width, at the height where it acts.".to_owned(),
        ];
        notes.push(match self.design.governing() {
            Some(check) => format!(
                "Nearest to its limit in this case: {} in {}, {} of what is allowed.",
                check.part,
                check.what,
                percent(check.ratio())
            ),
            None => "No plank or post could be checked, so that no case governs: this is the water at the top of the barrier.".to_owned(),
        });
        notes.extend(self.load.debris.map(|impact| {
            let force = match impact {
                Impact::Patch { force, .. } => units.force(force),
                Impact::Strip { force, .. } => units.line_load(force),
            };
            format!("Not drawn: debris with {force}, which strikes at one place at a time.")
        }));
        notes.extend(self.load.water.crest().map(|crest| {
            let crest = units.height(crest);
            format!("The crests of the waves reach {crest} over the sill.")
        }));
        notes
    }

    /// The drawing for a reader who does not see it.
    pub(super) fn told(&self) -> String {
        let units = self.units;
        let mut told = vec![format!(
            "The water stands {} over the sill, the barrier is {} high.",
            units.height(self.load.depth),
            units.height(self.design.stack.height)
        )];
        for panel in &self.panels {
            let resultant = panel.profile.resultant();
            let (greatest, at) = panel.profile.greatest();
            told.push(format!(
                "{}: {} at {} over the sill, at most {} at {}.",
                panel.name,
                units.line_load(resultant.force),
                units.height(resultant.height),
                units.pressure(greatest),
                units.height(at)
            ));
        }
        told.extend(self.notes());
        told.join(" ")
    }
}
