//! The member itself.

use super::check::checked;
use super::solve::solve;
use super::{BeamError, LinearLoad, PointLoad, Response, Supports};
use crate::quantity::unit::{FlexuralRigidity, Length};

/// One straight member of constant rigidity with its supports and loads. Positions run along
/// it from its start: a plank from its left end, a post from its base up.
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    /// From its start to its far end.
    pub length: Length,
    /// Flexural rigidity E·I.
    pub rigidity: FlexuralRigidity,
    /// What holds it.
    pub supports: Supports,
    /// Distributed loads; those that overlap add.
    pub loads: Vec<LinearLoad>,
    /// Point loads; those at one place add.
    pub points: Vec<PointLoad>,
}

impl Beam {
    /// A member without loads.
    #[must_use]
    pub fn new(length: Length, rigidity: FlexuralRigidity, supports: Supports) -> Self {
        Self {
            length,
            rigidity,
            supports,
            loads: Vec::new(),
            points: Vec::new(),
        }
    }

    /// A member pinned at both ends, without loads.
    #[must_use]
    pub fn simple(length: Length, rigidity: FlexuralRigidity) -> Self {
        Self::new(length, rigidity, Supports::SimplySupported)
    }

    /// A member fixed at its start, without loads.
    #[must_use]
    pub fn cantilever(length: Length, rigidity: FlexuralRigidity) -> Self {
        Self::new(length, rigidity, Supports::Cantilever)
    }

    /// A member fixed at its start and propped at `at`, without loads.
    #[must_use]
    pub fn propped(length: Length, rigidity: FlexuralRigidity, at: Length) -> Self {
        Self::new(length, rigidity, Supports::Propped { at })
    }

    /// A member pinned at its start and propped at `at`, without loads.
    #[must_use]
    pub fn pinned_and_propped(length: Length, rigidity: FlexuralRigidity, at: Length) -> Self {
        Self::new(length, rigidity, Supports::PinnedAndPropped { at })
    }

    /// The member with one more distributed load.
    #[must_use]
    pub fn with_load(mut self, load: LinearLoad) -> Self {
        self.loads.push(load);
        self
    }

    /// The member with more distributed loads.
    #[must_use]
    pub fn with_loads(mut self, loads: impl IntoIterator<Item = LinearLoad>) -> Self {
        self.loads.extend(loads);
        self
    }

    /// The member with one more point load.
    #[must_use]
    pub fn with_point(mut self, point: PointLoad) -> Self {
        self.points.push(point);
        self
    }

    /// What the loads do to the member.
    ///
    /// 1. The member is cut where a load begins, ends or acts, and at its supports; on each
    ///    piece the load is a straight line.
    /// 2. The forces of the supports follow from equilibrium; that of the prop of a member with
    ///    a fixed start from compatibility, R = 3·E·I·v(a)/a³, where v(a) is the deflection at
    ///    the prop if it were not there.
    /// 3. Shear, moment, slope and deflection are integrated piece by piece from the start.
    ///
    /// # Errors
    /// [`BeamError`] where length or rigidity is not a finite number above 0, where a support
    /// or a load is not on the member, and where a load is reversed or not finite. A place that
    /// passes an end by less than 10⁻⁹ of the length is taken at the end.
    ///
    /// ```
    /// use sillmark::beam::{Beam, LinearLoad};
    /// use sillmark::quantity::unit::{
    ///     Length, in_newton_metres, meter, newton_square_metres, newtons_per_metre,
    /// };
    /// let metres = Length::new::<meter>;
    /// // A plank of 2 m under 500 N/m: M = q·L²/8, v = 5·q·L⁴/(384·E·I).
    /// let plank = Beam::simple(metres(2.0), newton_square_metres(10_000.0)).with_load(
    ///     LinearLoad::uniform(metres(0.0), metres(2.0), newtons_per_metre(500.0)),
    /// );
    /// let response = plank.response()?;
    /// let greatest = response.greatest_moment();
    /// assert!((in_newton_metres(greatest.value) - 250.0).abs() < 1e-9);
    /// assert!((greatest.at.get::<meter>() - 1.0).abs() < 1e-9);
    /// let deflection = response.greatest_deflection().value.get::<meter>();
    /// assert!((deflection - 5.0 * 500.0 * 16.0 / (384.0 * 10_000.0)).abs() < 1e-12);
    /// # Ok::<(), sillmark::beam::BeamError>(())
    /// ```
    pub fn response(&self) -> Result<Response, BeamError> {
        let beam = checked(self)?;
        let response = Response::new(solve(&beam), beam.length, beam.rigidity);
        if response.is_finite() {
            Ok(response)
        } else {
            Err(BeamError::TooLarge {
                length: self.length,
                rigidity: self.rigidity,
            })
        }
    }
}
