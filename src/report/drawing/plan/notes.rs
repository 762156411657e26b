//! What a plan and a section cannot draw: where things come from, what is missing, how it was
//! chosen.

use super::{relief, zones};
use crate::assess::Assessment;
use crate::hazard::{LayerContent, LineKind};
use crate::quantity::UnitSystem;
use crate::quantity::unit::foot;
use crate::statement::printable;
use crate::surroundings::{DatumShift, LineShape, LineUse, MapOrigin, RasterUsed, Surroundings};

/// Sentences for the text beside plan and section, in order: terrain, zones, lines with their
/// sources and dates, then what lies outside the plan and how the section was laid.
pub(in crate::report) fn notes(
    assessment: &Assessment<'_>,
    surroundings: &Surroundings,
) -> Vec<String> {
    let units = assessment.method.units;
    let mut notes = Vec::new();
    if surroundings.rasters.is_empty() {
        notes.push("Terrain: none was given.".to_owned());
    }
    let rasters = surroundings.rasters.iter();
    notes.extend(rasters.map(|raster| terrain(raster, surroundings, units)));
    if let Some(grid) = &surroundings.ground {
        if let Some((_, raised)) = relief::picture(grid) {
            notes.push(light(raised));
        }
    } else if !surroundings.rasters.is_empty() {
        notes.push("The terrain has no height within the plan.".to_owned());
    }
    if !surroundings.zones_were_given() {
        notes.push("Zones: none were given.".to_owned());
    }
    notes.extend(
        surroundings
            .origins
            .iter()
            .enumerate()
            .map(|(number, origin)| layer(number, origin, surroundings)),
    );
    notes.extend(
        surroundings
            .lines
            .iter()
            .filter_map(|line| outside(line, units)),
    );
    if let Some(section) = &surroundings.section {
        notes.push(format!(
            "Section A–A′ runs towards {:.0}° ({}): of 36 bearings the one on which the ground within the plan falls to its lowest in the shortest way.",
            section.bearing,
            wind(section.bearing)
        ));
        match surroundings.openings.len() {
            0 => {}
            1 => notes.push("One opening stands elsewhere and is not in the section.".to_owned()),
            more => notes.push(format!(
                "{more} openings stand elsewhere and are not in the section."
            )),
        }
    }
    notes
}

/// The drawing in words, for those who do not see it.
pub(super) fn description(assessment: &Assessment<'_>, surroundings: &Surroundings) -> String {
    let units = assessment.method.units;
    let side = units.distance(surroundings.reach * 2.0);
    let mut parts = vec![format!(
        "A square of {side} with the site in its middle, north is up."
    )];
    match &surroundings.ground {
        Some(_) => parts.push("The ground is shaded.".to_owned()),
        None => parts.push("There is no terrain.".to_owned()),
    }
    match &assessment.place.zone {
        Some(here) => parts.push(format!(
            "The site lies in zone {}, {}.",
            here.worst.title(),
            zones::meaning(here.worst.class)
        )),
        None => parts.push("No zone is known to hold the site.".to_owned()),
    }
    let mut codes: Vec<&str> = surroundings.zones.iter().map(zones::name).collect();
    codes.sort_unstable();
    codes.dedup();
    if !codes.is_empty() {
        parts.push(format!("Zones within the square: {}.", codes.join(", ")));
    }
    let used = surroundings
        .lines
        .iter()
        .filter(|line| line.used != LineUse::None);
    for line in used {
        parts.push(format!("A line: {}", told(line, units)));
    }
    parts.join(" ")
}

fn terrain(raster: &RasterUsed, surroundings: &Surroundings, units: UnitSystem) -> String {
    let cell = match units {
        UnitSystem::Us => format!("{:.1} ft", raster.cell.get::<foot>()),
        UnitSystem::Si => units.distance(raster.cell),
    };
    let datum = match &raster.shift {
        DatumShift::None => format!("heights on {}", raster.datum),
        DatumShift::By(shift, how) => format!(
            "heights on {}, shown on {} by a shift of {} at the site ({how})",
            raster.datum,
            surroundings.datum,
            units.height(*shift)
        ),
        DatumShift::Refused(why) => format!(
            "heights on {}, left out because they cannot be put on {}: {why}",
            raster.datum, surroundings.datum
        ),
    };
    format!(
        "Terrain: {}, cells of {cell}, stored in {}, {datum}; {}.",
        raster.file,
        raster.unit,
        dated(raster.dated.as_deref())
    )
}

fn layer(number: usize, origin: &MapOrigin, surroundings: &Surroundings) -> String {
    let what = match origin.content {
        LayerContent::Zones => "Zones",
        LayerContent::Lines(LineKind::CrossSections) => "Cross-sections",
        LayerContent::Lines(LineKind::LevelLines) => "Flood-level lines",
    };
    let layer = &origin.origin.layer;
    let own: Vec<String> = if origin.content == LayerContent::Zones {
        let zones = surroundings.zones.iter();
        zones
            .filter(|zone| zone.holds && zone.origin == number)
            .map(|zone| {
                let date = match &zone.date {
                    Some(date) => format!(", in force from {date}"),
                    None => String::new(),
                };
                format!("{} (feature {}{date})", zone.title, zone.feature)
            })
            .collect()
    } else {
        Vec::new()
    };
    let own = if own.is_empty() {
        String::new()
    } else {
        format!("; at the building: {}", own.join(", "))
    };
    let text = format!(
        "{what}: {}, layer {layer}; {}{own}.",
        origin.origin.title(),
        dated(origin.origin.dated.as_deref())
    );
    printable(&text)
}

fn light(raised: f64) -> String {
    let heights = if raised > 1.0 {
        format!("raised {raised} times")
    } else {
        "as they are".to_owned()
    };
    format!("The shading is light from the north-west at 45°, with heights {heights}.")
}

fn dated(stated: Option<&str>) -> String {
    stated.map_or_else(
        || "no date stated".to_owned(),
        |stated| format!("{stated}, by the file itself"),
    )
}

/// A line that a level was read from and that the plan does not reach.
fn outside(line: &LineShape, units: UnitSystem) -> Option<String> {
    let is_outside = line.used != LineUse::None && line.shape.0.is_empty();
    is_outside.then(|| format!("Outside the plan: {}", told(line, units)))
}

fn told(line: &LineShape, units: UnitSystem) -> String {
    let level = line
        .level
        .map_or_else(|| "no level".to_owned(), |level| units.elevation(level));
    let used = match line.used {
        LineUse::Decides => "the flood level was read from it",
        LineUse::Compared => "a level was read from it for comparison",
        LineUse::None => "not used",
    };
    format!(
        "{}, {level}, {} from the site towards {:.0}° ({}); {used}.",
        line.title,
        units.distance(line.distance),
        line.bearing,
        wind(line.bearing)
    )
}

/// The nearest of eight winds.
fn wind(bearing: f64) -> &'static str {
    const WINDS: [&str; 8] = [
        "north",
        "north-east",
        "east",
        "south-east",
        "south",
        "south-west",
        "west",
        "north-west",
    ];
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 8
    let number = (bearing.rem_euclid(360.0) / 45.0).round() as usize;
    WINDS.get(number % 8).copied().unwrap_or("north")
}

#[cfg(test)]
mod tests {
    use super::{light, wind};

    #[test]
    fn heights_that_are_not_raised_are_not_told_as_raised() {
        assert!(light(1.0).ends_with("with heights as they are."));
        assert!(light(7.0).ends_with("with heights raised 7 times."));
    }

    #[test]
    fn a_bearing_has_the_nearest_wind() {
        let winds = [0.0, 22.4, 22.6, 180.0, 350.0].map(wind);
        assert_eq!(winds, ["north", "north", "north-east", "south", "north"]);
    }
}
