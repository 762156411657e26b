//! Anchorage to concrete: what a group of anchors has to carry and what it can.
//!
//! The method is ACI 318-19 chapter 17, strength design: all demands are factored, and a
//! strength holds where the demand is not above φ times the nominal strength. The clauses were
//! read as quoted in two public design guides to that chapter (viewer.joomag.com, documents
//! 0546853001659024142 of July 2022 and 0323980001758646474 of October 2025); each number says
//! in its [`Factor`] whether it was seen there or is from memory.
//!
//! Three ideas carry the room:
//!
//! - an [`Anchorage`] is what is known: the base, the way of fixing, the steel, the group. What
//!   nobody stated stays open, and each failure mode that needs it is [`Unchecked`] with a list
//!   of what to state; nothing is guessed.
//! - a [`Demand`] is what the water makes of it, from a base plate ([`base_plate()`]) or from
//!   posts fixed up a reveal ([`tributary_shares`]).
//! - [`Anchorage::check`] compares the two mode by mode, each with all its factors.
//!
//! Outside the room: earthquake, fatigue, sustained tension, anchor reinforcement, shear lugs,
//! hooked bolts, and bond strength, which an approval has to state. Masonry has no calculated
//! capacity at all.
//!
//! ```
//! use sillmark::anchor::*;
//! use sillmark::quantity::unit::{Area, Force, Length, Pressure, inch, pound_force, pound_per_square_inch};
//! let inches = Length::new::<inch>;
//! let psi = Pressure::new::<pound_per_square_inch>;
//! let square_inches = |area: f64| area * inches(1.0) * inches(1.0);
//! // Four 1/2 in bolts cast into a footing, 6 in each way, 8 in from the edge on the dry side.
//! let anchorage = Anchorage {
//!     base: BaseMaterial::Concrete(Concrete::normal_weight(psi(4000.0), inches(12.0))),
//!     fixing: Fixing::CastIn { shape: CastInShape::HeadedBolt, head_bearing: Some(square_inches(0.291)) },
//!     diameter: inches(0.5),
//!     embedment: Some(inches(5.0)),
//!     steel: Steel {
//!         area: Some(square_inches(0.142)),
//!         ultimate: Some(psi(58_000.0)),
//!         yield_strength: Some(psi(36_000.0)),
//!         ductility: Some(Ductility::Ductile),
//!     },
//!     bedding: Bedding::Direct,
//!     group: AnchorGroup::grid((2, inches(6.0)), (2, inches(6.0)), Edges { y_plus: Edge::At(inches(8.0)), ..Edges::FAR })?,
//!     shear_case: ShearCase::FrontRow,
//! };
//! // The water pushes towards y+, so the row at y- is lifted.
//! let demand = Demand {
//!     tension: Some(TensionDemand::on_row(Side::YMinus, Force::new::<pound_force>(3_000.0), 2)),
//!     shear: Some(ShearDemand::even(Side::YPlus, Force::new::<pound_force>(2_000.0), 4)),
//! };
//! let check = anchorage.check(&demand)?;
//! assert_eq!(check.outcome(), Outcome::Holds);
//! let governing = check.shear.governing().unwrap();
//! assert_eq!(governing.mode, Mode::ShearBreakout { edge: Side::YPlus, toward: true });
//! assert!((governing.strength.nominal().get::<pound_force>() - 13_421.0).abs() < 1.0);
//! # Ok::<(), AnchorError>(())
//! ```

mod anchorage;
mod approval;
mod base_plate;
mod breakout;
mod check;
mod coefficient;
mod concrete;
mod demand;
mod edges;
mod error;
mod factor;
mod fixing;
mod group;
mod interaction;
mod line;
mod mode;
mod need;
mod phi;
mod pryout;
mod pullout;
mod remark;
mod shear_breakout;
mod side_face;
mod steel;
mod steel_modes;
mod tributary;
mod validate;

pub use anchorage::Anchorage;
pub use approval::{Approval, Category, Pullout};
pub use base_plate::{BasePlateForces, PlateDemand, PlatePattern, base_plate};
pub use check::{AnchorCheck, Direction, ModeCheck, Outcome};
pub use concrete::{
    BaseMaterial, Concrete, Cracking, EdgeReinforcement, SupplementaryReinforcement,
};
pub use demand::{Demand, ShearDemand, TensionAnchors, TensionDemand};
pub use edges::{Edge, Edges, ShearCase, Side};
pub use error::AnchorError;
pub use factor::{Factor, FactorValue, Strength};
pub use fixing::{AnchorSystem, CastInShape, Fixing};
pub use group::AnchorGroup;
pub use interaction::Interaction;
pub use mode::Mode;
pub use need::{Need, Unchecked};
pub use remark::Remark;
pub use steel::{Bedding, Ductility, Steel};
pub use tributary::{AnchorShare, tributary_shares};
