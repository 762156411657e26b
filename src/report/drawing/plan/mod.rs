//! The plan: what lies around the site.

mod building;
mod ground;
mod legend;
mod lines;
mod notes;
mod relief;
#[cfg(test)]
mod tests;
mod zones;

use geo::Coord;

use self::legend::Legend;
use super::clear::{Area, Clearing};
use super::sheet::{Anchor, Point, Sheet};
use crate::assess::Assessment;
use crate::quantity::unit::meter;
use crate::surroundings::Surroundings;

pub(in crate::report) use notes::notes;

/// Width of the sheet, pixels.
const WIDTH: f64 = 640.0;
/// Where the map begins, from the left and from the top, pixels.
const INSET: f64 = 6.0;
/// The side of the map.
const MAP: f64 = 420.0;
/// Where the legend begins.
const LEGEND: f64 = INSET + MAP + 20.0;
/// Font of labels within the map.
const LABEL: f64 = 12.0;

/// Draws the surroundings of a site.
pub(in crate::report) fn plan(
    id: &str,
    assessment: &Assessment<'_>,
    surroundings: &Surroundings,
) -> String {
    let units = assessment.method.units;
    let legend = Legend::of(assessment, surroundings);
    let height = legend.height().max(INSET + MAP + 34.0);
    let title = format!("Plan of what lies around {}", assessment.site.name);
    let description = notes::description(assessment, surroundings);
    let mut sheet = Sheet::new(id, (WIDTH, height), &title, &description);
    let map = Map::of(surroundings);
    let mut clearing = Clearing::new(frame());
    for texture in legend.textures() {
        sheet.provide_texture(texture);
    }
    sheet.rectangle("sheet", (INSET, INSET), (MAP, MAP));
    sheet.clipped("map", (INSET, INSET), (MAP, MAP), |sheet| {
        ground::draw(sheet, surroundings);
        zones::draw(sheet, map, surroundings);
        lines::draw(sheet, map, surroundings);
        building::draw(sheet, map, surroundings, &mut clearing);
        lines::label(sheet, map, assessment, surroundings, &mut clearing);
        zones::label(sheet, map, surroundings, &mut clearing);
    });
    sheet.rectangle("rim", (INSET, INSET), (MAP, MAP));
    sheet.scale_bar(
        (INSET, INSET + MAP + 20.0),
        150.0,
        map.metres_a_pixel(),
        units,
    );
    north(&mut sheet);
    legend.draw(&mut sheet);
    sheet.finish()
}

/// North is up: an arrow at the lower right of the map, on its rim.
fn north(sheet: &mut Sheet) {
    let (x, foot) = (INSET + MAP - 10.0, INSET + MAP + 24.0);
    sheet.group("north", |sheet| {
        let top = foot - 18.0;
        sheet.polygon("bar-full", &[(x, top), (x - 5.0, foot), (x, foot - 4.0)]);
        sheet.polygon("bar-open", &[(x, top), (x + 5.0, foot), (x, foot - 4.0)]);
        sheet.text("small", (x - 10.0, foot), Anchor::End, "north is up");
    });
}

/// Where metres about the site lie on the sheet.
#[derive(Clone, Copy)]
struct Map {
    reach: f64,
}

impl Map {
    fn of(surroundings: &Surroundings) -> Self {
        Self {
            reach: surroundings.reach.get::<meter>(),
        }
    }

    fn metres_a_pixel(self) -> f64 {
        2.0 * self.reach / MAP
    }

    fn at(self, place: Coord<f64>) -> Point {
        let pixels = |metres: f64| INSET + (metres + self.reach) / self.metres_a_pixel();
        (pixels(place.x), pixels(-place.y))
    }

    fn points<'points>(self, places: impl IntoIterator<Item = &'points Coord<f64>>) -> Vec<Point> {
        places.into_iter().map(|place| self.at(*place)).collect()
    }
}

/// The room for labels.
fn frame() -> Area {
    let middle = INSET + MAP / 2.0;
    Area::about((middle, middle), MAP - 4.0, MAP - 4.0)
}
