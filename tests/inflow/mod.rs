//! Water that gets past: properties, and numbers that cannot be.

mod filling;
mod hostile;
mod pump;
mod seal;
mod weir;

use sillmark::quantity::unit::{Area, Length, meter, square_meter};

fn metres(number: f64) -> Length {
    Length::new::<meter>(number)
}

fn floor(square_metres: f64) -> Area {
    Area::new::<square_meter>(square_metres)
}
