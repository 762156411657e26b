//! Flood level with its band, and design level.

use super::frame::Frame;
use super::{LEFT, RIGHT};
use crate::assess::Assessment;
use crate::report::drawing::sheet::Sheet;

/// Two standard deviations to each side of the flood level.
pub(super) fn band(sheet: &mut Sheet, frame: &Frame, assessment: &Assessment<'_>) {
    let Some(level) = &assessment.place.flood_level else {
        return;
    };
    if let Some(sd) = level.decided.sd {
        let top = frame.height(level.decided.elevation.raised(sd * 2.0));
        let bottom = frame.height(level.decided.elevation.raised(sd * -2.0));
        sheet.rectangle("band", (LEFT, top), (RIGHT - LEFT, bottom - top));
    }
}

pub(super) fn lines(sheet: &mut Sheet, frame: &Frame, assessment: &Assessment<'_>) {
    let place = &assessment.place;
    let mut across = |class: &str, y: f64| sheet.line(class, (LEFT, y), (RIGHT, y));
    if let Some(level) = &place.flood_level {
        across("flood-level", frame.height(level.decided.elevation));
    }
    if let Some(level) = &place.design_level {
        across("design-level", frame.height(level.elevation));
    }
}

/// Where each level lies, and what stands beside it.
pub(super) fn labels(frame: &Frame, assessment: &Assessment<'_>) -> Vec<(f64, String)> {
    let (place, units) = (&assessment.place, assessment.method.units);
    let mut labels = Vec::new();
    if let Some(level) = &place.design_level {
        let text = format!("{} design level", units.height(level.elevation.height()));
        labels.push((frame.height(level.elevation), text));
    }
    if let Some(level) = &place.flood_level {
        let decided = &level.decided;
        let sd = decided
            .sd
            .map(|sd| format!(" ± {}", units.height(sd * 2.0)));
        let text = format!(
            "{} flood{}",
            units.height(decided.elevation.height()),
            sd.unwrap_or_default()
        );
        labels.push((frame.height(decided.elevation), text));
    }
    labels
}
