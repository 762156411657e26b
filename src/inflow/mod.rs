//! Water that gets past a barrier, the pump that keeps up with it, and how fast a room fills.
//!
//! Each way in gives a [`Finding`]: an [`InflowPart`] with its flow, formula and source, or
//! the reason why it is not counted. An [`Inflow`] adds them up and keeps what was not
//! stated: where something is missing, every sum is "at least".
//!
//! ```
//! use sillmark::inflow::{Gap, Inflow, Way, gap_flow, pump_demand, rain_flow};
//! use sillmark::quantity::unit::{
//!     Area, Length, Velocity, foot, foot_per_second, inch, square_foot, us_gallon_per_minute,
//! };
//!
//! let gap = Gap {
//!     width: Length::new::<inch>(36.0),
//!     from: Length::new::<inch>(0.0),
//!     to: Length::new::<inch>(0.01),
//! };
//! let inch_an_hour = Velocity::new::<foot_per_second>(1.0 / 12.0 / 3600.0);
//! let mut inflow = Inflow::default();
//! inflow.add(gap_flow(&gap, Length::new::<foot>(2.0), None)?);
//! inflow.add(rain_flow(inch_an_hour, Area::new::<square_foot>(100.0), None)?);
//! let pump = pump_demand(&inflow, Some(1.5))?;
//! assert!((pump.capacity.get::<us_gallon_per_minute>() - 13.02).abs() < 0.005);
//! assert!(inflow.parts.iter().any(|part| part.way == Way::Rain));
//! # Ok::<(), sillmark::quantity::Impossible>(())
//! ```
//!
//! No leakage rate stands here as a default: rates are stated by makers, and a limit on
//! leakage cannot be computed from a free gap (see [`gap_flow`]).

mod critical_depth;
mod filling;
mod gap;
mod impermeable;
mod notch;
mod part;
mod pump;
mod rain;
mod rising;
mod seal;
mod seepage;
mod weir;
mod weir_coefficient;

pub use critical_depth::critical_depth;
pub use filling::{Filling, FillingTime, time_to_fill};
pub use gap::{Coefficient, Gap, ORIFICE_COEFFICIENT, gap_flow, small_gap_flow};
pub use impermeable::{
    Impermeability, ImpermeableVerdict, impermeability, impermeable_citation, impermeable_depth,
    impermeable_period,
};
pub use notch::{NotchStep, stepped_notch};
pub use part::{Finding, Inflow, InflowPart, Missing, NotCounted, Reason, Way};
pub use pump::{PumpDemand, pump_demand};
pub use rain::rain_flow;
pub use rising::{FillingCase, RisingWater, TIME_TOLERANCE, time_to_fill_while_rising};
pub use seal::{StatedLeakage, WettedSeal, seal_leakage};
pub use seepage::{RememberedSeepage, seepage_flow};
pub use weir::{Crest, overtopping, weir_flow};
pub use weir_coefficient::WeirCoefficient;
