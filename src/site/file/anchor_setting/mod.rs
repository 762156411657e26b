//! `[floor]` and `[jamb]`: what anchors are set in.

mod approval;
mod base;
mod edges;
mod kind;
mod steel;

use super::super::AnchorSetting;
use super::fields::{Bounds, within};
use crate::anchor::{BaseMaterial, Bedding};
use crate::quantity::{Length, parse_length};
use crate::statement::{StatementError, Table};

/// The fields that every setting may have; those of [`base`], [`kind`] and [`edges`] come to
/// them.
const FIELDS: [&str; 8] = [
    "material",
    "anchors",
    "embedment",
    "bedding",
    "steel_area",
    "steel_ultimate",
    "steel_yield",
    "steel",
];

const EMBEDMENT: Bounds = Bounds {
    range: 0.01..=2.0,
    problem: "no anchor is set that shallow or that deep",
    accepted: "the effective embedment, from 0.4 in (10 mm) to 6.5 ft (2 m), such as \"5 in\"",
};

/// `[floor]`: what base plates stand on.
pub(in super::super) fn floor(
    around: &Table<'_, '_>,
) -> Result<Option<AnchorSetting>, StatementError> {
    below(around, "floor", edges::FLOOR)
}

/// `[jamb]`: what the anchors up the reveal are set in.
pub(in super::super) fn jamb(
    around: &Table<'_, '_>,
) -> Result<Option<AnchorSetting>, StatementError> {
    below(around, "jamb", edges::JAMB)
}

fn below(
    around: &Table<'_, '_>,
    key: &'static str,
    edges: edges::Fields,
) -> Result<Option<AnchorSetting>, StatementError> {
    let table = around.table(key).map_err(|error| StatementError {
        accepted: format!("[{key}], of one opening [opening.{key}], and its fields below it"),
        ..error
    })?;
    table.map(|table| setting(&table, edges)).transpose()
}

fn setting(table: &Table<'_, '_>, edges: edges::Fields) -> Result<AnchorSetting, StatementError> {
    let fields = [&FIELDS[..], &base::CONCRETE, &kind::FIELDS, &edges];
    table.allow(&fields.concat())?;
    let base = base::read(table)?;
    Ok(AnchorSetting {
        fixing: kind::read(table)?,
        embedment: embedment(table, &base)?,
        steel: steel::read(table)?,
        // The least is claimed where nobody says that the plate bears on the base itself.
        bedding: table.choice("bedding")?.unwrap_or(Bedding::GroutPad),
        edges: edges::read(table, edges)?,
        base,
    })
}

/// The embedment, which has to leave something of the concrete below it.
fn embedment(table: &Table<'_, '_>, base: &BaseMaterial) -> Result<Option<Length>, StatementError> {
    let embedment = within(table, "embedment", &EMBEDMENT, parse_length)?;
    let thickness = match base {
        BaseMaterial::Concrete(concrete) => concrete.thickness,
        BaseMaterial::Masonry | BaseMaterial::Unstated => None,
    };
    if let (Some(embedment), Some(thickness)) = (embedment, thickness)
        && embedment >= thickness
    {
        let stated = table.required("embedment", EMBEDMENT.accepted)?;
        return Err(stated.refuse(
            "the concrete is no thicker than that",
            "an embedment that is less than thickness",
        ));
    }
    Ok(embedment)
}
