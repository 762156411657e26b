//! Opening and reading whole.

mod complete;
