//! Numbers of a feature: from numeric or text attributes, sentinels taken out.

use super::schema::{Role, Schema, VelocityUnit, ZoneRow};
use super::{ZoneRemark, ZoneStatement};
use crate::gis::AttributeValue;
use crate::quantity::{Elevation, Length, LengthUnit, Velocity, VerticalDatum};
use crate::statement::Choice;

/// Reads the numbers of one feature, gathering remarks.
pub(super) struct Numbers<'a, Reader: Fn(Role) -> AttributeValue> {
    pub(super) schema: &'a Schema,
    pub(super) statement: &'a ZoneStatement,
    pub(super) read: Reader,
    pub(super) remarks: Vec<ZoneRemark>,
}

impl<Reader: Fn(Role) -> AttributeValue> Numbers<'_, Reader> {
    /// The text of a role; `None` where it stands for none.
    pub(super) fn text(&self, role: Role) -> Option<String> {
        (self.read)(role)
            .text()
            .filter(|text| !self.schema.is_no_text(text))
    }

    /// The level with its datum and the unit it is written in, where all of it is known.
    ///
    /// The feature's own level goes before that of its row, and that before the schema's.
    pub(super) fn level(&mut self, row: Option<&ZoneRow>) -> Option<(Elevation, LengthUnit)> {
        let constants = &self.schema.constants;
        let constant = row.and_then(|row| row.constant_level).or(constants.level);
        let number = match self.number(Role::Level, "level") {
            Read::Number(number) => number,
            Read::None => return constant,
            Read::Garbled => return None,
        };
        let unit = self.length_unit("level", number);
        let datum = self.datum(number);
        let (unit, datum) = (unit?, datum?);
        let height = self.length_in_range(Role::Level, "level", number, unit)?;
        Some((Elevation::new(height, datum), unit))
    }

    /// The depth, where its unit is known.
    pub(super) fn depth(&mut self, row: Option<&ZoneRow>) -> Option<Length> {
        let constants = &self.schema.constants;
        let constant = row.and_then(|row| row.constant_depth).or(constants.depth);
        let number = match self.number(Role::Depth, "depth") {
            Read::Number(number) => number,
            Read::None => return constant,
            Read::Garbled => return None,
        };
        let unit = self.length_unit("depth", number)?;
        self.length_in_range(Role::Depth, "depth", number, unit)
    }

    /// Whether the record has a depth, usable or not.
    pub(super) fn has_depth(&self) -> bool {
        match (self.read)(Role::Depth) {
            AttributeValue::Missing => false,
            AttributeValue::Number(number) => !self.schema.is_no_number(Role::Depth, number),
            AttributeValue::Text(text) => match text.trim().parse() {
                Ok(number) => !self.schema.is_no_number(Role::Depth, number),
                Err(_) => !self.schema.is_no_text(&text),
            },
        }
    }

    /// The velocity, where its unit is known.
    pub(super) fn velocity(&mut self) -> Option<Velocity> {
        let number = match self.number(Role::Velocity, "velocity") {
            Read::Number(number) => number,
            Read::None => return self.schema.constants.velocity,
            Read::Garbled => return None,
        };
        let unit = self.velocity_unit(number)?;
        let velocity = unit.velocity(number);
        let range = self.schema.range(Role::Velocity);
        let within = range.is_none_or(|range| range.holds_velocity(velocity));
        if !within {
            let value = format!("{number} {}", unit.word());
            self.out_of_range(Role::Velocity, "velocity", value);
        }
        within.then_some(velocity)
    }

    fn velocity_unit(&mut self, number: f64) -> Option<VelocityUnit> {
        let Some(text) = self.text(Role::VelocityUnit) else {
            if self.schema.constants.velocity_unit.is_none() {
                self.remarks.push(ZoneRemark::WithoutUnit {
                    what: "velocity",
                    value: number.to_string(),
                    option: "the site's own velocity",
                });
            }
            return self.schema.constants.velocity_unit;
        };
        let unit = self.schema.velocity_unit(&text);
        if unit.is_none() {
            self.remarks.push(ZoneRemark::NotUnderstood {
                what: "velocity unit",
                text,
                accepted: "feet or metres per second",
            });
        }
        unit
    }

    fn number(&mut self, role: Role, what: &'static str) -> Read {
        let number = match (self.read)(role) {
            AttributeValue::Missing => return Read::None,
            AttributeValue::Number(number) => number,
            AttributeValue::Text(text) if self.schema.is_no_text(&text) => return Read::None,
            AttributeValue::Text(text) => {
                let Ok(number) = text.trim().parse() else {
                    self.remarks.push(ZoneRemark::NotANumber { what, text });
                    return Read::Garbled;
                };
                number
            }
        };
        if self.schema.is_no_number(role, number) {
            Read::None
        } else {
            Read::Number(number)
        }
    }

    fn length_unit(&mut self, what: &'static str, number: f64) -> Option<LengthUnit> {
        let stated = self.statement.unit.or(self.schema.constants.length_unit);
        match self.text(Role::LengthUnit) {
            None if stated.is_some() => stated,
            None => {
                self.remarks.push(ZoneRemark::WithoutUnit {
                    what,
                    value: number.to_string(),
                    option: "--zones-unit",
                });
                None
            }
            Some(text) => {
                let Ok(written) = text.parse::<LengthUnit>() else {
                    self.remark_once(ZoneRemark::NotUnderstood {
                        what: "unit",
                        text,
                        accepted: LengthUnit::ACCEPTED,
                    });
                    return None;
                };
                if let Some(stated) = stated.filter(|stated| *stated != written) {
                    self.remark_once(ZoneRemark::UnitAlreadyThere { written, stated });
                }
                Some(written)
            }
        }
    }

    fn datum(&mut self, number: f64) -> Option<VerticalDatum> {
        let stated = self.statement.datum.or(self.schema.constants.level_datum);
        match self.text(Role::LevelDatum) {
            None if stated.is_some() => stated,
            None => {
                self.remarks.push(ZoneRemark::LevelWithoutDatum {
                    value: number.to_string(),
                });
                None
            }
            Some(text) => {
                let Ok(written) = text.parse::<VerticalDatum>() else {
                    self.remarks.push(ZoneRemark::NotUnderstood {
                        what: "vertical datum",
                        text,
                        accepted: VerticalDatum::ACCEPTED,
                    });
                    return None;
                };
                if let Some(stated) = stated.filter(|stated| *stated != written) {
                    self.remark_once(ZoneRemark::DatumAlreadyThere { written, stated });
                }
                Some(written)
            }
        }
    }

    fn length_in_range(
        &mut self,
        role: Role,
        what: &'static str,
        number: f64,
        unit: LengthUnit,
    ) -> Option<Length> {
        let length = unit.length(number);
        let range = self.schema.range(role);
        let within = range.is_none_or(|range| range.holds_length(length));
        if !within {
            self.out_of_range(role, what, format!("{number} {unit}"));
        }
        within.then_some(length)
    }

    fn out_of_range(&mut self, role: Role, what: &'static str, value: String) {
        if let Some(range) = self.schema.range(role) {
            self.remarks.push(ZoneRemark::OutOfRange {
                what,
                value,
                lowest: range.lowest,
                highest: range.highest,
                unit: range.unit.symbol().to_owned(),
            });
        }
    }

    fn remark_once(&mut self, remark: ZoneRemark) {
        if !self.remarks.contains(&remark) {
            self.remarks.push(remark);
        }
    }
}

/// What a feature says for a number.
enum Read {
    Number(f64),
    None,
    /// Something else than a number, which is remarked on: no constant stands in for it.
    Garbled,
}
