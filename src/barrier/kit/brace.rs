//! The strut behind a post.

use super::base_plate::AnchorPattern;
use super::field;
use crate::quantity::unit::{Force, Ratio};
use crate::quantity::{Length, parse_force, parse_part};
use crate::statement::{StatementError, Table};

/// A strut on the dry side, from a post down to the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brace {
    /// Where it meets the post, as a part of the post's height from its foot.
    pub attachment: Ratio,
    /// Horizontal distance of its foot from the post.
    pub foot: Length,
    /// The thrust along it that the maker allows, if it is stated.
    pub capacity: Option<Force>,
    /// The anchors of its foot, if they are stated.
    pub anchors: Option<AnchorPattern>,
}

impl Brace {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["attachment", "foot", "capacity", "anchors"])?;
        Ok(Self {
            attachment: attachment(table)?,
            foot: field::dimension(
                table,
                "foot",
                "the horizontal distance of the brace's foot from the post",
            )?,
            capacity: capacity(table)?,
            anchors: table
                .table("anchors")?
                .map(|anchors| AnchorPattern::read(&anchors))
                .transpose()?,
        })
    }
}

fn attachment(table: &Table<'_, '_>) -> Result<Ratio, StatementError> {
    let accepted =
        "the part of the post's height that it meets the post at, such as \"2/3\" or \"0.8\"";
    let stated = table.required("attachment", accepted)?;
    let part = stated.read(parse_part)?;
    if part.value <= 0.0 {
        return Err(stated.refuse("at its foot a brace holds nothing", accepted));
    }
    Ok(part)
}

fn capacity(table: &Table<'_, '_>) -> Result<Option<Force>, StatementError> {
    let Some(stated) = table.optional("capacity")? else {
        return Ok(None);
    };
    let capacity = stated.read(parse_force)?;
    if capacity.value <= 0.0 {
        return Err(stated.refuse(
            "a brace carries more than nothing",
            "a force such as \"2500 lb\" or \"11 kN\"",
        ));
    }
    Ok(Some(capacity))
}
