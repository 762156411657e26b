//! What a post stands on.

use super::field;
use crate::quantity::{Length, parse_length};
use crate::statement::{Stated, StatementError, Table};

/// The plate at the foot of a post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BasePlate {
    /// Its extent along the wall.
    pub along: Length,
    /// Its extent across the wall, in the direction of the water.
    pub across: Length,
    /// Its thickness.
    pub thickness: Length,
}

/// A rectangular pattern of equal anchors, centred on the plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnchorPattern {
    /// Outer diameter of an anchor.
    pub diameter: Length,
    /// Rows, one behind the other in the direction of the water.
    pub rows: u32,
    /// Anchors in each row, along the wall.
    pub per_row: u32,
    /// Distance from row to row; nothing for one row.
    pub row_spacing: Length,
    /// Distance from anchor to anchor in a row; nothing for one anchor.
    pub anchor_spacing: Length,
}

impl BasePlate {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["along", "across", "thickness"])?;
        Ok(Self {
            along: field::dimension(table, "along", "the plate's extent along the wall")?,
            across: field::dimension(
                table,
                "across",
                "the plate's extent in the direction of the water",
            )?,
            thickness: field::dimension(table, "thickness", "the plate's thickness")?,
        })
    }
}

impl AnchorPattern {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&[
            "diameter",
            "rows",
            "per_row",
            "row_spacing",
            "anchor_spacing",
        ])?;
        let (rows, per_row) = (count(table, "rows")?, count(table, "per_row")?);
        Ok(Self {
            diameter: field::dimension(table, "diameter", "the anchors' outer diameter")?,
            rows,
            per_row,
            row_spacing: spacing(table, "row_spacing", rows)?,
            anchor_spacing: spacing(table, "anchor_spacing", per_row)?,
        })
    }

    /// How many anchors it has.
    #[must_use]
    pub const fn count(&self) -> u32 {
        self.rows * self.per_row
    }

    /// Extent in the direction of the water, from centre to centre of the outer rows.
    #[must_use]
    pub fn across(&self) -> Length {
        self.row_spacing * f64::from(self.rows.saturating_sub(1))
    }

    /// Extent along the wall, from centre to centre of the outer anchors.
    #[must_use]
    pub fn along(&self) -> Length {
        self.anchor_spacing * f64::from(self.per_row.saturating_sub(1))
    }
}

/// More anchors than this in a row or rows in a pattern are a slip (common practice, no source).
const MOST: u32 = 20;

fn count(table: &Table<'_, '_>, key: &'static str) -> Result<u32, StatementError> {
    let accepted = format!("a whole number from 1 to {MOST}");
    let stated: Stated<'_> = table.required(key, &accepted)?;
    stated
        .text()
        .trim()
        .parse()
        .ok()
        .filter(|number| (1..=MOST).contains(number))
        .ok_or_else(|| stated.refuse("it is not such a number", accepted))
}

/// The distance between several of them; one needs none.
fn spacing(table: &Table<'_, '_>, key: &'static str, of: u32) -> Result<Length, StatementError> {
    if of > 1 {
        return field::dimension(table, key, "the distance from centre to centre");
    }
    match table.optional(key)? {
        None => Ok(Length::default()),
        Some(stated) => {
            let length = stated.read(parse_length)?;
            if length.value > 0.0 {
                return Err(stated.refuse("there is only one, so there is no spacing", "nothing"));
            }
            Ok(length)
        }
    }
}
