//! Public services: one request, and what hostile servers do to it.

mod addresses;
mod cache;
mod connection;
pub(crate) mod features;
mod fetch;
mod server;
