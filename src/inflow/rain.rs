//! Rain that falls inside the protected ring.

use super::{InflowPart, Missing, Way};
use crate::quantity::unit::Area;
use crate::quantity::{Impossible, Velocity, not_negative};
use crate::statement::{Citation, Confidence};

/// Rain on an area that drains to the pump, Q = c·i·A. Where the runoff coefficient c is not
/// stated, all of it is taken to arrive (1.0, the most there can be).
///
/// In gallons a minute with i in inches an hour and A in square feet the factor is 0.0104;
/// FEMA P-259 is remembered to print it as 0.01 (from memory).
///
/// # Errors
/// [`Impossible`] for an intensity or area that cannot be, and a coefficient above 1.
///
/// ```
/// use sillmark::inflow::rain_flow;
/// use sillmark::quantity::unit::{Area, Velocity, foot_per_second, square_foot, us_gallon_per_minute};
/// let inch_an_hour = Velocity::new::<foot_per_second>(1.0 / 12.0 / 3600.0);
/// let part = rain_flow(inch_an_hour, Area::new::<square_foot>(1000.0), Some(0.9))?;
/// assert!((part.flow.get::<us_gallon_per_minute>() - 9.35).abs() < 0.005);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn rain_flow(
    intensity: Velocity,
    area: Area,
    runoff: Option<f64>,
) -> Result<InflowPart, Impossible> {
    not_negative("rain intensity", intensity.value, "m/s")?;
    not_negative("area that drains to the pump", area.value, "m²")?;
    let coefficient = runoff.unwrap_or(1.0);
    not_negative("runoff coefficient", coefficient, "")?;
    if coefficient > 1.0 {
        return Err(Impossible::Outside {
            what: "runoff coefficient",
            value: coefficient,
            unit: "",
            accepted: "0 to 1".into(),
        });
    }
    let part = InflowPart {
        way: Way::Rain,
        flow: area * intensity * coefficient,
        method: "Q = c·i·A",
        citation: Citation {
            source: "rational formula, such as facets.sdsu.edu (CIVE445 midterm 2)".into(),
            confidence: Confidence::Seen,
        },
        not_stated: match runoff {
            Some(_) => Vec::new(),
            None => vec![Missing::RunoffCoefficient],
        },
    };
    part.checked()
}
