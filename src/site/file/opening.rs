//! `[[opening]]`.

use super::super::{Location, Opening};
use super::LENGTH;
use super::anchor_setting::{floor, jamb};
use super::fields::read;
use super::gap::gap;
use super::place::location;
use super::sill::sill;
use crate::quantity::{Elevation, Length, UnitSystem, parse_length, unit::meter};
use crate::statement::{Stated, StatementError, Table};

pub(super) fn openings(
    root: &Table<'_, '_>,
    threshold: Elevation,
    building: Location,
) -> Result<Vec<Opening>, StatementError> {
    let mut openings: Vec<Opening> = Vec::new();
    for table in root.tables("opening")? {
        let opening = opening(&table, threshold, building)?;
        if openings.iter().any(|other| other.id == opening.id) {
            let id = table.required("id", "a name")?;
            return Err(id.refuse(
                "another opening has the same id",
                "a different id for each opening",
            ));
        }
        openings.push(opening);
    }
    if openings.is_empty() {
        return Err(root.missing("opening", "at least one [[opening]] with id and width"));
    }
    Ok(openings)
}

/// The fields of an opening.
const FIELDS: [&str; 17] = [
    "id",
    "kind",
    "width",
    "height",
    "run",
    "sill",
    "sill_above_threshold",
    "reveal",
    "face",
    "mount",
    "brace",
    "soil",
    "gap",
    "floor",
    "jamb",
    "wall",
    "location",
];

fn opening(
    table: &Table<'_, '_>,
    threshold: Elevation,
    building: Location,
) -> Result<Opening, StatementError> {
    table.allow(&FIELDS)?;
    let (sill, sill_place) = sill(table, threshold)?;
    let run = run(table)?;
    let along_run: Length = run.iter().copied().sum();
    let width = match (table.optional("width")?, run.is_empty()) {
        (None, false) => along_run,
        (_, _) => width(&table.required("width", LENGTH)?)?,
    };
    Ok(Opening {
        id: table
            .required("id", "a name, such as \"front door\"")?
            .name()?,
        kind: table.choice("kind")?,
        width: Some(width),
        height: table
            .optional("height")?
            .map(|stated| clear_height(&stated))
            .transpose()?,
        gap: gap(table, if run.is_empty() { width } else { along_run })?,
        run,
        sill,
        sill_place,
        reveal: read(table, "reveal", parse_length)?,
        face: read(table, "face", parse_length)?,
        mount: table.choice("mount")?,
        brace: table.choice("brace")?,
        soil: table.choice("soil")?,
        floor: floor(table)?,
        jamb: jamb(table)?,
        wall: match table.optional("wall")? {
            Some(stated) if stated.text().trim().eq_ignore_ascii_case("unknown") => None,
            Some(stated) => Some(stated.choose()?),
            None => None,
        },
        location: location(table)?
            .map(|elsewhere| near_the_building(table, elsewhere, building))
            .transpose()?,
    })
}

/// The legs of a barrier that stands out from the wall.
fn run(table: &Table<'_, '_>) -> Result<Vec<Length>, StatementError> {
    let legs = table.values("run")?;
    let stated = table.whole("run");
    match (legs.len(), stated) {
        (1, Some(stated)) => Err(stated.refuse(
            "one leg is no run",
            "two legs or more with right angles between, such as [\"4 ft\", \"9 ft\", \"4 ft\"]; width alone for a straight barrier",
        )),
        (0, Some(stated)) => Err(stated.refuse("it has no leg", "two legs or more")),
        _ => legs.iter().map(width).collect(),
    }
}

/// The place of an opening, which has to be one of the same building: zones are read around
/// the building only, and a slip of a digit must not look like an unmapped place.
fn near_the_building(
    table: &Table<'_, '_>,
    opening: Location,
    building: Location,
) -> Result<Location, StatementError> {
    let away = building.distance_to(opening);
    if away <= Length::new::<meter>(FARTHEST_OPENING_METRES) {
        return Ok(opening);
    }
    let place = table.table("location")?.map(|inner| inner.place());
    Err(StatementError {
        place: place.unwrap_or_else(|| table.place()),
        field: "opening.location".to_owned(),
        value: Some(format!("{}, {}", opening.longitude(), opening.latitude())),
        problem: format!(
            "it lies {} from the building",
            UnitSystem::Si.distance(away)
        ),
        accepted: format!("a place within {FARTHEST_OPENING_METRES} m of the building's location"),
    })
}

/// No opening of one building lies farther from its location than this.
const FARTHEST_OPENING_METRES: f64 = 500.0;

/// The width of an opening: more than nothing, and no wider than a barrier was ever built.
pub(crate) fn width(stated: &Stated<'_>) -> Result<Length, StatementError> {
    let width = stated.read(parse_length)?;
    if width.value <= 0.0 {
        return Err(stated.refuse("an opening has a width", LENGTH));
    }
    if width.value > 100.0 {
        return Err(stated.refuse(
            "it is wider than 100 m (328 ft)",
            "the width of one opening, such as \"36 in\"",
        ));
    }
    Ok(width)
}

/// The clear height of an opening.
pub(crate) fn clear_height(stated: &Stated<'_>) -> Result<Length, StatementError> {
    let height = stated.read(parse_length)?;
    if height.value > 0.0 {
        Ok(height)
    } else {
        Err(stated.refuse("an opening has a height", LENGTH))
    }
}
