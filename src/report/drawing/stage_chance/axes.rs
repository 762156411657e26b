//! Chance across, elevation up.

use super::heights::Height;
use super::{LEFT, RIGHT, TOP};
use crate::assess::percent;
use crate::quantity::unit::{Length, foot, meter};
use crate::quantity::{AnnualChance, UnitSystem};
use crate::report::drawing::beside::Seat;
use crate::report::drawing::lettering::width;
use crate::report::drawing::scale::Scale;
use crate::report::drawing::sheet::{Anchor, Sheet};
use crate::risk::{StageChance, chance_over_years, deviate};

/// Chances that ticks stand at, in percent, where no known flood is near.
const ROUND: [f64; 12] = [
    90.0, 80.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1, 0.01,
];

#[derive(Clone, Copy, Debug)]
pub(super) struct Axes {
    /// Standard normal deviates to pixels.
    chances: Scale,
    /// Metres to pixels.
    elevations: Scale,
    low: f64,
    high: f64,
    bottom: f64,
}

impl Axes {
    pub(super) fn of(stages: &StageChance, heights: &[Height], bottom: f64) -> Self {
        let levels = stages.levels();
        let across = levels
            .iter()
            .map(|level| deviate(level.chance.probability()));
        let (first, last) = ends(across);
        let (mut low, mut high) = ends(levels.iter().flat_map(|level| {
            let at = level.elevation.height().value;
            let band = level.sd.map_or(0.0, |sd| 2.0 * sd.value);
            [at - band, at + band]
        }));
        // Heights far from every flood are named, not drawn.
        let reach = (high - low).max(0.3);
        let (lowest, highest) = (low - 0.8 * reach, high + 0.8 * reach);
        for height in heights {
            let at = height.elevation.height().value;
            if (lowest..=highest).contains(&at) {
                (low, high) = (low.min(at), high.max(at));
            }
        }
        let edge = 0.05 * (high - low).max(0.1);
        (low, high) = (low - edge, high + edge);
        Self {
            chances: Scale::between((first, last), (LEFT + 24.0, RIGHT - 24.0)),
            elevations: Scale::between((low, high), (bottom, TOP)),
            low,
            high,
            bottom,
        }
    }

    pub(super) fn across(&self, chance: AnnualChance) -> f64 {
        self.chances.at(deviate(chance.probability()))
    }

    pub(super) fn up(&self, metres: f64) -> f64 {
        self.elevations.at(metres)
    }

    /// Where a height lies, or that it is not drawn.
    pub(super) fn seat(&self, metres: f64) -> Seat {
        if metres > self.high {
            Seat::Above
        } else if metres < self.low {
            Seat::Below
        } else {
            Seat::At(self.up(metres))
        }
    }

    pub(super) fn draw(
        &self,
        sheet: &mut Sheet,
        stages: &StageChance,
        units: UnitSystem,
        years: u32,
    ) {
        self.draw_chances(sheet, stages, years);
        self.draw_elevations(sheet, stages, units);
        let size = (RIGHT - LEFT, self.bottom - TOP);
        sheet.rectangle("rim", (LEFT, TOP), size);
    }

    /// Annual chances below, and above what they come to over some years.
    fn draw_chances(&self, sheet: &mut Sheet, stages: &StageChance, years: u32) {
        for (x, chance) in self.ticks(stages) {
            sheet.line("grid", (x, TOP), (x, self.bottom));
            let annual = label(chance);
            sheet.text("small", (x, self.bottom + 16.0), Anchor::Middle, &annual);
            let over = percent(chance_over_years(chance, years));
            sheet.text("small", (x, TOP - 6.0), Anchor::Middle, &over);
        }
        let middle = f64::midpoint(LEFT, RIGHT);
        let noun = if years == 1 { "year" } else { "years" };
        let over = format!("chance of at least one such flood in {years} {noun}");
        sheet.text("small soft", (middle, TOP - 24.0), Anchor::Middle, &over);
        let below = self.bottom + 33.0;
        let annual = "chance that water reaches it in any one year";
        sheet.text("small soft", (middle, below), Anchor::Middle, annual);
    }

    /// Known floods and round chances between them, as far as there is room.
    fn ticks(&self, stages: &StageChance) -> Vec<(f64, AnnualChance)> {
        let levels = stages.levels();
        let known = levels.iter().map(|level| level.chance);
        let (Some(first), Some(last)) = (levels.first(), levels.last()) else {
            return Vec::new();
        };
        // The outermost floods first: they say how far the curve is known.
        let round = ROUND
            .iter()
            .filter_map(|each| AnnualChance::new(each / 100.0));
        let within = round.filter(|chance| *chance < first.chance && *chance > last.chance);
        let mut found: Vec<(f64, AnnualChance)> = Vec::new();
        for chance in [first.chance, last.chance]
            .into_iter()
            .chain(known)
            .chain(within)
        {
            let x = self.across(chance);
            let half = width("100.0 %", 12.0) / 2.0 + 3.0;
            if found
                .iter()
                .all(|(other, _)| (other - x).abs() > 2.0 * half)
            {
                found.push((x, chance));
            }
        }
        found
    }

    fn draw_elevations(&self, sheet: &mut Sheet, stages: &StageChance, units: UnitSystem) {
        let (unit, name) = match units {
            UnitSystem::Us => (Length::new::<foot>(1.0).value, "ft"),
            UnitSystem::Si => (Length::new::<meter>(1.0).value, "m"),
        };
        let range = (self.low / unit, self.high / unit);
        let printed = Scale::between(range, (self.bottom, TOP));
        for (number, label) in printed.ticks(range, 30.0) {
            let at = printed.at(number);
            sheet.line("grid", (LEFT, at), (RIGHT, at));
            sheet.text("small", (LEFT - 6.0, at + 4.0), Anchor::End, &label);
        }
        let datum = stages.levels().first().map(|level| level.elevation.datum());
        let datum = datum.map(|datum| datum.to_string()).unwrap_or_default();
        let middle = f64::midpoint(TOP, self.bottom);
        let name = format!("elevation, {name} {datum}");
        sheet.text_upward("small soft", (16.0, middle), Anchor::Middle, &name);
    }
}

/// A chance that fits below its tick.
fn label(chance: AnnualChance) -> String {
    let exact = chance.to_string();
    if exact.chars().count() <= 7 {
        return exact;
    }
    let rough = percent(chance.probability());
    if rough.chars().count() <= 7 {
        rough
    } else {
        "< 0.1 %".to_owned()
    }
}

/// The least and the greatest of some numbers.
fn ends(numbers: impl Iterator<Item = f64>) -> (f64, f64) {
    numbers.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), number| {
        (low.min(number), high.max(number))
    })
}
