mod case;
mod combination;
mod flow;
mod impact;
mod profile;
mod soil;
mod wave;

use sillmark::quantity::unit::{Length, Velocity, foot, foot_per_second};

fn feet(number: f64) -> Length {
    Length::new::<foot>(number)
}

fn feet_per_second(number: f64) -> Velocity {
    Velocity::new::<foot_per_second>(number)
}
