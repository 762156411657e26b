//! What cannot be a beam.

use crate::quantity::unit::{
    FlexuralRigidity, Force, Length, LineLoad, in_newtons_per_metre, meter, newton,
};

/// A member, support or load that bending cannot be computed for.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum BeamError {
    /// A member without a length.
    #[error("a member {} m long does not bend; accepted: a finite length above 0 m", .0.get::<meter>())]
    Length(Length),
    /// A member without stiffness.
    #[error("a flexural rigidity of {} N·m² is not that of a member; accepted: a finite rigidity above 0 N·m²", .0.value)]
    Rigidity(FlexuralRigidity),
    /// A prop that is not on the member, or at its start.
    #[error("a prop at {} m does not hold the member; accepted: above 0 m and up to the member's length, {} m", at.get::<meter>(), length.get::<meter>())]
    PropOutside {
        /// Where the prop was put.
        at: Length,
        /// The member's length.
        length: Length,
    },
    /// A load that is not on the member.
    #[error("a load from {} m to {} m is not on the member; accepted: between 0 m and its length, {} m", from.get::<meter>(), to.get::<meter>(), length.get::<meter>())]
    LoadOutside {
        /// Where the load begins.
        from: Length,
        /// Where it ends.
        to: Length,
        /// The member's length.
        length: Length,
    },
    /// A load that ends before it begins.
    #[error("a load begins at {} m and ends at {} m; accepted: an end not before the beginning", from.get::<meter>(), to.get::<meter>())]
    LoadReversed {
        /// Where the load begins.
        from: Length,
        /// Where it ends.
        to: Length,
    },
    /// A load that is not a number.
    #[error("a load from {} N/m to {} N/m cannot be computed with; accepted: finite numbers", in_newtons_per_metre(*at_from), in_newtons_per_metre(*at_to))]
    LoadNotFinite {
        /// Its value where it begins.
        at_from: LineLoad,
        /// Its value where it ends.
        at_to: LineLoad,
    },
    /// A point load that is not on the member.
    #[error("a point load at {} m is not on the member; accepted: between 0 m and its length, {} m", at.get::<meter>(), length.get::<meter>())]
    PointOutside {
        /// Where it acts.
        at: Length,
        /// The member's length.
        length: Length,
    },
    /// A point load that is not a number.
    #[error("a point load of {} N cannot be computed with; accepted: a finite number", .0.get::<newton>())]
    PointNotFinite(Force),
    /// Finite numbers whose products are not.
    #[error("the bending of a member {} m long with {} N·m² under its loads is no finite number; accepted: loads and lengths of the size of a building", length.get::<meter>(), rigidity.value)]
    TooLarge {
        /// The member's length.
        length: Length,
        /// Its flexural rigidity.
        rigidity: FlexuralRigidity,
    },
}
