//! What a number of a layer may be.

use std::collections::BTreeMap;

use super::Role;
use crate::quantity::unit::{Velocity, foot_per_second, meter_per_second};
use crate::quantity::{Length, LengthUnit};
use crate::statement::{Choice, Stated, StatementError, Table};

/// The numbers that are accepted for a role.
#[derive(Clone, Debug)]
pub(in crate::hazard) struct Range {
    pub(in crate::hazard) lowest: f64,
    pub(in crate::hazard) highest: f64,
    pub(in crate::hazard) unit: RangeUnit,
}

/// The unit that the bounds are written in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::hazard) enum RangeUnit {
    Length(LengthUnit),
    Velocity(VelocityUnit),
}

/// A unit of speed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::hazard) enum VelocityUnit {
    FootPerSecond,
    MetrePerSecond,
}

impl VelocityUnit {
    pub(in crate::hazard) fn velocity(self, number: f64) -> Velocity {
        match self {
            Self::FootPerSecond => Velocity::new::<foot_per_second>(number),
            Self::MetrePerSecond => Velocity::new::<meter_per_second>(number),
        }
    }
}

impl Choice for VelocityUnit {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("ft/s", Self::FootPerSecond), ("m/s", Self::MetrePerSecond)];
}

impl RangeUnit {
    pub(in crate::hazard) fn symbol(self) -> &'static str {
        match self {
            Self::Length(unit) => unit.symbol(),
            Self::Velocity(unit) => unit.word(),
        }
    }
}

impl Range {
    pub(in crate::hazard) fn holds_length(&self, length: Length) -> bool {
        match self.unit {
            RangeUnit::Length(unit) => {
                (unit.length(self.lowest)..=unit.length(self.highest)).contains(&length)
            }
            RangeUnit::Velocity(_) => false,
        }
    }

    pub(in crate::hazard) fn holds_velocity(&self, velocity: Velocity) -> bool {
        match self.unit {
            RangeUnit::Velocity(unit) => {
                (unit.velocity(self.lowest)..=unit.velocity(self.highest)).contains(&velocity)
            }
            RangeUnit::Length(_) => false,
        }
    }
}

/// Bounds where a schema states none. They are wide on purpose, to catch an area or an
/// identifier in the wrong column: the shore of the Dead Sea lies 430 m below sea level and
/// Mount Everest's summit 8849 m above; no flood is 100 m deep or flows 30 m in a second.
fn wide(role: Role) -> Range {
    let (lowest, highest) = match role {
        Role::Level => (-500.0, 9000.0),
        Role::Velocity => (0.0, 30.0),
        _ => (0.0, 100.0),
    };
    let unit = if role == Role::Velocity {
        RangeUnit::Velocity(VelocityUnit::MetrePerSecond)
    } else {
        RangeUnit::Length(LengthUnit::Metre)
    };
    Range {
        lowest,
        highest,
        unit,
    }
}

/// Reads `[range]`.
pub(super) fn ranges(root: &Table<'_, '_>) -> Result<BTreeMap<Role, Range>, StatementError> {
    let roles = [Role::Level, Role::Depth, Role::Velocity];
    let mut ranges = BTreeMap::from(roles.map(|role| (role, wide(role))));
    let Some(table) = root.table("range")? else {
        return Ok(ranges);
    };
    table.allow(&roles.map(Role::word))?;
    for role in roles {
        if let Some(table) = table.table(role.word())? {
            ranges.insert(role, range(role, &table)?);
        }
    }
    Ok(ranges)
}

fn range(role: Role, table: &Table<'_, '_>) -> Result<Range, StatementError> {
    let (lowest, highest, unit) = bounds(table)?;
    Ok(Range {
        lowest,
        highest,
        unit: if role == Role::Velocity {
            RangeUnit::Velocity(unit.choose()?)
        } else {
            RangeUnit::Length(unit.read(str::parse::<LengthUnit>)?)
        },
    })
}

/// `lowest`, `highest` and their `unit` of length.
pub(in crate::hazard) fn length_bounds(
    table: &Table<'_, '_>,
) -> Result<(f64, f64, LengthUnit), StatementError> {
    let (lowest, highest, unit) = bounds(table)?;
    Ok((lowest, highest, unit.read(str::parse::<LengthUnit>)?))
}

fn bounds<'document>(
    table: &Table<'document, '_>,
) -> Result<(f64, f64, Stated<'document>), StatementError> {
    table.allow(&["lowest", "highest", "unit"])?;
    let lowest = table.required("lowest", "the least number that is accepted")?;
    let highest = table.required("highest", "the greatest number that is accepted")?;
    let unit = table.required("unit", "the unit of lowest and highest")?;
    let bounds = (number(&lowest)?, number(&highest)?);
    if bounds.0 >= bounds.1 {
        return Err(highest.refuse(
            format!("it is not greater than the lowest, {}", bounds.0),
            "a greater number",
        ));
    }
    Ok((bounds.0, bounds.1, unit))
}

/// A number without a unit.
pub(super) fn number(stated: &Stated<'_>) -> Result<f64, StatementError> {
    let number = stated.text().trim().replace('_', "").parse::<f64>();
    let number = number.ok().filter(|number| number.is_finite());
    number.ok_or_else(|| stated.refuse("it is not a number", "a number such as -9999 or 9.5"))
}
