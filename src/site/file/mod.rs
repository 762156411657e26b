//! The site file: one file a table of it.

mod anchor_setting;
mod fields;
mod fitting;
mod gap;
mod inside;
mod loads;
mod opening;
mod place;
mod sill;
mod water;

pub(super) use anchor_setting::{floor, jamb};
pub(super) use fitting::fitting;
pub(super) use inside::inside;
pub(super) use loads::loads;
pub(crate) use opening::{clear_height, width};
pub(super) use water::water;

use opening::openings;
use place::location;

use super::{
    Conditions, Footprint, Location, RuleChoice, Site, StatedOffset, StatedUncertainty,
    SurveyedGrade, Threshold,
};
use crate::design::{Rule, StatedLevel};
use crate::quantity::{Elevation, UnitSystem, VerticalDatum, parse_elevation};
use crate::statement::{Document, Stated, StatementError, Table};

/// The fields at the root, without the tables of [`Conditions`].
const FIELDS: [&str; 12] = [
    "name",
    "location",
    "threshold",
    "occupancy",
    "building",
    "lowest_adjacent_grade",
    "highest_adjacent_grade",
    "rule",
    "uncertainty",
    "flood_level",
    "datum_offset",
    "opening",
];

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
        root.allow(&[FIELDS.as_slice(), &Conditions::TABLES].concat())?;
        let threshold = root.required("threshold", ELEVATION)?;
        let threshold_place = threshold.place().clone();
        let units = UnitSystem::of_text(threshold.text());
        let threshold = threshold_elevation(&threshold)?;
        let building = location(&root)?.ok_or_else(|| root.missing("location", LOCATION))?;
        Ok(Self {
            name: root.required("name", "a name for the building")?.name()?,
            location: building,
            threshold: Threshold::Stated(threshold),
            units,
            threshold_place,
            occupancy: root
                .optional("occupancy")?
                .map(|stated| stated.choose())
                .transpose()?,
            footprint: footprint(&root, building)?,
            grade: grade(&root, threshold.datum())?,
            conditions: Conditions::read(&root)?,
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
