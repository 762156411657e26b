//! From a record of the table to a row.

use super::row::{OpeningRow, Row};
use super::row_place::{ToPlace, fault, number, row_place, shown};
use super::{Columns, Role};
use crate::quantity::{
    Elevation, Length, LengthUnit, QuantityError, UnitSystem, VerticalDatum, is_height_of_land,
    parse_length, parse_signed_length,
};
use crate::site::{Threshold, clear_height, opening_width};
use crate::statement::{Choice, Place, Stated, StatementError};
use crate::table::{Record, RecordFault};

/// Reads rows; remembers unit and datum of the row before, which mostly hold again.
pub(super) struct RowReader<'a> {
    columns: &'a Columns,
    /// The datum of estimates whose row does not name one: that of the terrain.
    terrain_datum: Option<VerticalDatum>,
    to_place: Option<&'a ToPlace<'a>>,
    unit: Option<(String, LengthUnit)>,
    datum: Option<(String, VerticalDatum)>,
}

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
        let location = row_place(record, self.columns, self.to_place)?;
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
