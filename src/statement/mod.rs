//! What somebody wrote, and where: every value keeps its file and line until it is understood.
//!
//! A site file, a kit, a freeboard rule or an option on the command line is read in two
//! steps. First it becomes [`Stated`] text with its [`Place`]; then the room that knows the
//! meaning reads it. Whatever goes wrong on the way is a [`StatementError`], which names the
//! place, the field, the value and what would have been accepted.
//!
//! ```
//! use sillmark::quantity::parse_length;
//! use sillmark::statement::Document;
//!
//! let document = Document::parse("gate.toml", "width = \"-36 in\"\n")?;
//! let width = document.root().required("width", "a length")?;
//! assert_eq!(
//!     width.read(parse_length).unwrap_err().to_string(),
//!     "gate.toml, line 1: width \"-36 in\": it is negative; accepted: a length with its unit, \
//!      such as \"36 in\", \"3 ft 4 1/2 in\" or \"0.91 m\""
//! );
//! # Ok::<(), sillmark::statement::StatementError>(())
//! ```

mod choice;
mod citation;
mod document;
mod error;
mod list;
mod nearest;
mod place;
mod printable;
mod stated;
mod written;

pub use choice::Choice;
pub use citation::{Citation, Confidence};
pub use document::{Document, Table};
pub use error::StatementError;
pub use list::StatedPair;
pub use nearest::nearest;
pub use place::{Place, line_of};
pub use printable::printable;
pub use stated::{Stated, Unreadable};
pub use written::{InSi, Written};
