//! Quantities as people write them, and as nobody should.

mod hostile;
mod measures;
mod round_trip;
