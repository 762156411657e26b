//! How much water a wall or a barrier takes before an engineer has to look.

use crate::quantity::{Length, Velocity, parse_length, parse_velocity};
use crate::site::WallKind;
use crate::statement::{Choice, Citation, Document, StatementError, Table};

/// The limits of `data/limits.toml`.
#[derive(Clone, Debug, PartialEq)]
pub struct Limits {
    walls: Vec<WallLimit>,
    /// Limit where nobody says what the wall is.
    pub unstated_wall: WallLimit,
    /// Fastest water for a barrier without a licensed design.
    pub velocity: Velocity,
    /// Where the velocity stands.
    pub velocity_citation: Citation,
}

/// The greatest depth of water on one kind of wall.
#[derive(Clone, Debug, PartialEq)]
pub struct WallLimit {
    /// The wall; `None` for the limit where it is not stated.
    pub kind: Option<WallKind>,
    /// The depth; `None` where no common limit is known, so that every depth needs an engineer.
    pub depth: Option<Length>,
    /// Where it stands.
    pub citation: Citation,
}

const LIMITS: &str = include_str!("../../data/limits.toml");

impl Limits {
    /// The limits that ship with the project.
    ///
    /// # Errors
    /// [`StatementError`] if our own data file is broken; a test reads it.
    ///
    /// ```
    /// use sillmark::quantity::unit::foot;
    /// use sillmark::site::WallKind;
    /// use sillmark::verdict::Limits;
    /// let limits = Limits::shipped()?;
    /// let masonry = limits.wall(Some(WallKind::UnreinforcedMasonry));
    /// assert_eq!(masonry.depth.map(|depth| depth.get::<foot>()), Some(3.0));
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn shipped() -> Result<Self, StatementError> {
        let document = Document::parse("data/limits.toml", LIMITS)?;
        let root = document.root();
        root.allow(&["wall", "velocity", "unstated_wall"])?;
        let table = |key| root.table(key)?.ok_or_else(|| root.missing(key, "a table"));
        let velocity = table("velocity")?;
        Ok(Self {
            walls: root
                .tables("wall")?
                .iter()
                .map(WallLimit::read)
                .collect::<Result<_, _>>()?,
            unstated_wall: WallLimit::read(&table("unstated_wall")?)?,
            velocity: velocity
                .required("limit", "a speed")?
                .read(parse_velocity)?,
            velocity_citation: Citation::read(&velocity)?,
        })
    }

    /// The limit for a wall.
    #[must_use]
    pub fn wall(&self, kind: Option<WallKind>) -> &WallLimit {
        self.walls
            .iter()
            .find(|limit| kind.is_some() && limit.kind == kind)
            .unwrap_or(&self.unstated_wall)
    }

    /// Every wall limit, in the order of the file.
    pub fn walls(&self) -> impl Iterator<Item = &WallLimit> {
        self.walls
            .iter()
            .chain(std::iter::once(&self.unstated_wall))
    }
}

impl WallLimit {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["kind", "limit", "source", "confidence"])?;
        Ok(Self {
            kind: table
                .optional("kind")?
                .map(|stated| stated.choose())
                .transpose()?,
            depth: table
                .optional("limit")?
                .map(|stated| stated.read(parse_length))
                .transpose()?,
            citation: Citation::read(table)?,
        })
    }

    /// The wall's name for a sentence.
    #[must_use]
    pub fn wall_name(&self) -> &'static str {
        self.kind.map_or("a wall that is not stated", Choice::word)
    }
}
