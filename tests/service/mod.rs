//! Public services: one request, and what hostile servers do to it.

mod addresses;
mod cache;
mod fetch;
mod server;
