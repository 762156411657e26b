//! From a feature's attributes to a zone.

use super::number::Numbers;
use super::schema::{LevelRule, Role, Schema};
use super::zone::Words;
use super::{Zone, ZoneClass, ZoneRemark, ZoneStatement};
use crate::gis::AttributeValue;

/// Interprets one feature: `read` gives the value of each role.
///
/// Nothing is guessed: what is missing or does not fit becomes a [`ZoneRemark`], and the
/// number that depends on it is left out.
///
/// ```
/// use sillmark::gis::AttributeValue;
/// use sillmark::hazard::{Role, Schema, ZoneStatement, interpret};
/// let zone = interpret(&Schema::nfhl()?, &ZoneStatement::default(), "zones", "7", |role| match role {
///     Role::Zone => AttributeValue::Text("AE".into()),
///     Role::Level => AttributeValue::Number(9.0),
///     Role::LengthUnit => AttributeValue::Text("Feet".into()),
///     _ => AttributeValue::Missing,
/// });
/// assert_eq!(zone.level, None);
/// assert_eq!(zone.remarks[0].to_string(),
///     "level 9 has no vertical datum and is not used; state it with --zones-datum");
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
pub fn interpret(
    schema: &Schema,
    statement: &ZoneStatement,
    layer: &str,
    feature: &str,
    read: impl Fn(Role) -> AttributeValue,
) -> Zone {
    let mut numbers = Numbers {
        schema,
        statement,
        read,
        remarks: Vec::new(),
    };
    let code = numbers.text(Role::Zone).unwrap_or_default();
    let subtype = numbers.text(Role::Subtype);
    let row = schema.row(&code, subtype.as_deref().unwrap_or_default());
    let mut class = row.map_or(ZoneClass::Unknown, |row| row.class);
    match row {
        None => numbers.remarks.push(ZoneRemark::UnknownZone {
            code: code.clone(),
            subtype: subtype.clone().unwrap_or_default(),
        }),
        Some(row) => {
            if let Some(today) = &row.legacy {
                numbers.remarks.push(ZoneRemark::Legacy {
                    code: code.clone(),
                    today: today.clone(),
                });
            }
        }
    }
    let flag = numbers.text(Role::InsideFlag);
    let flagged = flag.as_deref().and_then(|flag| schema.flag(flag));
    let expected = row.and_then(|row| row.inside);
    if let (Some(flag), Some(flagged), Some(expected)) = (flag, flagged, expected)
        && flagged != expected
    {
        numbers.remarks.push(ZoneRemark::FlagContradicts {
            code: code.clone(),
            flag,
        });
        // The code says outside, the flag inside: which one slipped is not known.
        if flagged {
            class = class.max(ZoneClass::Unknown);
        }
    }
    let level = numbers.level(row);
    if let Some((level, _)) = level
        && row.is_some_and(|row| row.level == LevelRule::None)
    {
        numbers.remarks.push(ZoneRemark::UnexpectedLevel {
            value: crate::quantity::UnitSystem::Us.elevation(level),
        });
    }
    Zone {
        code,
        subtype,
        layer: layer.to_owned(),
        feature: feature.to_owned(),
        class,
        level_expected: row.is_some_and(|row| row.level == LevelRule::Expected),
        level: level.map(|(level, _)| level),
        level_unit: level.map(|(_, unit)| unit),
        depth: numbers.depth(row),
        depth_is_stated: numbers.has_depth(),
        velocity: numbers.velocity(),
        annual_chance: row
            .and_then(|row| row.annual_chance)
            .unwrap_or(schema.annual_chance),
        origin: numbers.text(Role::Origin),
        date: numbers.text(Role::Date),
        fetched: None,
        remarks: numbers.remarks,
        words: Words::default(),
    }
}
