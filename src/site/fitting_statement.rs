//! What is stated of the people who put the barriers up.

use crate::quantity::unit::{Mass, Time};

/// `[fitting]` of a site file, as far as somebody states it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FittingStatement {
    /// Time that one party takes for one plank.
    pub time_a_plank: Option<Time>,
    /// Time that one party takes for one post.
    pub time_a_post: Option<Time>,
    /// How many parties work at the same time.
    pub parties: Option<u32>,
    /// What one person may lift.
    pub lift: Option<Mass>,
}
