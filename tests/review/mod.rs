//! An assessment held against a proposal: each finding, and the case beside it that is none.

mod datums;
mod edge;
mod fixture;
mod freeboard;
mod hostile;
mod kit;
mod levels;
mod loads;
mod overall;
mod people;
mod report;
mod schedule;
mod units;
