//! `[[opening]]`: an opening that a proposal closes.

use super::ProposedLoad;
use super::file::{count, written};
use crate::quantity::{Elevation, Length, parse_elevation, parse_length};
use crate::site::WallKind;
use crate::statement::{Choice, StatementError, Table, Written};

/// An opening with its barrier as proposed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ProposedOpening {
    /// Its name, which is that of the site file.
    pub id: Option<String>,
    /// The lowest edge where water would enter.
    pub sill: Option<Written<Elevation>>,
    /// The ground before it.
    pub ground: Option<Written<Elevation>>,
    /// Height up to which it is kept dry.
    pub protection_height: Option<Written<Length>>,
    /// Height of the barrier.
    pub barrier_height: Option<Written<Length>>,
    /// The edge that both heights are measured from, where it is stated.
    pub measured_from: Option<MeasuredFrom>,
    /// How many planks lie on each other.
    pub planks: Option<u32>,
    /// What each plank adds to the height.
    pub plank_height: Option<Written<Length>>,
    /// All posts, those at the wall among them.
    pub posts: Option<u32>,
    /// Posts that stand free between planks.
    pub intermediate_posts: Option<u32>,
    /// The longest span of a plank.
    pub span: Option<Written<Length>>,
    /// The wall around it.
    pub wall: Option<WallKind>,
    /// What the water does to it.
    pub load: ProposedLoad,
}

/// The edge that a height is measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredFrom {
    /// The sill.
    Sill,
    /// The ground before it.
    Ground,
}

impl Choice for MeasuredFrom {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("sill", Self::Sill), ("ground", Self::Ground)];
}

impl ProposedOpening {
    pub(super) fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow_or_nearest(&[
            "id",
            "sill",
            "ground",
            "protection_height",
            "barrier_height",
            "measured_from",
            "planks",
            "plank_height",
            "posts",
            "intermediate_posts",
            "span",
            "wall",
            "load",
        ])?;
        Ok(Self {
            id: table
                .optional("id")?
                .map(|stated| stated.name())
                .transpose()?,
            sill: written(table, "sill", parse_elevation)?,
            ground: written(table, "ground", parse_elevation)?,
            protection_height: written(table, "protection_height", parse_length)?,
            barrier_height: written(table, "barrier_height", parse_length)?,
            measured_from: table.choice("measured_from")?,
            planks: count(table, "planks")?,
            plank_height: written(table, "plank_height", parse_length)?,
            posts: count(table, "posts")?,
            intermediate_posts: count(table, "intermediate_posts")?,
            span: written(table, "span", parse_length)?,
            wall: table.choice("wall")?,
            load: table
                .table("load")?
                .map(|load| ProposedLoad::read(&load))
                .transpose()?
                .unwrap_or_default(),
        })
    }
}
