//! Numbers of a feature: from numeric or text attributes, sentinels taken out.

use super::schema::{Role, Schema};
use super::{ZoneRemark, ZoneStatement};
use crate::gis::AttributeValue;
use crate::quantity::unit::{foot_per_second, meter_per_second};
use crate::quantity::{Elevation, Length, LengthUnit, Velocity, VerticalDatum};

/// Reads the numbers of one feature, gathering remarks.
pub(super) struct Numbers<'a, Read: Fn(Role) -> AttributeValue> {
    pub(super) schema: &'a Schema,
    pub(super) statement: &'a ZoneStatement,
    pub(super) read: Read,
    pub(super) remarks: Vec<ZoneRemark>,
}

impl<Read: Fn(Role) -> AttributeValue> Numbers<'_, Read> {
    /// The text of a role; `None` where it stands for none.
    pub(super) fn text(&self, role: Role) -> Option<String> {
        (self.read)(role)
            .text()
            .filter(|text| !self.schema.is_no_text(text))
    }

    /// The level with its datum and the unit it is written in, where all of it is known.
    pub(super) fn level(&mut self) -> Option<(Elevation, LengthUnit)> {
        let number = self.number(Role::Level, "level")?;
        let unit = self.length_unit("level", number);
        let datum = self.datum(number);
        let (unit, datum) = (unit?, datum?);
        let height = self.length_in_range(Role::Level, "level", number, unit)?;
        Some((Elevation::new(height, datum), unit))
    }

    /// The depth, where its unit is known.
    pub(super) fn depth(&mut self) -> Option<Length> {
        let number = self.number(Role::Depth, "depth")?;
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
        let number = self.number(Role::Velocity, "velocity")?;
        let Some(text) = self.text(Role::VelocityUnit) else {
            self.remarks.push(ZoneRemark::WithoutUnit {
                what: "velocity",
                value: number.to_string(),
                option: "the site's own velocity",
            });
            return None;
        };
        let Some(unit) = self.schema.velocity_unit(&text) else {
            self.remarks.push(ZoneRemark::NotUnderstood {
                what: "velocity unit",
                text,
                accepted: "feet or metres per second",
            });
            return None;
        };
        let velocity = velocity_of(unit, number);
        let within = self.schema.range(Role::Velocity).is_none_or(|range| {
            let bounds =
                velocity_of(&range.unit, range.lowest)..=velocity_of(&range.unit, range.highest);
            bounds.contains(&velocity)
        });
        if !within {
            self.out_of_range(Role::Velocity, "velocity", format!("{number} {unit}"));
            return None;
        }
        Some(velocity)
    }

    fn number(&mut self, role: Role, what: &'static str) -> Option<f64> {
        let number = match (self.read)(role) {
            AttributeValue::Missing => return None,
            AttributeValue::Number(number) => number,
            AttributeValue::Text(text) if self.schema.is_no_text(&text) => return None,
            AttributeValue::Text(text) => {
                let Ok(number) = text.trim().parse() else {
                    self.remarks.push(ZoneRemark::NotANumber { what, text });
                    return None;
                };
                number
            }
        };
        (!self.schema.is_no_number(role, number)).then_some(number)
    }

    fn length_unit(&mut self, what: &'static str, number: f64) -> Option<LengthUnit> {
        let stated = self.statement.unit;
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
        let stated = self.statement.datum;
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
        let within = self.schema.range(role).is_none_or(|range| {
            // The unit of a range is checked when the schema is read.
            let bound = range.unit.parse().unwrap_or(LengthUnit::Metre);
            (bound.length(range.lowest)..=bound.length(range.highest)).contains(&length)
        });
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
                unit: range.unit.clone(),
            });
        }
    }

    fn remark_once(&mut self, remark: ZoneRemark) {
        if !self.remarks.contains(&remark) {
            self.remarks.push(remark);
        }
    }
}

fn velocity_of(unit: &str, number: f64) -> Velocity {
    if unit == "m/s" {
        Velocity::new::<meter_per_second>(number)
    } else {
        Velocity::new::<foot_per_second>(number)
    }
}
