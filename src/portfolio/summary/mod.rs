//! What is counted while the rows of a portfolio go by, in a size that does not grow with them.
//!
//! Every part is exact: summaries of two parts of a table, merged in any order, equal the
//! summary of the whole. So a run may be split over workers, or stopped and taken up again from
//! a [`Summary`] that was written down.

mod bounded;
mod code_tally;
mod height_bins;
mod highest;
mod lattice;
mod rounded;
mod row;
mod rows;
mod verdict_counts;

pub use bounded::Bounded;
pub use code_tally::CodeTally;
pub use height_bins::{HeightBin, HeightBins};
pub use highest::{Highest, RankedRow};
pub use lattice::{Cell, Lattice};
pub use row::RowFigures;
pub use rows::{RejectKind, Summary};
pub use verdict_counts::VerdictCounts;
