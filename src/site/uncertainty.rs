//! How well the user says that things are known.

use std::collections::BTreeMap;

use crate::quantity::{Length, parse_length};
use crate::statement::{Stated, StatementError, Table};

/// The `[uncertainty]` of a site file: standard deviations that stand in for ours.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StatedUncertainty {
    /// The ground in the terrain model.
    pub terrain: Option<GivenDeviation>,
    /// Threshold and sills.
    pub sill: Option<GivenDeviation>,
    /// Flood levels by their source: the key is the source's code, such as `zone-static`.
    pub levels: BTreeMap<&'static str, GivenDeviation>,
}

/// A standard deviation as somebody gives it, with where it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct GivenDeviation {
    /// What was given.
    pub value: GivenValue,
    /// As it was written.
    pub stated: Stated<'static>,
}

/// A length, or the name of a known way of measuring.
#[derive(Clone, Debug, PartialEq)]
pub enum GivenValue {
    /// The standard deviation.
    Length(Length),
    /// A name of the catalogue, such as `QL2`.
    Named(String),
}

/// The fields for flood levels, and the codes of the sources that they are for.
const LEVELS: [(&str, &str); 7] = [
    ("surface_raster", "surface-raster"),
    ("depth_raster", "depth-raster"),
    ("zone_static", "zone-static"),
    ("cross_sections", "cross-sections"),
    ("level_lines", "level-lines"),
    ("depth_over_grade", "depth-over-grade"),
    ("boundary_on_terrain", "boundary-on-terrain"),
];

impl StatedUncertainty {
    /// Reads the table.
    ///
    /// # Errors
    /// [`StatementError`] naming the field at fault.
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        let mut fields = vec!["terrain", "sill"];
        fields.extend(LEVELS.map(|(field, _)| field));
        table.allow(&fields)?;
        let read = |field| {
            let stated = table.optional(field)?;
            stated.as_ref().map(GivenDeviation::read).transpose()
        };
        let mut levels = BTreeMap::new();
        for (field, code) in LEVELS {
            if let Some(given) = read(field)? {
                levels.insert(code, given);
            }
        }
        Ok(Self {
            terrain: read("terrain")?,
            sill: read("sill")?,
            levels,
        })
    }
}

impl GivenDeviation {
    /// Reads `0.15 m` or a name such as `QL2`. Whether the name is known is for the room that
    /// has the catalogue.
    ///
    /// # Errors
    /// [`StatementError`] where it begins like a number and is no length, or is nothing.
    pub fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        let text = stated.text().trim();
        let like_number = text
            .starts_with(|first: char| first.is_ascii_digit() || matches!(first, '+' | '-' | '.'));
        let value = if like_number {
            let sd = stated.read(parse_length)?;
            if sd.value <= 0.0 {
                return Err(stated.refuse(
                    "nothing is measured without error",
                    "a standard deviation greater than zero, such as \"0.15 m\"",
                ));
            }
            GivenValue::Length(sd)
        } else {
            GivenValue::Named(stated.name()?)
        };
        Ok(Self {
            value,
            stated: stated.to_owned_text(),
        })
    }
}
