//! Choosing a schema on a command line.

use std::path::PathBuf;

use super::Schema;
use crate::quantity::parse_annual_chance;
use crate::statement::{Stated, StatementError};

/// The schema that somebody names: one that ships with the project, or a file of their own,
/// which is for the caller to read and to give to [`Schema::from_toml`].
#[derive(Clone, Debug)]
pub enum SchemaChoice {
    /// One of ours.
    Shipped(Box<Schema>),
    /// A TOML file.
    File(PathBuf),
}

impl SchemaChoice {
    /// What is accepted.
    pub const ACCEPTED: &'static str = "nfhl, england, extent:CHANCE such as extent:1% for a layer whose every polygon is flooded with that annual chance, or the path of a mapping file that ends in .toml";

    /// Reads `nfhl`, `england`, `extent:1%` or the path of a file; case does not matter but
    /// in the path.
    ///
    /// # Errors
    /// [`StatementError`] with what is accepted.
    ///
    /// ```
    /// use sillmark::hazard::SchemaChoice;
    /// use sillmark::quantity::AnnualChance;
    /// use sillmark::statement::{Place, Stated};
    /// let option = |text| Stated::new("zones schema", text, Place::Option("option --zones-schema".into()));
    /// let SchemaChoice::Shipped(schema) = SchemaChoice::read(&option("extent:1 in 200"))? else { unreachable!() };
    /// assert_eq!(Some(schema.annual_chance), AnnualChance::new(0.005));
    /// assert!(matches!(SchemaChoice::read(&option("maps/county.toml"))?, SchemaChoice::File(_)));
    /// assert!(SchemaChoice::read(&option("englnd")).is_err());
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn read(stated: &Stated<'_>) -> Result<Self, StatementError> {
        let text = stated.text().trim();
        let lower = text.to_ascii_lowercase();
        let path = PathBuf::from(text);
        if path
            .extension()
            .is_some_and(|ending| ending.eq_ignore_ascii_case("toml"))
        {
            return Ok(Self::File(path));
        }
        let schema = match lower.split_once(':') {
            None if lower == "nfhl" => Schema::nfhl()?,
            None if lower == "england" => Schema::england()?,
            Some(("extent", chance)) => {
                let chance = parse_annual_chance(chance)
                    .map_err(|error| stated.refuse(error.problem(), Self::ACCEPTED))?;
                Schema::extent(chance)?
            }
            _ if lower == "extent" => {
                return Err(stated.refuse("it does not say the annual chance", Self::ACCEPTED));
            }
            _ => {
                return Err(stated.refuse("there is no such schema", Self::ACCEPTED));
            }
        };
        Ok(Self::Shipped(Box::new(schema)))
    }
}
