//! From a record of the table to a row.

use super::row::{OpeningRow, Row};
use super::{Columns, Coordinates, Role};
use crate::crs::CrsError;
use crate::quantity::{
    Elevation, Length, LengthUnit, QuantityError, UnitSystem, VerticalDatum, is_height_of_land,
    parse_length, parse_signed_length,
};
use crate::site::{Location, Threshold, clear_height, opening_width};
use crate::statement::{Choice, Place, Stated, StatementError};
use crate::table::{Record, RecordFault};

/// Turns coordinates of the table into a place on the earth.
pub type ToPlace<'a> = dyn Fn(f64, f64) -> Result<Location, CrsError> + 'a;

/// Reads rows; remembers unit and datum of the row before, which mostly hold again.
pub(super) struct RowReader<'a> {
    columns: &'a Columns,
    /// The datum of estimates whose row does not name one: that of the terrain.
    terrain_datum: Option<VerticalDatum>,
    to_place: Option<&'a ToPlace<'a>>,
    unit: Option<(String, LengthUnit)>,
    datum: Option<(String, VerticalDatum)>,
}

const NUMBER: &str = "a number, such as 9.25";

impl<'a> RowReader<'a> {
    /// `to_place` is `None` where coordinates are degrees of WGS 84.
    pub(super) fn new(
        columns: &'a Columns,
        terrain_datum: Option<VerticalDatum>,
        to_place: Option<&'a ToPlace<'a>>,
    ) -> Self {
        Self {
            columns,
            terrain_datum,
            to_place,
            unit: None,
            datum: None,
        }
    }

    pub(super) fn read(
        &mut self,
        record: &Record<'_>,
    ) -> Result<Row<Box<OpeningRow>>, RecordFault> {
        if self.text(record, Role::Id).is_empty() {
            return Err(fault(
                record,
                "id",
                "",
                "it is missing",
                "a name for the row",
            ));
        }
        let location = self.location(record)?;
        let unit = self.unit(record)?;
        Ok(Row {
            line: record.line(),
            location,
            threshold: self.threshold(record, unit)?,
            units: match unit {
                LengthUnit::Foot | LengthUnit::SurveyFoot | LengthUnit::Inch => UnitSystem::Us,
                _ => UnitSystem::Si,
            },
            opening: self.opening(record)?,
        })
    }

    fn text<'r>(&self, record: &Record<'r>, role: Role) -> &'r str {
        self.columns
            .at(role)
            .map_or("", |column| record.get(column))
    }

    fn location(&self, record: &Record<'_>) -> Result<Location, RecordFault> {
        let (names, texts, (x, y)) = match self.columns.coordinates {
            Coordinates::Columns(east, north) => {
                let names = if self.columns.degrees {
                    ["longitude", "latitude"]
                } else {
                    ["x", "y"]
                };
                let texts = [record.get(east), record.get(north)];
                let x = number(record, names[0], texts[0])?;
                (names, texts, (x, number(record, names[1], texts[1])?))
            }
            Coordinates::Point => {
                let point = record.point().ok_or_else(|| {
                    fault(record, "geometry", "", "the row has no point", "a point")
                })?;
                (["geometry"; 2], [""; 2], point)
            }
        };
        let problem = match self.to_place {
            None => match Location::from_degrees(x, y) {
                Ok(location) => return Ok(location),
                Err(error) => error.to_string(),
            },
            Some(to_place) => match to_place(x, y) {
                Ok(location) => return Ok(location),
                Err(error) => error.to_string(),
            },
        };
        let value = match texts {
            ["", ""] => format!("{x} {y}"),
            [x, y] => format!("{} {}", shown(x), shown(y)),
        };
        let field = match names {
            ["geometry", _] => "geometry".to_owned(),
            [x, y] => format!("{x}, {y}"),
        };
        Err(RecordFault {
            line: record.line(),
            field,
            value,
            problem,
            accepted: "coordinates of a place in the table's system (option --crs), east first"
                .to_owned(),
        })
    }

    fn unit(&mut self, record: &Record<'_>) -> Result<LengthUnit, RecordFault> {
        let text = self.text(record, Role::ThresholdUnit);
        match (&self.unit, self.columns.for_all.unit) {
            (_, Some(unit)) if text.is_empty() => Ok(unit),
            (Some((known, unit)), _) if known == text => Ok(*unit),
            _ => {
                let unit: LengthUnit = text.parse().map_err(|_| {
                    let problem = match text {
                        "" => "it is missing",
                        _ => "it is not a unit of length",
                    };
                    fault(
                        record,
                        "threshold_unit",
                        text,
                        problem,
                        LengthUnit::ACCEPTED,
                    )
                })?;
                self.unit = Some((text.to_owned(), unit));
                Ok(unit)
            }
        }
    }

    /// The datum that a row names, or the one that holds for all.
    fn datum(&mut self, record: &Record<'_>) -> Result<Option<VerticalDatum>, RecordFault> {
        let text = self.text(record, Role::VerticalDatum);
        if text.is_empty() {
            return Ok(self.columns.for_all.datum);
        }
        if let Some((known, datum)) = &self.datum
            && known == text
        {
            return Ok(Some(*datum));
        }
        let refused = |problem: &str| {
            let accepted = VerticalDatum::ACCEPTED;
            fault(record, "vertical_datum", text, problem, accepted)
        };
        let datum: VerticalDatum = text
            .parse()
            .map_err(|_| refused("it is not a known vertical datum"))?;
        if !datum.is_one_surface() {
            return Err(refused("it is another surface at each tide gauge"));
        }
        self.datum = Some((text.to_owned(), datum));
        Ok(Some(datum))
    }

    fn threshold(
        &mut self,
        record: &Record<'_>,
        unit: LengthUnit,
    ) -> Result<Threshold, RecordFault> {
        let datum = self.datum(record)?;
        let measured = self.text(record, Role::Threshold);
        if !measured.is_empty() {
            let height = unit.length(number(record, "threshold", measured)?);
            if !is_height_of_land(height) {
                let problem = "no dry land lies that high or low";
                let accepted = "the height of a threshold; an empty value where nobody knows it";
                return Err(fault(record, "threshold", measured, problem, accepted));
            }
            let datum = datum.ok_or_else(|| {
                let accepted = VerticalDatum::ACCEPTED;
                fault(record, "vertical_datum", "", "it is missing", accepted)
            })?;
            return Ok(Threshold::Stated(Elevation::new(height, datum)));
        }
        let above = self.text(record, Role::ThresholdAboveGround);
        if above.is_empty() {
            let accepted = "a height, or threshold_above_ground for an estimate";
            return Err(fault(record, "threshold", "", "it is missing", accepted));
        }
        let height = unit.length(number(record, "threshold_above_ground", above)?);
        if height.value.abs() > HIGHEST_ABOVE_GROUND {
            let problem = "no threshold lies farther than 30 m (98 ft) from the ground";
            return Err(fault(
                record,
                "threshold_above_ground",
                above,
                problem,
                "a number between -30 m and 30 m (-98 ft and 98 ft)",
            ));
        }
        let datum = datum.or(self.terrain_datum).ok_or_else(|| {
            let accepted = "the datum of the answer, because the terrain has no single one";
            fault(record, "vertical_datum", "", "it is missing", accepted)
        })?;
        Ok(Threshold::AboveGround { height, datum })
    }

    fn opening(&self, record: &Record<'_>) -> Result<Option<Box<OpeningRow>>, RecordFault> {
        const OF_OPENINGS: [Role; 9] = [
            Role::Opening,
            Role::Building,
            Role::Width,
            Role::OpeningHeight,
            Role::SillAboveThreshold,
            Role::Reveal,
            Role::Face,
            Role::Wall,
            Role::Occupancy,
        ];
        let asked = OF_OPENINGS
            .iter()
            .any(|role| self.columns.at(*role).is_some());
        if !asked {
            return Ok(None);
        }
        let length = |role, read: fn(&str) -> Result<Length, QuantityError>| {
            self.stated(record, role, &|stated| stated.read(read))
        };
        Ok(Some(Box::new(OpeningRow {
            building: self.text(record, Role::Building).to_owned(),
            opening: self.text(record, Role::Opening).to_owned(),
            width: self.stated(record, Role::Width, &opening_width)?,
            height: self.stated(record, Role::OpeningHeight, &clear_height)?,
            above_threshold: length(Role::SillAboveThreshold, parse_signed_length)?,
            reveal: length(Role::Reveal, parse_length)?,
            face: length(Role::Face, parse_length)?,
            wall: self.choice(record, Role::Wall)?,
            occupancy: self.choice(record, Role::Occupancy)?,
        })))
    }

    fn choice<T: Choice>(&self, record: &Record<'_>, role: Role) -> Result<Option<T>, RecordFault> {
        self.stated(record, role, &|stated| stated.choose())
    }

    fn stated<T>(
        &self,
        record: &Record<'_>,
        role: Role,
        read: &dyn Fn(&Stated<'_>) -> Result<T, StatementError>,
    ) -> Result<Option<T>, RecordFault> {
        let text = self.text(record, role);
        if text.is_empty() {
            return Ok(None);
        }
        let stated = Stated::new(role.name(), text, Place::Option("".into()));
        read(&stated).map(Some).map_err(|error| RecordFault {
            line: record.line(),
            field: role.name().to_owned(),
            value: shown(text),
            problem: error.problem,
            accepted: error.accepted,
        })
    }
}

/// The farthest that a threshold can lie from the ground, metres: as for a barrier alone.
const HIGHEST_ABOVE_GROUND: f64 = 30.0;

/// The start of a value: more of it does not help to find it.
fn shown(text: &str) -> String {
    text.chars().take(100).collect()
}

fn number(record: &Record<'_>, field: &str, text: &str) -> Result<f64, RecordFault> {
    let found: Option<f64> = text.parse().ok();
    found.filter(|number| number.is_finite()).ok_or_else(|| {
        let problem = match text {
            "" => "it is missing",
            _ => "it is not a number",
        };
        fault(record, field, text, problem, NUMBER)
    })
}

fn fault(
    record: &Record<'_>,
    field: &str,
    value: &str,
    problem: &str,
    accepted: &str,
) -> RecordFault {
    RecordFault {
        line: record.line(),
        field: field.to_owned(),
        value: shown(value),
        problem: problem.to_owned(),
        accepted: accepted.to_owned(),
    }
}
