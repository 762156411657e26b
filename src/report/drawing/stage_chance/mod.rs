//! Levels of several floods at a place: how often water reaches a height.

mod axes;
mod curve;
mod heights;

#[cfg(test)]
mod tests;

use super::beside::{Column, height_of};
use super::footnotes::Footnotes;
use super::lettering::{BOLD, fitted};
use super::sheet::{Anchor, Sheet};
use crate::assess::{Assessment, OpeningAssessment, percent};
use crate::level::Curve;
use crate::quantity::UnitSystem;
use crate::risk::INTERPOLATION;
use axes::Axes;
use heights::{Height, heights, labels};

const WIDTH: f64 = 640.0;
const LEFT: f64 = 78.0;
const RIGHT: f64 = 432.0;
const TOP: f64 = 74.0;
const LEAST_HIGH: f64 = 280.0;

/// The curve of elevation and annual chance where the site is and the openings there, or at
/// one opening (`own`) that stands elsewhere; `None` where levels of several floods are not
/// known there. The curve ends at the outermost known floods: nothing is extrapolated.
pub(in crate::report) fn stage_chance(
    id: &str,
    assessment: &Assessment<'_>,
    own: Option<&OpeningAssessment<'_>>,
) -> Option<String> {
    let place = match own {
        Some(opening) => opening.place.as_ref()?,
        None => &assessment.place,
    };
    let curve = place.curve.as_ref()?;
    let openings: Vec<&OpeningAssessment<'_>> = match own {
        Some(opening) => vec![opening],
        None => assessment
            .openings
            .iter()
            .filter(|opening| opening.place.is_none())
            .collect(),
    };
    let heights = heights(place, openings, assessment.method.units);
    let shown = Shown {
        name: own.map_or(&assessment.site.name, |opening| &opening.opening.id),
        curve,
        heights,
        units: assessment.method.units,
        years: assessment.method.years,
    };
    Some(shown.draw(id))
}

/// What is drawn.
struct Shown<'a> {
    name: &'a str,
    curve: &'a Curve,
    /// The highest first.
    heights: Vec<Height>,
    units: UnitSystem,
    years: u32,
}

impl Shown<'_> {
    fn draw(&self, id: &str) -> String {
        let said = labels(&self.heights, self.units, self.years);
        let bottom = TOP + height_of(&said).max(LEAST_HIGH);
        let axes = Axes::of(&self.curve.stages, &self.heights, bottom);
        let notes = Footnotes::of(&self.notes());
        let below = bottom + 46.0;
        let title = format!("Elevation and annual chance of floods at {}", self.name);
        let size = (WIDTH, below + notes.height() + 10.0);
        let mut sheet = Sheet::new(id, size, &title, &self.told());
        let heading = fitted(&title, 13.0 * BOLD, WIDTH - 16.0);
        sheet.text("strong", (8.0, 20.0), Anchor::Start, &heading);
        axes.draw(&mut sheet, &self.curve.stages, self.units, self.years);
        for height in &self.heights {
            height.draw(&mut sheet, &axes);
        }
        curve::draw(&mut sheet, &self.curve.stages, &axes);
        for height in &self.heights {
            height.mark(&mut sheet, &axes);
        }
        let column = Column {
            edge: RIGHT,
            text: RIGHT + 20.0,
            room: WIDTH - RIGHT - 24.0,
            between: (TOP, bottom),
        };
        let seats = self.heights.iter().filter(|height| height.is_labelled);
        let mut said = said;
        for (label, height) in said.iter_mut().zip(seats) {
            label.seat = axes.seat(height.elevation.height().value);
        }
        column.draw(&mut sheet, &said);
        notes.draw(&mut sheet, 8.0, below);
        sheet.finish()
    }

    fn notes(&self) -> Vec<String> {
        let mut notes = vec![format!(
            "Chances on a normal-probability axis; between known floods (dots) {INTERPOLATION}. Nothing is extrapolated."
        )];
        if self
            .curve
            .stages
            .levels()
            .iter()
            .any(|level| level.sd.is_some())
        {
            notes.push("Strokes at a dot reach two standard deviations up and down.".to_owned());
        }
        notes.push(format!("Levels: {}.", self.curve.source.title()));
        let unlabelled = self
            .heights
            .iter()
            .filter(|height| !height.is_labelled)
            .count();
        if unlabelled > 0 {
            notes.push(format!(
                "{unlabelled} more sills and tops of barriers are drawn without a label."
            ));
        }
        notes
    }

    fn told(&self) -> String {
        let mut told = Vec::new();
        for level in self.curve.stages.levels() {
            let sd = level
                .sd
                .map(|sd| format!(" ± {}", self.units.height(sd * 2.0)));
            told.push(format!(
                "{} annual chance: {}{}.",
                level.chance,
                self.units.elevation(level.elevation),
                sd.unwrap_or_default()
            ));
        }
        for height in &self.heights {
            let often = height.in_words(self.years);
            told.push(format!(
                "{} at {}{}.",
                height.name(),
                self.units.elevation(height.elevation),
                often.map(|often| format!(": {often}")).unwrap_or_default()
            ));
        }
        told.extend(self.notes());
        told.join(" ")
    }
}

/// A chance over years for a person.
fn over_years(chance: f64, years: u32) -> String {
    let noun = if years == 1 { "year" } else { "years" };
    format!("{} in {years} {noun}", percent(chance))
}
