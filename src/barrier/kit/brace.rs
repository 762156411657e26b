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
    /// The thrust along it that the maker allows, if it is stated. The force is compared with
    /// the load factor of the post's checks: 1.5 where waves break, with allowable stresses.
    pub capacity: Option<Force>,
    /// The anchors of its foot, if they are stated.
    pub anchors: Option<AnchorPattern>,
}

impl Brace {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["attachment", "foot", "capacity", "anchors"])?;
        Ok(Self {
            attachment: field::positive(
                table,
                "attachment",
                "the part of the post's height that it meets the post at, such as \"2/3\" or \"0.8\"",
                parse_part,
            )?,
            foot: field::dimension(
                table,
                "foot",
                "the horizontal distance of the brace's foot from the post",
            )?,
            capacity: field::optional_positive(
                table,
                "capacity",
                "a force such as \"2500 lb\" or \"11 kN\"",
                parse_force,
            )?,
            anchors: table
                .table("anchors")?
                .map(|anchors| AnchorPattern::read(&anchors))
                .transpose()?,
        })
    }
}
