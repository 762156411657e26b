//! The site file.

use super::{
    Footprint, Location, Opening, RuleChoice, Sill, Site, StatedOffset, StatedUncertainty,
    SurveyedGrade, WaterConditions,
};
use crate::design::{Rule, StatedLevel};
use crate::quantity::{
    Elevation, Length, UnitSystem, VerticalDatum, parse_duration, parse_elevation, parse_length,
    parse_signed_length, parse_velocity, unit::meter,
};
use crate::statement::{Document, Place, Stated, StatementError, Table};

const ELEVATION: &str = "a height with its unit and vertical datum, such as \"8.1 ft NAVD88\"";
const LENGTH: &str = "a length with its unit, such as \"36 in\"";
const LOCATION: &str = "{ longitude = -74.0335, latitude = 40.7400 }, in degrees";

impl Site {
    /// Reads a site file; `file` is the name that messages use.
    ///
    /// # Errors
    /// [`StatementError`] naming file, line, field, value and what would be accepted.
    ///
    /// ```
    /// use sillmark::site::Site;
    /// let site = Site::from_toml("lock.toml", r#"
    /// name = "Lock Cottage"
    /// location = { longitude = -74.0335, latitude = 40.7400 }
    /// threshold = "8.1 ft NAVD88"
    /// [[opening]]
    /// id = "front door"
    /// width = "36 in"
    /// "#)?;
    /// assert_eq!(site.openings[0].id, "front door");
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn from_toml(file: &str, text: &str) -> Result<Self, StatementError> {
        let document = Document::parse(file, text)?;
        let root = document.root();
        root.allow(&[
            "name",
            "location",
            "threshold",
            "occupancy",
            "building",
            "lowest_adjacent_grade",
            "highest_adjacent_grade",
            "rule",
            "uncertainty",
            "water",
            "flood_level",
            "datum_offset",
            "opening",
        ])?;
        let threshold = root.required("threshold", ELEVATION)?;
        let threshold_place = threshold.place().clone();
        let units = UnitSystem::of_text(threshold.text());
        let threshold = threshold_elevation(&threshold)?;
        let building = location(&root)?.ok_or_else(|| root.missing("location", LOCATION))?;
        Ok(Self {
            name: root.required("name", "a name for the building")?.name()?,
            location: building,
            threshold,
            units,
            threshold_place,
            occupancy: root
                .optional("occupancy")?
                .map(|stated| stated.choose())
                .transpose()?,
            footprint: footprint(&root, building)?,
            grade: grade(&root, threshold.datum())?,
            water: water(&root)?,
            flood_levels: flood_levels(&root)?,
            datum_offsets: StatedOffset::read_all(&root)?,
            uncertainty: root
                .table("uncertainty")?
                .map(|table| StatedUncertainty::read(&table))
                .transpose()?
                .unwrap_or_default(),
            rule: rule(&root)?,
            openings: openings(&root, threshold, building)?,
        })
    }
}

fn location(table: &Table<'_, '_>) -> Result<Option<Location>, StatementError> {
    let inner = table.table("location").map_err(|error| StatementError {
        accepted: LOCATION.to_owned(),
        ..error
    })?;
    let Some(inner) = inner else {
        return Ok(None);
    };
    inner.allow(&["longitude", "latitude"])?;
    let longitude = inner.required("longitude", "degrees east, such as -74.0335")?;
    let latitude = inner.required("latitude", "degrees north, such as 40.7400")?;
    let degrees = |stated: &Stated<'_>, least: f64, greatest: f64| {
        stated
            .text()
            .trim()
            .parse::<f64>()
            .ok()
            .filter(|degrees| (least..=greatest).contains(degrees))
            .ok_or_else(|| {
                stated.refuse(
                    "it is not a number of degrees in range",
                    format!("a number from {least} to {greatest}"),
                )
            })
    };
    let east = degrees(&longitude, -180.0, 180.0)?;
    let north = degrees(&latitude, -90.0, 90.0)?;
    Location::from_degrees(east, north)
        .map(Some)
        .map_err(|error| longitude.refuse(error.to_string(), LOCATION))
}

fn footprint(
    root: &Table<'_, '_>,
    location: Location,
) -> Result<Option<Footprint>, StatementError> {
    let Some(building) = root.table("building")? else {
        return Ok(None);
    };
    building.allow(&["footprint"])?;
    Footprint::read(&building, location)
}

fn grade(root: &Table<'_, '_>, datum: VerticalDatum) -> Result<SurveyedGrade, StatementError> {
    let read = |key| {
        root.optional(key)?
            .map(|stated| elevation_on(&stated, datum))
            .transpose()
    };
    let grade = SurveyedGrade {
        lowest: read("lowest_adjacent_grade")?,
        highest: read("highest_adjacent_grade")?,
    };
    if let (Some(lowest), Some(highest)) = (grade.lowest, grade.highest)
        && highest.height() < lowest.height()
    {
        let stated = root.required("highest_adjacent_grade", ELEVATION)?;
        return Err(stated.refuse(
            "it is lower than lowest_adjacent_grade",
            "the highest ground against the walls",
        ));
    }
    Ok(grade)
}

fn water(root: &Table<'_, '_>) -> Result<WaterConditions, StatementError> {
    let Some(table) = root.table("water")? else {
        return Ok(WaterConditions::default());
    };
    table.allow(&["velocity", "salinity", "waves", "warning"])?;
    Ok(WaterConditions {
        velocity: table
            .optional("velocity")?
            .map(|stated| stated.read(parse_velocity))
            .transpose()?,
        salinity: table
            .optional("salinity")?
            .map(|stated| stated.choose())
            .transpose()?,
        waves: table
            .optional("waves")?
            .map(|stated| stated.choose())
            .transpose()?,
        warning: table
            .optional("warning")?
            .map(|stated| stated.read(parse_duration))
            .transpose()?,
    })
}

fn flood_levels(root: &Table<'_, '_>) -> Result<Vec<StatedLevel>, StatementError> {
    let mut levels: Vec<StatedLevel> = Vec::new();
    for table in root.tables("flood_level")? {
        let level = StatedLevel::read(&table)?;
        if levels
            .iter()
            .any(|other| other.event.same_event(level.event))
        {
            let event = table.required("event", "an event")?;
            return Err(event.refuse(
                "a level for this event is stated twice",
                "one [[flood_level]] an event",
            ));
        }
        levels.push(level);
    }
    Ok(levels)
}

fn rule(root: &Table<'_, '_>) -> Result<Option<RuleChoice>, StatementError> {
    if root.holds_table("rule") {
        let table = root.table("rule")?;
        return table
            .map(|table| Rule::read_stated(&table).map(|rule| RuleChoice::Written(Box::new(rule))))
            .transpose();
    }
    let Some(stated) = root.optional("rule")? else {
        return Ok(None);
    };
    Ok(Some(RuleChoice::Named {
        id: stated.name()?,
        place: stated.place().clone(),
    }))
}

fn openings(
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

fn opening(
    table: &Table<'_, '_>,
    threshold: Elevation,
    building: Location,
) -> Result<Opening, StatementError> {
    table.allow(&[
        "id",
        "kind",
        "width",
        "sill",
        "sill_above_threshold",
        "reveal",
        "face",
        "wall",
        "location",
    ])?;
    let length = |key| {
        table
            .optional(key)?
            .map(|stated| stated.read(parse_length))
            .transpose()
    };
    let (sill, sill_place) = sill(table, threshold)?;
    Ok(Opening {
        id: table
            .required("id", "a name, such as \"front door\"")?
            .name()?,
        kind: table
            .optional("kind")?
            .map(|stated| stated.choose())
            .transpose()?,
        width: width(&table.required("width", LENGTH)?)?,
        sill,
        sill_place,
        reveal: length("reveal")?,
        face: length("face")?,
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

/// No sill of one building lies higher above or deeper below its threshold than this.
const FARTHEST_SILL_METRES: f64 = 100.0;

/// The width of an opening: more than nothing, and no wider than a barrier was ever built.
pub(super) fn width(stated: &Stated<'_>) -> Result<Length, StatementError> {
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

fn sill(
    table: &Table<'_, '_>,
    threshold: Elevation,
) -> Result<(Sill, Option<Place>), StatementError> {
    let surveyed = table.optional("sill")?;
    let above = table.optional("sill_above_threshold")?;
    let near = |stated: &Stated<'_>, above: Length| {
        let limit = Length::new::<meter>(FARTHEST_SILL_METRES);
        if (-limit..=limit).contains(&above) {
            return Ok(Some(stated.place().clone()));
        }
        Err(stated.refuse(
            "it is not a sill of the same building: the threshold lies too far above or below it",
            format!("a sill within {FARTHEST_SILL_METRES} m (328 ft) of the threshold's height"),
        ))
    };
    match (surveyed, above) {
        (Some(surveyed), Some(_)) => Err(surveyed.refuse(
            "both sill and sill_above_threshold are stated",
            "one of the two",
        )),
        (Some(surveyed), None) if surveyed.text().trim() == "unknown" => {
            Ok((Sill::Unknown, Some(surveyed.place().clone())))
        }
        (Some(surveyed), None) => {
            let sill = elevation_on(&surveyed, threshold.datum())?;
            let place = near(&surveyed, sill.height() - threshold.height())?;
            Ok((Sill::Elevation(sill), place))
        }
        (None, Some(above)) => {
            let height = above.read(parse_signed_length)?;
            let place = near(&above, height)?;
            Ok((Sill::AboveThreshold(height), place))
        }
        (None, None) => Ok((Sill::Threshold, None)),
    }
}

/// The threshold: its datum is that of the whole answer, so it has to be one surface.
pub(super) fn threshold_elevation(stated: &Stated<'_>) -> Result<Elevation, StatementError> {
    let threshold = stated.read(parse_elevation)?;
    if !threshold.datum().is_one_surface() {
        return Err(stated.refuse(
            format!(
                "{} is another surface at each tide gauge",
                threshold.datum()
            ),
            format!("the height converted to one of {}", VerticalDatum::ACCEPTED),
        ));
    }
    Ok(threshold)
}

/// An elevation that has to be on the datum of the threshold.
fn elevation_on(stated: &Stated<'_>, datum: VerticalDatum) -> Result<Elevation, StatementError> {
    let elevation = stated.read(parse_elevation)?;
    if elevation.datum() != datum {
        return Err(stated.refuse(
            format!(
                "it is on {}, the threshold on {datum}: heights on two datums cannot be compared",
                elevation.datum()
            ),
            format!("the same height converted to {datum}"),
        ));
    }
    Ok(elevation)
}
