//! The review of a proposal for its readers: as text, as JSON and as a page.

mod json;
mod page;
mod text;
mod words;

pub use json::{JsonReview, json, review_schema};
pub use page::page;
pub use text::text;
