//! The summary of a portfolio for its readers: as text, as JSON and as a page.

mod cautions;
mod json;
mod page;
mod run_facts;
mod sentences;
mod text;
mod words;

pub use json::{JsonPortfolioSummary, json, portfolio_summary_schema};
pub use page::page;
pub use run_facts::RunFacts;
pub use text::text;
