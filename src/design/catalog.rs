//! The rules that ship with the project.

use super::Rule;
use crate::statement::{Document, StatementError};

const RULES: &str = include_str!("../../data/rules.toml");

/// All rules of `data/rules.toml`, in its order.
///
/// # Errors
/// [`StatementError`] if our own data file is broken; a test reads it.
///
/// ```
/// let rules = sillmark::design::rules()?;
/// assert!(rules.iter().any(|rule| rule.id == "us-nfip-floodproofing"));
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
pub fn rules() -> Result<Vec<Rule>, StatementError> {
    let document = Document::parse("data/rules.toml", RULES)?;
    document.root().allow(&["rule"])?;
    document
        .root()
        .tables("rule")?
        .iter()
        .map(Rule::read)
        .collect()
}
