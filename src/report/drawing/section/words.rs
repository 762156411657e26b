//! What stands below a section, and the section in words.

use super::frame::Frame;
use super::ground::Shown;
use super::sills::Sills;
use super::{BOTTOM, LEFT, SIZE};
use crate::assess::Assessment;
use crate::report::drawing::lettering::width;
use crate::report::drawing::nice::decimals;
use crate::report::drawing::sheet::{Anchor, Sheet};
use crate::report::drawing::texture::Texture;

/// The size of a sample.
const SAMPLE: (f64, f64) = (20.0, 12.0);
/// The baseline of the samples' words.
const LINE: f64 = BOTTOM + 54.0;
/// From one row of them to the next.
const ROW_BELOW: f64 = 18.0;

/// Samples of what is filled, and how much heights are raised.
pub(super) fn below(sheet: &mut Sheet, frame: &Frame, shown: Shown, zones_given: bool) {
    let low_ground = if zones_given {
        "below the flood level, in no flooded zone"
    } else {
        "below the flood level, zones not given"
    };
    let samples = [
        (true, None, "ground", "ground"),
        (
            shown.water,
            None,
            "water",
            "below the flood level, in a flooded zone",
        ),
        (
            shown.low_ground,
            Some(Texture::Dots),
            "wet-texture",
            low_ground,
        ),
        (
            shown.voids,
            Some(Texture::Void),
            "wet-texture",
            "no height known",
        ),
    ];
    let (mut x, mut line) = (LEFT, LINE);
    for (_, texture, class, text) in samples.into_iter().filter(|(is_there, ..)| *is_there) {
        let wide = SAMPLE.0 + 6.0 + width(text, 12.0);
        if x + wide > SIZE.0 {
            (x, line) = (LEFT, line + ROW_BELOW);
        }
        let (right, top, bottom) = (x + SAMPLE.0, line - SAMPLE.1 + 2.0, line + 2.0);
        let area = [(x, top), (right, top), (right, bottom), (x, bottom)];
        match texture {
            Some(texture) => sheet.textured(class, texture, &[(&area, true)]),
            None => sheet.polygon(class, &area),
        }
        sheet.polygon("rim", &area);
        sheet.text("small", (right + 6.0, line), Anchor::Start, text);
        x += wide + 10.0;
    }
    let cut = if frame.is_cut {
        "; ground beyond the frame is cut off"
    } else {
        ""
    };
    let text = format!(
        "Heights are drawn {} times as large as distances{cut}.",
        times(frame.raised)
    );
    sheet.text("small", (LEFT, line + ROW_BELOW), Anchor::Start, &text);
}

/// The section for those who do not see it.
pub(super) fn description(assessment: &Assessment<'_>, frame: &Frame, sills: &Sills) -> String {
    let (place, units) = (&assessment.place, assessment.method.units);
    let mut parts = vec![format!(
        "Ground heights in {} along a line through the site, drawn {} times as large as distances.",
        frame.height_unit,
        times(frame.raised)
    )];
    parts.push(match place.ground.elevation() {
        Some(ground) => format!("Ground at the site: {}.", units.elevation(ground)),
        None => "The ground at the site is not known.".to_owned(),
    });
    let ends = (sills.elevations().next(), sills.elevations().last());
    if let (Some(lowest), Some(highest)) = ends {
        parts.push(format!(
            "Sills from {} to {}.",
            units.elevation(lowest),
            units.elevation(highest)
        ));
    }
    parts.push(match &place.flood_level {
        Some(level) => format!("Flood level: {}.", units.elevation(level.decided.elevation)),
        None => "The flood level is not known.".to_owned(),
    });
    if let Some(level) = &place.design_level {
        parts.push(format!(
            "Design level: {}.",
            units.elevation(level.elevation)
        ));
    }
    parts.join(" ")
}

fn times(raised: f64) -> String {
    format!("{raised:.*}", decimals(raised.min(1.0)))
}
