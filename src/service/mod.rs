//! Public services over HTTP: features and terrain that a user names by address.
//!
//! A [`Fetcher`] carries out one [`Request`] at a time within [`Limits`]: it tries again where
//! a server is busy or a connection breaks, and ends in a clear [`ServiceError`] where a server
//! sends too much, too slowly, the wrong length, or leads elsewhere than a public address may
//! lead. Nothing is fetched but what the user names, and what that leads to.

mod address;
mod budget;
mod cache;
mod connection;
mod error;
mod features;
mod fetch;
mod file_parts;
mod host;
mod known;
mod limits;
mod secret;

pub use address::Address;
pub use cache::{Cache, Entry};
pub use connection::{Answers, Connection};
pub use error::ServiceError;
pub use features::{
    DegreeBox, LayerAddress, ServedFeature, ServedLayer, features, features_blocking,
};
pub use fetch::{Answer, Edition, Fetcher, Held, Part, PartAnswer, Request, Validators};
pub use file_parts::FileParts;
pub use host::is_private;
pub use known::{KnownService, ServiceKind, known_services};
pub use limits::Limits;
