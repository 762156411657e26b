//! Public services: one request, and what hostile servers do to it.

mod addresses;
mod cache;
mod connection;
mod faults;
pub(crate) mod features;
mod fetch;
mod keys;
mod proxy;
mod server;
