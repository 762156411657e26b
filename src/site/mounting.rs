//! What the user asks of a barrier at an opening.

use crate::statement::Choice;

/// Where the end posts of a barrier stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mount {
    /// Within the reveal, with their backs to the jambs.
    Inside,
    /// On the face of the wall beside the opening.
    Outside,
}

impl Choice for Mount {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("inside", Self::Inside), ("outside", Self::Outside)];
}

/// On which side of a barrier a brace may stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BraceSide {
    /// Behind the barrier: a strut that the water presses.
    Dry,
    /// Before the barrier, where nothing may stand behind it: a tie that the water pulls.
    Water,
}

impl Choice for BraceSide {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("dry side", Self::Dry), ("water side", Self::Water)];
}
