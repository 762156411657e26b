//! What barriers have to meet at a place: water, loads, what they are fixed to, the rooms
//! behind them and the people who put them up.

use super::file::{fitting, floor, inside, jamb, loads, water};
use super::{AnchorSetting, FittingStatement, InsideStatement, LoadStatement, WaterConditions};
use crate::statement::{Document, StatementError, Table};

/// The tables `[water]`, `[loads]`, `[floor]`, `[jamb]`, `[inside]` and `[fitting]`, as far as
/// somebody states them: of a site file, or of a file of their own for a barrier without a
/// building.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Conditions {
    /// The water, as far as it is known.
    pub water: WaterConditions,
    /// What barriers are designed for.
    pub loads: LoadStatement,
    /// What the anchors under base plates are set in; `None` where nothing is stated.
    pub floor: Option<AnchorSetting>,
    /// What the anchors up the jambs are set in; `None` where nothing is stated.
    pub jamb: Option<AnchorSetting>,
    /// The rooms behind the barriers.
    pub inside: InsideStatement,
    /// The people who put the barriers up.
    pub fitting: FittingStatement,
}

impl Conditions {
    /// The names of the tables, in the order to offer them.
    pub const TABLES: [&'static str; 6] = ["water", "loads", "floor", "jamb", "inside", "fitting"];

    /// Reads a file with these tables and nothing else; `file` is the name that messages use.
    ///
    /// # Errors
    /// [`StatementError`] naming file, line, field, value and what would be accepted.
    ///
    /// ```
    /// use sillmark::load::Debris;
    /// use sillmark::site::Conditions;
    /// let conditions = Conditions::from_toml("yard.toml", "[loads]\ndebris = \"normal\"\n")?;
    /// assert_eq!(conditions.loads.debris, Some(Debris::Normal));
    /// assert_eq!(conditions.floor, None);
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn from_toml(file: &str, text: &str) -> Result<Self, StatementError> {
        let document = Document::parse(file, text)?;
        let root = document.root();
        root.allow(&Self::TABLES)?;
        Self::read(&root)
    }

    /// Reads the tables out of a document that may hold others; a table that is absent leaves
    /// everything in it unstated.
    ///
    /// # Errors
    /// [`StatementError`] naming the field at fault.
    pub fn read(root: &Table<'_, '_>) -> Result<Self, StatementError> {
        Ok(Self {
            water: water(root)?,
            loads: loads(root)?,
            floor: floor(root)?,
            jamb: jamb(root)?,
            inside: inside(root)?,
            fitting: fitting(root)?,
        })
    }
}
