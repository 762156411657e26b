//! The wall around an opening.

use std::fmt;

use crate::statement::Choice;

/// What a wall is built of, as far as limits on standing water ask.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WallKind {
    /// Reinforced concrete.
    ReinforcedConcrete,
    /// Masonry with steel in it.
    ReinforcedMasonry,
    /// Ordinary brick, block or stone.
    UnreinforcedMasonry,
    /// One leaf of brick before a frame or block wall.
    BrickVeneer,
    /// A panel without returns, ties or support at its top.
    UnsupportedPanel,
    /// Timber or metal studs with cladding.
    Frame,
}

impl Choice for WallKind {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("reinforced concrete", Self::ReinforcedConcrete),
        ("reinforced masonry", Self::ReinforcedMasonry),
        ("unreinforced masonry", Self::UnreinforcedMasonry),
        ("brick veneer", Self::BrickVeneer),
        ("unsupported panel", Self::UnsupportedPanel),
        ("frame", Self::Frame),
    ];
}

impl fmt::Display for WallKind {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(self.word())
    }
}
