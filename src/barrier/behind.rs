//! What a building's barriers together ask of a pump and of people.

use super::{BarrierAnswer, DesignError, Fitting, FittingError, InTime, Upright};
use crate::inflow::{
    Filling, Finding, Impermeability, Inflow, Missing, NotCounted, PumpDemand, Reason, Way,
    impermeability, pump_demand, rain_flow, time_to_fill,
};
use crate::quantity::unit::Time;
use crate::site::{FittingStatement, InsideStatement};

/// What gets past all barriers of a building at once, and whether they are up in time.
#[derive(Clone, Debug, PartialEq)]
pub struct BehindBarriers {
    /// Leakage of every barrier, and the rain inside.
    pub inflow: Inflow,
    /// What a pump has to carry.
    pub pump: PumpDemand,
    /// Without a pump, when the water inside reaches the stated depth; `None` where floor or
    /// depth is not stated.
    pub filling: Option<Filling>,
    /// The leakage held against 4 in of water in 24 hours; `None` where no floor is stated.
    /// Rain is not in it.
    pub impermeable: Option<Impermeability>,
    /// How long the fitting takes; `None` where nobody stated how long a piece takes.
    pub fitting_time: Option<Time>,
    /// The fitting held against the warning.
    pub in_time: InTime,
}

impl BehindBarriers {
    /// All barriers of a building; `None` where there is none.
    ///
    /// # Errors
    /// [`DesignError`] for numbers that cannot be.
    pub fn of(
        barriers: &[&BarrierAnswer],
        inside: &InsideStatement,
        fitting: &FittingStatement,
        warning: Option<Time>,
    ) -> Result<Option<Self>, DesignError> {
        if barriers.is_empty() {
            return Ok(None);
        }
        let mut inflow = Inflow::default();
        for barrier in barriers {
            inflow.join(&barrier.inflow);
        }
        let impermeable = inside
            .floor_area
            .map(|floor| impermeability(&inflow, floor, None))
            .transpose()?;
        if let Some(rain) = inside.rain {
            inflow.add(match inside.rain_area.or(inside.floor_area) {
                Some(area) => {
                    Finding::from(rain_flow(rain, area, inside.runoff.map(|part| part.value))?)
                }
                None => Finding::NotCounted(NotCounted {
                    way: Way::Rain,
                    reason: Reason::NotStated(Missing::RainArea),
                }),
            });
        }
        let filling = match (inside.floor_area, inside.greatest_depth) {
            (Some(floor), Some(depth)) => Some(time_to_fill(&inflow, floor, depth)?),
            _ => None,
        };
        let work = work(barriers, fitting, warning);
        let fitting_time = match work.duration() {
            Ok(time) => Some(time),
            Err(FittingError::NotStated(_)) => None,
            Err(error) => return Err(error.into()),
        };
        Ok(Some(Self {
            pump: pump_demand(&inflow, inside.pump_margin)?,
            inflow,
            filling,
            impermeable,
            fitting_time,
            in_time: work.in_time()?,
        }))
    }
}

/// The pieces to fit. End posts stay on the wall; the others are taken away with the planks.
fn work(barriers: &[&BarrierAnswer], fitting: &FittingStatement, warning: Option<Time>) -> Fitting {
    let designs = || barriers.iter().map(|barrier| &barrier.design);
    let planks = designs().map(|design| design.stack.count * design.spans());
    let posts =
        designs().map(|design| design.count(Upright::Intermediate) + design.count(Upright::Corner));
    Fitting {
        planks: planks.sum(),
        time_a_plank: fitting.time_a_plank,
        posts: posts.sum(),
        time_a_post: fitting.time_a_post,
        parties: fitting.parties.unwrap_or(1),
        warning,
        twelve_hour_rule: true,
    }
}
