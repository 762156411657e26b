//! placeholder until merge
mod text;
pub use text::{csv_fixed, csv_text};
/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ColumnKind { /// t
 Text, /// n
 Number, /// w
 Whole }
/// A column
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutColumn { /// name
 pub name: String, /// kind
 pub kind: ColumnKind }
