//! The building: outline, site, section line, openings that stand elsewhere.

use geo::Coord;

use super::{LABEL, Map, lines};
use crate::report::drawing::clear::{Area, Clearing};
use crate::report::drawing::lettering::width;
use crate::report::drawing::sheet::{Anchor, Point, Sheet};
use crate::surroundings::{OpeningPlace, Surroundings};

/// How far from an opening its number may stand, pixels.
const RINGS: [f64; 6] = [0.0, 20.0, 34.0, 50.0, 70.0, 95.0];
/// Places on each ring.
const AROUND: i32 = 16;

pub(super) fn draw(
    sheet: &mut Sheet,
    map: Map,
    surroundings: &Surroundings,
    clearing: &mut Clearing,
) {
    if !surroundings.outline.is_empty() {
        sheet.polygon("outline", &map.points(&surroundings.outline));
    }
    let site = map.at(Coord { x: 0.0, y: 0.0 });
    clearing.keep(Area::about(site, 18.0, 18.0));
    if let Some(section) = &surroundings.section {
        lines::section(sheet, map, section, clearing);
    }
    sheet.group("site", |sheet| mark(sheet, site));
    let numbers: Vec<Number> = (surroundings.openings.iter())
        .filter_map(|opening| Number::of(map, opening, clearing))
        .collect();
    for number in &numbers {
        number.point_out(sheet);
    }
    for number in &numbers {
        if let Some(at) = number.at {
            plate(sheet, at, &number.text, number.size);
        }
    }
}

/// The mark of the site, as in the legend.
pub(super) fn mark(sheet: &mut Sheet, at: Point) {
    let (x, y) = at;
    sheet.circle("plate", at, 6.5);
    sheet.line("measure", (x - 6.5, y), (x + 6.5, y));
    sheet.line("measure", (x, y - 6.5), (x, y + 6.5));
    sheet.circle("mark", at, 3.0);
}

/// The number of an opening.
struct Number {
    text: String,
    size: (f64, f64),
    /// Where the opening is.
    place: Point,
    /// Where its number stands; `None` where there was no room.
    at: Option<Point>,
}

impl Number {
    /// The number as near to its opening as there is room; `None` beyond the map.
    fn of(map: Map, opening: &OpeningPlace, clearing: &mut Clearing) -> Option<Self> {
        let place = map.at(opening.at);
        let side = super::INSET..=super::INSET + super::MAP;
        if !(side.contains(&place.0) && side.contains(&place.1)) {
            return None;
        }
        let text = (opening.number + 1).to_string();
        let extent = plate_size(&text);
        let places = RINGS.iter().flat_map(|ring| {
            (0..AROUND).map(move |step| {
                let angle = f64::from(step) / f64::from(AROUND) * std::f64::consts::TAU;
                (place.0 + ring * angle.sin(), place.1 - ring * angle.cos())
            })
        });
        Some(Self {
            at: clearing.take(places, extent),
            text,
            size: extent,
            place,
        })
    }

    /// A dot at the opening, and a stroke from it to its number where that stands beside it.
    fn point_out(&self, sheet: &mut Sheet) {
        let Some(at) = self.at else {
            sheet.circle("dot", self.place, 2.0);
            return;
        };
        if at != self.place {
            sheet.line("leader", self.place, at);
            sheet.circle("dot", self.place, 2.0);
        }
    }
}

/// The size of the plate of a number.
pub(super) fn plate_size(text: &str) -> (f64, f64) {
    (width(text, LABEL).max(8.0) + 6.0, 16.0)
}

/// A number on its plate, as in the legend.
pub(super) fn plate(sheet: &mut Sheet, at: Point, text: &str, size: (f64, f64)) {
    let corner = (at.0 - size.0 / 2.0, at.1 - size.1 / 2.0);
    sheet.rectangle("plate", corner, size);
    sheet.text("small", (at.0, at.1 + 4.2), Anchor::Middle, text);
}
