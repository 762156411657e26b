//! The known floods and the line between them.

use super::axes::Axes;
use crate::report::drawing::sheet::{Point, Sheet};
use crate::risk::StageChance;

/// On this axis the line is straight between neighbours.
pub(super) fn draw(sheet: &mut Sheet, stages: &StageChance, axes: &Axes) {
    let levels = stages.levels();
    let points: Vec<Point> = levels
        .iter()
        .map(|level| {
            let at = level.elevation.height().value;
            (axes.across(level.chance), axes.up(at))
        })
        .collect();
    for (level, (x, _)) in levels.iter().zip(&points) {
        if let Some(sd) = level.sd {
            let at = level.elevation.height().value;
            let (low, high) = (at - 2.0 * sd.value, at + 2.0 * sd.value);
            sheet.line("whisker", (*x, axes.up(low)), (*x, axes.up(high)));
            for end in [low, high] {
                let y = axes.up(end);
                sheet.line("whisker", (x - 4.0, y), (x + 4.0, y));
            }
        }
    }
    sheet.polyline("curve", &points);
    for point in points {
        sheet.circle("flood", point, 4.5);
    }
}
