//! What is known of a place.

use crate::assess::{Assessment, GroundAnswer, Place};
use crate::report::outline::Table;
use crate::verdict::MapStatement;

/// What is known of a place, each line set in by `set_in`.
pub(in crate::report) fn place_table(
    place: &Place<'_>,
    assessment: &Assessment<'_>,
    set_in: &str,
) -> Table {
    let units = assessment.method.units;
    let mut table = Table::default();
    let zone = match &place.zone {
        Some(here) => (here.worst.title().to_string(), here.worst.standing()),
        None => (
            "not known".to_owned(),
            if place.zones_given {
                "no polygon holds the place"
            } else {
                "no flood zones were given"
            }
            .to_owned(),
        ),
    };
    table.add_row(vec![format!("{set_in}Flood zone"), zone.0, zone.1]);
    let level = match &place.flood_level {
        Some(level) => {
            let sd = level
                .decided
                .sd
                .map(|sd| format!(" ± {}", units.height(sd * 2.0)));
            (
                format!(
                    "{}{}",
                    units.elevation(level.decided.elevation),
                    sd.unwrap_or_default()
                ),
                format!(
                    "{} annual chance, {}",
                    level.decided.chance,
                    level.decided.source.title()
                ),
            )
        }
        None => match &place.statement {
            MapStatement::NoFlood(_) => (
                "none".to_owned(),
                "the map has no such flood here".to_owned(),
            ),
            _ => ("not known".to_owned(), "no source has a level".to_owned()),
        },
    };
    table.add_row(vec![format!("{set_in}Flood level"), level.0, level.1]);
    if let Some(design) = &place.design_level {
        let base = design.governing.to_string();
        table.add_row(vec![
            format!("{set_in}Design level"),
            units.elevation(design.elevation),
            format!(
                "{base} + {}, rule {}",
                units.height(design.added),
                assessment.method.rule.id
            ),
        ]);
    }
    let ground = match &place.ground {
        GroundAnswer::Known(ground) => {
            (units.elevation(ground.elevation), ground.source.to_string())
        }
        GroundAnswer::Gap(gap) => ("not known".to_owned(), gap.to_string()),
        GroundAnswer::NotAsked => (
            "not known".to_owned(),
            "no terrain model was given".to_owned(),
        ),
    };
    table.add_row(vec![format!("{set_in}Ground"), ground.0, ground.1]);
    table
}
