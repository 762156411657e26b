//! A terrain model by its address: the part that is needed, and nothing else.

mod answers;
mod fixture;
mod hostile;
mod kept;
mod layouts;
mod places;
mod real;
mod server;
mod share;
mod voids;
