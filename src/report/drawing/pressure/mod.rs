//! Pressure of the water over the height of a barrier, part by part.

mod outline;
mod panel;
mod words;

#[cfg(test)]
mod tests;

use super::beside::{Column, Label, Seat};
use super::footnotes::Footnotes;
use super::hatch::Hatch;
use super::lettering::{BOLD, fitted};
use super::scale::Scale;
use super::sheet::{Anchor, Sheet};
use crate::barrier::{BarrierDesign, CaseLoad, LoadCase};
use crate::load::LoadPart;
use crate::quantity::unit::{foot, meter};
use crate::quantity::{Length, UnitSystem};
use crate::report::parts::profiles;
use crate::statement::Choice;
use panel::Panel;

const WIDTH: f64 = 640.0;
const LEFT: f64 = 62.0;
const RIGHT: f64 = 508.0;
const TOP: f64 = 44.0;
const BOTTOM: f64 = 264.0;
/// Where footnotes begin: below the axis of pressures and four lines for each panel.
const NOTES: f64 = BOTTOM + 104.0;

/// What presses on the barrier of an opening in the case that governs it; `None` where
/// nothing does. Each part has a panel of its own, all with one scale, and the last is all of
/// them together.
///
/// `name` is that of the opening, `id` unlike that of every other drawing of the page.
pub(in crate::report) fn pressure(
    id: &str,
    name: &str,
    design: &BarrierDesign,
    units: UnitSystem,
) -> Option<String> {
    let case = design.governing().map_or(LoadCase::Top, |check| check.case);
    let load = design.load(case)?;
    let panels = panels(load, design.stack.height);
    if panels.is_empty() {
        return None;
    }
    let shown = Shown {
        design,
        load,
        panels,
        units,
    };
    Some(shown.draw(id, name))
}

/// A panel for each part, and one for all where there are several.
fn panels(load: &CaseLoad, height: Length) -> Vec<Panel> {
    let mut panels: Vec<Panel> = profiles(load, height)
        .map(|(part, profile)| Panel {
            name: part.to_string(),
            hatch: hatch(part),
            profile,
        })
        .collect();
    if panels.len() > 1 {
        panels.push(Panel {
            name: "all together".to_owned(),
            hatch: Hatch::Plain,
            profile: load.on_barrier.clone(),
        });
    }
    panels
}

const fn hatch(part: LoadPart) -> Hatch {
    match part {
        LoadPart::StillWater | LoadPart::ExtraDepth => Hatch::Level,
        LoadPart::Flow => Hatch::Rising,
        LoadPart::Soil => Hatch::Dots,
        LoadPart::Wave | LoadPart::Debris => Hatch::Crossed,
    }
}

struct Shown<'a> {
    design: &'a BarrierDesign,
    load: &'a CaseLoad,
    panels: Vec<Panel>,
    units: UnitSystem,
}

impl Shown<'_> {
    fn draw(&self, id: &str, name: &str) -> String {
        let case = self.load.case.word();
        let (title, case) = match self.design.governing() {
            Some(_) => (
                format!("Pressure on the barrier of {name}: {case}, the case that governs"),
                format!("governing case: {case}"),
            ),
            None => (
                format!("Pressure on the barrier of {name}: {case}"),
                case.to_owned(),
            ),
        };
        let notes = Footnotes::of(&self.notes());
        let size = (WIDTH, NOTES + notes.height() + 10.0);
        let mut sheet = Sheet::new(id, size, &title, &self.told());
        let heading = format!("Pressure on the barrier of {name}");
        let heading = fitted(&heading, 13.0 * BOLD, WIDTH - 16.0);
        sheet.text("strong", (8.0, 20.0), Anchor::Start, &heading);
        sheet.text("small", (8.0, 37.0), Anchor::Start, &case);
        for panel in &self.panels {
            sheet.provide(panel.hatch);
        }
        let heights = self.heights();
        self.height_axis(&mut sheet, heights);
        self.draw_panels(&mut sheet, heights);
        self.levels(&mut sheet, heights);
        notes.draw(&mut sheet, 8.0, NOTES);
        sheet.finish()
    }

    /// Metres over the sill: up to the top of the barrier, or the water over it.
    fn heights(&self) -> Scale {
        let top = self.design.stack.height.value;
        let water = self.load.depth.value.min(1.5 * top);
        Scale::between((0.0, 1.08 * top.max(water)), (BOTTOM, TOP + 8.0))
    }

    fn height_axis(&self, sheet: &mut Sheet, heights: Scale) {
        let (unit, name) = match self.units {
            UnitSystem::Us => (Length::new::<foot>(1.0).value, "ft over the sill"),
            UnitSystem::Si => (Length::new::<meter>(1.0).value, "m over the sill"),
        };
        let top = self.design.stack.height.value / unit;
        let printed = Scale::between((0.0, top), (BOTTOM, heights.at(top * unit)));
        for (number, label) in printed.ticks((0.0, top), 28.0) {
            let at = printed.at(number);
            sheet.line("grid", (LEFT, at), (RIGHT, at));
            sheet.text("small", (LEFT - 6.0, at + 4.0), Anchor::End, &label);
        }
        let middle = f64::midpoint(TOP, BOTTOM);
        sheet.text_upward("small soft", (16.0, middle), Anchor::Middle, name);
        sheet.line("axis", (LEFT, BOTTOM), (RIGHT, BOTTOM));
    }

    #[allow(clippy::cast_precision_loss)] // at most five panels
    fn draw_panels(&self, sheet: &mut Sheet, heights: Scale) {
        let each = (RIGHT - LEFT) / self.panels.len() as f64;
        let greatest = self
            .panels
            .iter()
            .map(|panel| panel.profile.greatest().0.value);
        let greatest = greatest.fold(0.0, f64::max);
        for (number, panel) in self.panels.iter().enumerate() {
            let from = LEFT + number as f64 * each;
            let room = panel::Room {
                from: from + 6.0,
                to: from + each - 2.0,
                heights,
                greatest,
                stack: self.design.stack,
                units: self.units,
            };
            panel.draw(sheet, &room);
        }
        sheet.text(
            "small soft",
            (RIGHT + 18.0, BOTTOM + 17.0),
            Anchor::Start,
            panel::unit(self.units),
        );
    }

    /// Water surface and top of the barrier, the higher first.
    fn levels(&self, sheet: &mut Sheet, heights: Scale) {
        let mut levels = [
            ("water surface", "flood-level", self.load.depth),
            ("top of barrier", "top-level", self.design.stack.height),
        ];
        levels.sort_by(|one, other| other.2.value.total_cmp(&one.2.value));
        let mut labels = Vec::new();
        for (name, look, height) in levels {
            let at = heights.at(height.value);
            let is_drawn = at >= TOP;
            if is_drawn {
                sheet.line(look, (LEFT, at), (RIGHT, at));
            }
            labels.push(Label {
                seat: if is_drawn { Seat::At(at) } else { Seat::Above },
                lines: vec![name.to_owned(), self.units.height(height)],
            });
        }
        let column = Column {
            edge: RIGHT,
            text: RIGHT + 18.0,
            room: WIDTH - RIGHT - 22.0,
            between: (TOP - 12.0, BOTTOM),
        };
        column.draw(sheet, &labels);
    }
}
