//! Heights that water may reach: the design level, sills and tops of barriers.

use super::axes::Axes;
use super::{LEFT, RIGHT, over_years};
use crate::assess::{OpeningAssessment, Place, YearlyChance, percent};
use crate::quantity::{Elevation, UnitSystem};
use crate::report::drawing::beside::{Label, Seat};
use crate::report::drawing::sheet::Sheet;
use crate::risk::ChanceAtLevel;

/// More labels than this do not stand beside a curve.
const MOST_LABELS: usize = 9;

#[derive(Clone, Debug)]
pub(super) struct Height {
    kind: Kind,
    /// Of openings that lie level.
    openings: Vec<String>,
    pub(super) elevation: Elevation,
    pub(super) chance: Option<YearlyChance>,
    pub(super) is_labelled: bool,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Design,
    Sill,
    Top,
}

/// The design level of a place, and sills and tops of openings there, the highest first;
/// those that lie level are one.
pub(super) fn heights<'a>(
    place: &Place<'_>,
    openings: impl IntoIterator<Item = &'a OpeningAssessment<'a>>,
    units: UnitSystem,
) -> Vec<Height> {
    let mut found: Vec<Height> = Vec::new();
    let mut add = |kind, name: &str, elevation: Elevation, chance| {
        let printed = units.elevation(elevation);
        let level = |height: &&mut Height| {
            height.kind == kind && units.elevation(height.elevation) == printed
        };
        if let Some(level) = found.iter_mut().find(level) {
            level.openings.push(name.to_owned());
        } else {
            found.push(Height {
                kind,
                openings: vec![name.to_owned()],
                elevation,
                chance,
                is_labelled: false,
            });
        }
    };
    if let Some(design) = &place.design_level {
        add(Kind::Design, "", design.elevation, None);
    }
    for opening in openings {
        let Some(sill) = opening.sill else { continue };
        let name = &opening.opening.id;
        add(Kind::Sill, name, sill, opening.water_at_sill);
        if let Some(planks) = opening.planks.filter(|planks| planks.count > 0) {
            let top = sill.raised(planks.height);
            add(Kind::Top, name, top, opening.water_at_top);
        }
    }
    label_some(&mut found);
    found.sort_by(|one, other| {
        let (one, other) = (one.elevation.height().value, other.elevation.height().value);
        other.total_cmp(&one)
    });
    found
}

/// The design level first, then the lowest sills, then the lowest tops.
fn label_some(heights: &mut [Height]) {
    let mut order: Vec<&mut Height> = heights.iter_mut().collect();
    order.sort_by(|one, other| {
        let rank = |kind| match kind {
            Kind::Design => 0,
            Kind::Sill => 1,
            Kind::Top => 2,
        };
        let by_kind = rank(one.kind).cmp(&rank(other.kind));
        let (one, other) = (one.elevation.height().value, other.elevation.height().value);
        by_kind.then(one.total_cmp(&other))
    });
    for height in order.into_iter().take(MOST_LABELS) {
        height.is_labelled = true;
    }
}

/// The labels of those that have one; where they lie is not settled yet.
pub(super) fn labels(heights: &[Height], units: UnitSystem, years: u32) -> Vec<Label> {
    let labelled = heights.iter().filter(|height| height.is_labelled);
    labelled
        .map(|height| Label {
            seat: Seat::Above,
            lines: height.label(units, years),
        })
        .collect()
}

impl Height {
    pub(super) fn name(&self) -> String {
        let openings = self.openings.join(", ");
        match self.kind {
            Kind::Design => "design level".to_owned(),
            Kind::Sill => format!("sill: {openings}"),
            Kind::Top => format!("top: {openings}"),
        }
    }

    /// Name, elevation and how often water reaches it; the datum stands at the axis.
    fn label(&self, units: UnitSystem, years: u32) -> Vec<String> {
        let mut elevation = units.height(self.elevation.height());
        let mut lines = vec![self.name()];
        let known = self.chance.map(|chance| (chance.annual, chance.over_years));
        match known {
            Some((ChanceAtLevel::Known { chance, .. }, over)) => {
                let annual = percent(chance.probability()).replace("less than ", "< ");
                elevation = format!("{elevation}, {annual} a year");
                lines.push(elevation);
                lines.extend(over.map(|over| over_years(over, years)));
            }
            Some((ChanceAtLevel::Beyond(beyond), _)) => {
                lines.extend([elevation, beyond.to_string()]);
            }
            None => lines.push(elevation),
        }
        lines
    }

    /// How often water reaches it: `2.3 % in any one year, 50.1 % in 30 years`.
    pub(super) fn in_words(&self, years: u32) -> Option<String> {
        let chance = self.chance?;
        let annual = match chance.annual {
            ChanceAtLevel::Known { chance, .. } => {
                format!("{} in any one year", percent(chance.probability()))
            }
            ChanceAtLevel::Beyond(beyond) => beyond.to_string(),
        };
        Some(match chance.over_years {
            Some(over) => format!("{annual}, {}", over_years(over, years)),
            None => annual,
        })
    }

    /// Its line across, up to where it meets the curve.
    pub(super) fn draw(&self, sheet: &mut Sheet, axes: &Axes) {
        let Seat::At(y) = axes.seat(self.elevation.height().value) else {
            return;
        };
        let look = match self.kind {
            Kind::Design => "design-level",
            Kind::Sill => "sill-level",
            Kind::Top => "top-level",
        };
        let from = if self.is_labelled { LEFT } else { RIGHT - 16.0 };
        sheet.line(look, (from, y), (RIGHT, y));
    }

    /// Where it meets the curve.
    pub(super) fn mark(&self, sheet: &mut Sheet, axes: &Axes) {
        let known = self.chance.map(|chance| chance.annual);
        let Some(ChanceAtLevel::Known { chance, .. }) = known else {
            return;
        };
        let (x, y) = (axes.across(chance), axes.up(self.elevation.height().value));
        let corners = [(x, y - 6.0), (x + 6.0, y), (x, y + 6.0), (x - 6.0, y)];
        sheet.polygon("mark", &corners);
    }
}
