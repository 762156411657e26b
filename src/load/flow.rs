//! Flowing water against an upright surface.

use super::error::{coefficient, height, positive, speed};
use super::reference::{from_memory, seen, stated};
use super::{DragCoefficient, DragRow, LoadError, PressureProfile, Salinity, standard_gravity};
use crate::quantity::unit::foot_per_second;
use crate::quantity::{Length, Pressure, Velocity};
use crate::statement::Citation;

/// Water that flows against a surface, on top of the load of the same water standing still.
///
/// Up to 10 ft/s the velocity head dh = a·V²/(2g) presses as γ·dh, evenly over the wetted
/// height above the ground; a is 1.25 or more and g 32.2 ft/s². Faster water drags with
/// Cd·ρ·V²/2 over the same height, so that its force acts at mid depth. Both load the face
/// that the water meets: faces along the flow or behind it take still water alone.
///
/// Sources disagree on where still water ends: the code that the head is taken from calls
/// water still below 5 ft/s (Simi Valley Municipal Code 7-5.702), an Illinois guide
/// calls less than 3 ft/s negligible (Colorado Water Conservation Board, document 54459
/// p. 17), and ASCE 7 lets the head stand for the flow up to 10 ft/s. No speed is left out
/// here, since the head of slow water is small by itself: 0.17 ft at 3 ft/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flow {
    /// Speed of the water.
    pub velocity: Velocity,
    /// Height of the ground over the sill, negative where it lies lower.
    pub ground: Length,
    /// Height of the water surface over the sill.
    pub surface: Length,
    /// Fresh or salt.
    pub salinity: Salinity,
    /// The coefficient a of the velocity head, from 1.25 to 10.
    pub head_coefficient: f64,
    /// Width of the wall across the flow; only drag depends on it, and takes its greatest
    /// coefficient without it.
    pub wall_width: Option<Length>,
}

/// What [`Flow`] loads a surface with.
#[derive(Clone, Debug, PartialEq)]
pub struct FlowLoad {
    /// How it was found.
    pub method: FlowMethod,
    /// The pressure, the same over the wetted height.
    pub pressure: Pressure,
    /// The pressure from the ground, or the sill's surroundings where that is higher, to the
    /// water surface.
    pub profile: PressureProfile,
    /// Where method and coefficients stand.
    pub references: Vec<Citation>,
}

/// How the load of flowing water was found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FlowMethod {
    /// Velocity head, up to 10 ft/s.
    VelocityHead {
        /// dh = a·V²/(2g).
        head: Length,
        /// The coefficient a.
        coefficient: f64,
    },
    /// Drag, above 10 ft/s.
    Drag(DragCoefficient),
    /// The water does not reach over the ground, so that none flows against the surface.
    NoWater,
}

/// The least coefficient a of the velocity head.
pub const LEAST_HEAD_COEFFICIENT: f64 = 1.25;

/// A coefficient beyond this is a slip: a jet on a flat plate has 2.
const GREATEST_HEAD_COEFFICIENT: f64 = 10.0;

/// The speed up to which the velocity head may stand for the flow, 10 ft/s.
#[must_use]
pub fn fastest_for_velocity_head() -> Velocity {
    Velocity::new::<foot_per_second>(10.0)
}

/// Velocity head dh = a·V²/(2g) with g = 32.2 ft/s².
///
/// Reference: Simi Valley Municipal Code 7-5.703, which carries the text of the Corps of
/// Engineers' flood-proofing regulations; ASCE 7-16 section 5.4.3 (from memory).
///
/// # Errors
/// [`LoadError`] for a speed that is negative or above 10 ft/s, and for a below 1.25.
///
/// ```
/// use sillmark::load::velocity_head;
/// use sillmark::quantity::unit::{Velocity, foot, foot_per_second};
/// let head = velocity_head(Velocity::new::<foot_per_second>(5.0), 1.25)?;
/// assert!((head.get::<foot>() - 0.4852).abs() < 1e-4);
/// assert!(velocity_head(Velocity::new::<foot_per_second>(5.0), 1.0).is_err());
/// # Ok::<(), sillmark::load::LoadError>(())
/// ```
pub fn velocity_head(velocity: Velocity, head_coefficient: f64) -> Result<Length, LoadError> {
    let velocity = speed(velocity)?;
    if velocity > fastest_for_velocity_head() {
        return Err(LoadError::TooFastForHead(velocity));
    }
    let a = accepted_head_coefficient(head_coefficient)?;
    Ok(velocity * velocity * a / (standard_gravity() * 2.0))
}

fn accepted_head_coefficient(a: f64) -> Result<f64, LoadError> {
    coefficient(
        "coefficient a of the velocity head",
        a,
        LEAST_HEAD_COEFFICIENT..=GREATEST_HEAD_COEFFICIENT,
        "a number from 1.25 to 10",
    )
}

impl Flow {
    /// The load, with the method that was used.
    ///
    /// # Errors
    /// [`LoadError`] for numbers that are none, and for a below 1.25.
    ///
    /// ```
    /// use sillmark::load::{Flow, FlowMethod, LEAST_HEAD_COEFFICIENT, Salinity};
    /// use sillmark::quantity::unit::{Length, Velocity, foot, foot_per_second, pound_per_square_foot};
    /// let flow = Flow {
    ///     velocity: Velocity::new::<foot_per_second>(6.75),
    ///     ground: Length::new::<foot>(0.0),
    ///     surface: Length::new::<foot>(3.25),
    ///     salinity: Salinity::Salt,
    ///     head_coefficient: LEAST_HEAD_COEFFICIENT,
    ///     wall_width: None,
    /// };
    /// let load = flow.load()?;
    /// assert!(matches!(load.method, FlowMethod::VelocityHead { .. }));
    /// assert!((load.pressure.get::<pound_per_square_foot>() - 56.6).abs() < 0.01);
    /// # Ok::<(), sillmark::load::LoadError>(())
    /// ```
    pub fn load(&self) -> Result<FlowLoad, LoadError> {
        let velocity = speed(self.velocity)?;
        accepted_head_coefficient(self.head_coefficient)?;
        let depth =
            height("water surface", self.surface)? - height("ground at the wall", self.ground)?;
        if depth <= Length::default() {
            return Ok(FlowLoad {
                method: FlowMethod::NoWater,
                pressure: Pressure::default(),
                profile: PressureProfile::default(),
                references: Vec::new(),
            });
        }
        if velocity <= fastest_for_velocity_head() {
            self.by_velocity_head()
        } else {
            self.by_drag(depth)
        }
    }

    fn by_velocity_head(&self) -> Result<FlowLoad, LoadError> {
        let head = velocity_head(self.velocity, self.head_coefficient)?;
        let pressure = self.salinity.specific_weight() * head;
        let a = if self.head_coefficient > LEAST_HEAD_COEFFICIENT {
            stated("coefficient a of the velocity head, above the least of 1.25")
        } else {
            seen("Simi Valley Municipal Code 7-5.703: a of at least 1.25, the least is used")
        };
        let method = FlowMethod::VelocityHead {
            head,
            coefficient: self.head_coefficient,
        };
        let formula = seen(
            "Simi Valley Municipal Code 7-5.703: velocity head a·V²/(2g) up to 10 ft/s, above \
             ground on the upstream face",
        );
        Ok(self.spread(method, pressure, vec![formula, a]))
    }

    fn by_drag(&self, depth: Length) -> Result<FlowLoad, LoadError> {
        let drag = match self.wall_width {
            Some(width) => DragCoefficient::of(positive("width of the wall", width)?, depth),
            None => DragCoefficient::of_unknown_width(),
        };
        let pressure = self.salinity.density() * drag.value * self.velocity * self.velocity / 2.0;
        let mut references = vec![
            seen("FEMA P-55 (2011) vol. II Eq. 8.8: drag Cd·ρ·V²/2 at mid depth"),
            from_memory("FEMA P-55 (2011) vol. II, notes to Eq. 8.8: 1.94 and 1.99 slug/ft³"),
        ];
        references.push(match drag.found {
            DragRow::Within => from_memory("FEMA P-55 (2011) vol. II table 8-2: Cd by width/depth"),
            DragRow::BetweenBands => from_memory(
                "FEMA P-55 (2011) vol. II table 8-2: Cd by width/depth, between two bands the \
                 higher",
            ),
            DragRow::BelowTable => seen(
                "FEMA P-55 (2011) vol. II, notes to Eq. 8.8: Cd of a square pile, for a wall \
                 narrower than the water is deep",
            ),
            DragRow::WidthNotStated => from_memory(
                "FEMA P-55 (2011) vol. II table 8-2: Cd by width/depth, the greatest, since the \
                 width of the wall is not stated",
            ),
        });
        Ok(self.spread(FlowMethod::Drag(drag), pressure, references))
    }

    fn spread(
        &self,
        method: FlowMethod,
        pressure: Pressure,
        references: Vec<Citation>,
    ) -> FlowLoad {
        FlowLoad {
            method,
            pressure,
            profile: PressureProfile::uniform(self.ground, self.surface, pressure),
            references,
        }
    }
}
