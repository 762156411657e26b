//! Quantities as people write them, and as nobody should.

mod hostile;
mod round_trip;
