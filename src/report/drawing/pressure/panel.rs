//! One part of the load before the barrier.

use super::outline::outline;
use crate::barrier::PlankStack;
use crate::load::PressureProfile;
use crate::quantity::UnitSystem;
use crate::quantity::unit::{Pressure, kilopascal, pound_per_square_foot};
use crate::report::drawing::hatch::Hatch;
use crate::report::drawing::lettering::{BOLD, fitted};
use crate::report::drawing::nice::{at_most, decimals};
use crate::report::drawing::scale::Scale;
use crate::report::drawing::sheet::{Anchor, Sheet};

/// Width of the planks, in pixels.
const PLANKS: f64 = 8.0;

pub(super) struct Panel {
    pub(super) name: String,
    pub(super) hatch: Hatch,
    pub(super) profile: PressureProfile,
}

/// Where a panel lies, and what all of them share.
pub(super) struct Room {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) heights: Scale,
    /// The greatest pressure of all panels, in pascals.
    pub(super) greatest: f64,
    pub(super) stack: PlankStack,
    pub(super) units: UnitSystem,
}

/// What pressures are printed in.
pub(super) const fn unit(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::Us => "pressure, psf",
        UnitSystem::Si => "pressure, kPa",
    }
}

fn unit_in_pascals(units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Us => Pressure::new::<pound_per_square_foot>(1.0).value,
        UnitSystem::Si => Pressure::new::<kilopascal>(1.0).value,
    }
}

impl Panel {
    pub(super) fn draw(&self, sheet: &mut Sheet, room: &Room) {
        let face = room.to - PLANKS;
        let pressures = Scale::between((0.0, room.greatest), (face, room.from + 4.0));
        Self::planks(sheet, room, face);
        let line = outline(&self.profile);
        let mut points: Vec<_> = line
            .iter()
            .map(|(height, pressure)| (pressures.at(*pressure), room.heights.at(*height)))
            .collect();
        if let (Some(first), Some(last)) = (line.first(), line.last()) {
            points.push((face, room.heights.at(last.0)));
            points.push((face, room.heights.at(first.0)));
        }
        sheet.hatched(self.hatch, &points);
        self.resultant(sheet, room, face);
        axis(sheet, room, pressures);
        self.caption(sheet, room);
    }

    fn planks(sheet: &mut Sheet, room: &Room, face: f64) {
        let (sill, top) = (
            room.heights.at(0.0),
            room.heights.at(room.stack.height.value),
        );
        sheet.rectangle("plank", (face, top), (PLANKS, sill - top));
        let rise = (sill - top) / f64::from(room.stack.count);
        if rise < 2.0 {
            return;
        }
        for below in 1..room.stack.count {
            let at = sill - rise * f64::from(below);
            sheet.line("joint", (face, at), (face + PLANKS, at));
        }
    }

    fn resultant(&self, sheet: &mut Sheet, room: &Room, face: f64) {
        let at = room.heights.at(self.profile.resultant().height.value);
        let shaft = (room.from + 2.0, face - 8.0);
        sheet.line("force-rim", (shaft.0, at), (shaft.1, at));
        sheet.line("force", (shaft.0, at), (shaft.1, at));
        let head = [
            (face - 1.0, at),
            (face - 11.0, at - 5.0),
            (face - 11.0, at + 5.0),
        ];
        sheet.polygon("force-head", &head);
    }

    /// Name, force, where it acts, and the greatest pressure.
    fn caption(&self, sheet: &mut Sheet, room: &Room) {
        let (units, middle) = (room.units, f64::midpoint(room.from, room.to));
        let resultant = self.profile.resultant();
        let lines = [
            self.name.clone(),
            units.line_load(resultant.force),
            format!("at {}", units.height(resultant.height)),
            format!("to {}", units.pressure(self.profile.greatest().0)),
        ];
        let bottom = room.heights.at(0.0);
        let mut y = bottom + 40.0;
        for (number, line) in lines.iter().enumerate() {
            let (look, size) = if number == 0 {
                ("small strong", 12.0 * BOLD)
            } else {
                ("small", 12.0)
            };
            let line = fitted(line, size, room.to - room.from + 4.0);
            sheet.text(look, (middle, y), Anchor::Middle, &line);
            y += 16.0;
        }
    }
}

/// Pressures from the face outward: nothing, and one round figure.
fn axis(sheet: &mut Sheet, room: &Room, pressures: Scale) {
    let unit = unit_in_pascals(room.units);
    let step = at_most(room.greatest / unit);
    let digits = decimals(step);
    let bottom = room.heights.at(0.0);
    for (number, label) in [(0.0, "0".to_owned()), (step, format!("{step:.digits$}"))] {
        let x = pressures.at(number * unit);
        sheet.line("axis", (x, bottom), (x, bottom + 5.0));
        sheet.text("small", (x, bottom + 17.0), Anchor::Middle, &label);
    }
}
