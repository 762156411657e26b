//! Many buildings: a table in, a table out, each row through the same [`assess`](crate::assess)
//! as one building.
//!
//! [`run()`] reads batches of rows, reads the maps in the order of the terrain's tiles and
//! answers in the order of the input, on all cores. Memory is set by the batch and the tiles
//! that are kept, not by the number of rows nor by the size of the terrain. The answer to a row
//! depends on that row and the maps alone, so that the results of a table's parts, one after
//! the other, are the result of the whole.
//!
//! Rows that cannot be read are handed out with line, field, value and reason; they stop
//! nothing.

mod answer;
mod answering;
mod chunk;
mod columns;
mod crew;
mod error;
mod job;
mod kept_row;
mod order;
mod parsing;
mod plan;
mod rejects;
mod role;
mod room;
mod row;
mod row_answer;
mod row_fault;
mod row_place;
mod row_reader;
mod run;
mod same_ids;
mod saving;
mod site_of_row;
mod stored;
pub mod summary;
mod surveying;
mod unfinished;
mod worker;
mod zones;

pub use answer::{ResultShape, answer_columns, coordinate_names};
pub(crate) use answer::{caution_codes, push_opening};
pub use chunk::RowFault;
pub use columns::{Columns, Coordinates, Mapping, StatedForAll};
pub use crew::{Maps, OpenOwn};
pub use error::RunError;
pub use job::Answers;
pub use plan::{Own, Plan};
pub use rejects::{reject_lines, rejects_header};
pub use role::Role;
pub use row_place::{ToPlace, row_place};
pub use run::{BLOCK_BYTES, Progress, Sink, Watch, run};
pub use same_ids::{IdAt, Repeated, SameIds, id_hash};
pub use unfinished::{Fingerprint, Unfinished};
pub use zones::ReadZones;
