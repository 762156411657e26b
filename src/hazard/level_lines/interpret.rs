//! From a feature's attributes to a line.

use super::{LevelLine, LineKind, LineRemark, LineRole, LineSchema, LineStatement};
use crate::gis::AttributeValue;
use crate::quantity::{Elevation, LengthUnit, VerticalDatum};

/// Reads the attributes of one feature, gathering remarks.
pub(super) struct Interpreter<'a, Read: Fn(LineRole) -> AttributeValue> {
    pub(super) schema: &'a LineSchema,
    pub(super) statement: &'a LineStatement,
    pub(super) kind: LineKind,
    pub(super) read: Read,
    pub(super) remarks: Vec<LineRemark>,
}

impl<Read: Fn(LineRole) -> AttributeValue> Interpreter<'_, Read> {
    /// The line; nothing is guessed: a level that lacks its datum or unit is left out.
    pub(super) fn line(mut self, layer: &str, feature: &str) -> LevelLine {
        let level = self.level();
        LevelLine {
            kind: self.kind,
            layer: layer.to_owned(),
            feature: feature.to_owned(),
            label: self.text(LineRole::Label),
            watercourse: self.text(LineRole::Watercourse),
            station: self.text(LineRole::Station),
            level: level.map(|(level, _)| level),
            unit: level.map(|(_, unit)| unit),
            annual_chance: self.schema.annual_chance,
            fetched: None,
            remarks: self.remarks,
        }
    }

    /// The text of a role; `None` where it stands for none.
    fn text(&self, role: LineRole) -> Option<String> {
        (self.read)(role)
            .text()
            .filter(|text| !self.schema.is_no_text(text))
    }

    fn level(&mut self) -> Option<(Elevation, LengthUnit)> {
        let number = self.number()?;
        let (unit, datum) = (self.unit(number), self.datum(number));
        let (unit, datum) = (unit?, datum?);
        let height = unit.length(number);
        let range = self.schema.range();
        if !range.holds(height) {
            self.remarks.push(LineRemark::OutOfRange {
                value: format!("{number} {unit}"),
                lowest: range.lowest,
                highest: range.highest,
                unit: range.unit,
            });
            return None;
        }
        Some((Elevation::new(height, datum), unit))
    }

    fn number(&mut self) -> Option<f64> {
        let number = match (self.read)(LineRole::Level) {
            AttributeValue::Missing => return None,
            AttributeValue::Number(number) => number,
            AttributeValue::Text(text) if self.schema.is_no_text(&text) => return None,
            AttributeValue::Text(text) => {
                let Ok(number) = text.trim().parse() else {
                    self.remarks.push(LineRemark::NotANumber { text });
                    return None;
                };
                number
            }
        };
        if self.schema.is_no_single_level(number) {
            self.remarks.push(LineRemark::NoSingleLevel {
                value: number.to_string(),
            });
            return None;
        }
        (!self.schema.is_no_number(number)).then_some(number)
    }

    fn unit(&mut self, number: f64) -> Option<LengthUnit> {
        let stated = self.statement.unit;
        let Some(text) = self.text(LineRole::LengthUnit) else {
            if stated.is_none() {
                self.remarks.push(LineRemark::WithoutUnit {
                    value: number.to_string(),
                    option: self.kind.option(),
                });
            }
            return stated;
        };
        let Ok(written) = text.parse::<LengthUnit>() else {
            self.remarks.push(LineRemark::NotUnderstood {
                what: "unit",
                text,
                accepted: LengthUnit::ACCEPTED,
            });
            return None;
        };
        if let Some(stated) = stated.filter(|stated| *stated != written) {
            let remark = LineRemark::UnitAlreadyThere { written, stated };
            self.remarks.push(remark);
        }
        Some(written)
    }

    fn datum(&mut self, number: f64) -> Option<VerticalDatum> {
        let stated = self.statement.datum;
        let Some(text) = self.text(LineRole::LevelDatum) else {
            if stated.is_none() {
                self.remarks.push(LineRemark::WithoutDatum {
                    value: number.to_string(),
                    option: self.kind.option(),
                });
            }
            return stated;
        };
        let Ok(written) = text.parse::<VerticalDatum>() else {
            self.remarks.push(LineRemark::NotUnderstood {
                what: "vertical datum",
                text,
                accepted: VerticalDatum::ACCEPTED,
            });
            return None;
        };
        if let Some(stated) = stated.filter(|stated| *stated != written) {
            let remark = LineRemark::DatumAlreadyThere { written, stated };
            self.remarks.push(remark);
        }
        Some(written)
    }
}
