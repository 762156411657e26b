//! How a post is fixed to a wall along its height.

use super::field;
use crate::quantity::Length;
use crate::quantity::unit::millimeter;
use crate::statement::{StatementError, Table};

/// Anchors one above the other up a post that a wall holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallAnchors {
    /// Outer diameter of an anchor.
    pub diameter: Length,
    /// Height of the lowest over the post's foot; the uppermost is no farther from its top
    /// than that, so that a lower post has fewer of them.
    pub first: Length,
    /// From anchor to anchor; the last two may stand closer.
    pub spacing: Length,
}

impl WallAnchors {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["diameter", "first", "spacing"])?;
        Ok(Self {
            diameter: field::dimension(table, "diameter", "the anchors' outer diameter")?,
            first: field::dimension(
                table,
                "first",
                "the height of the lowest anchor over the post's foot",
            )?,
            spacing: spacing(table)?,
        })
    }

    /// Their heights up a post of a height: the lowest, one every spacing, and one so far
    /// from the top as the lowest is from the foot. A post too low for two has one in its
    /// middle.
    ///
    /// ```
    /// use sillmark::barrier::WallAnchors;
    /// use sillmark::quantity::unit::{Length, inch};
    /// let inches = Length::new::<inch>;
    /// let anchors = WallAnchors { diameter: inches(0.375), first: inches(2.0), spacing: inches(12.0) };
    /// let heights = anchors.heights(inches(30.0));
    /// assert_eq!(heights.len(), 4);
    /// for (height, stands) in heights.iter().zip([2.0, 14.0, 26.0, 28.0]) {
    ///     assert!((height.get::<inch>() - stands).abs() < 1e-9);
    /// }
    /// assert_eq!(anchors.heights(inches(3.0)), [inches(3.0) / 2.0]);
    /// ```
    #[must_use]
    pub fn heights(&self, post: Length) -> Vec<Length> {
        let last = post - self.first;
        if last <= self.first + self.diameter {
            return vec![post / 2.0];
        }
        let mut heights = Vec::new();
        let mut height = self.first;
        // No anchor stands in the place of another, nor does rounding set it there.
        while height + self.diameter < last {
            heights.push(height);
            height += self.spacing;
        }
        heights.push(last);
        heights
    }
}

/// Anchors closer than this are a slip of a unit (common practice, no source).
const CLOSEST_MILLIMETRES: f64 = 20.0;

fn spacing(table: &Table<'_, '_>) -> Result<Length, StatementError> {
    let spacing = field::dimension(table, "spacing", "the distance from anchor to anchor")?;
    if spacing < Length::new::<millimeter>(CLOSEST_MILLIMETRES) {
        let stated = table.required("spacing", "a length")?;
        return Err(stated.refuse(
            "no anchors stand that close",
            "at least \"20 mm\" (0.79 in)",
        ));
    }
    Ok(spacing)
}
