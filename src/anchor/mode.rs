//! The ways an anchorage fails.

use std::fmt;

use super::Side;

/// A way that an anchorage fails (Table 17.5.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// The steel breaks in tension (17.6.1).
    SteelTension,
    /// A cone of concrete breaks out (17.6.2).
    TensionBreakout,
    /// The anchor is pulled out (17.6.3).
    Pullout,
    /// The side of the concrete bursts (17.6.4).
    SideFaceBlowout {
        /// The side that bursts.
        edge: Side,
    },
    /// The bond of an adhesive anchor fails (17.6.5).
    Bond,
    /// The steel breaks in shear (17.7.1).
    SteelShear,
    /// A wedge of concrete breaks out to an edge (17.7.2).
    ShearBreakout {
        /// The edge.
        edge: Side,
        /// Whether the shear acts toward it, or parallel to it.
        toward: bool,
    },
    /// The concrete behind the anchor is pried out (17.7.3).
    Pryout,
}

impl fmt::Display for Mode {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::SteelTension => formatter.write_str("steel in tension"),
            Self::TensionBreakout => formatter.write_str("concrete breakout in tension"),
            Self::Pullout => formatter.write_str("pullout"),
            Self::SideFaceBlowout { edge } => write!(formatter, "side-face blowout at {edge}"),
            Self::Bond => formatter.write_str("bond"),
            Self::SteelShear => formatter.write_str("steel in shear"),
            Self::ShearBreakout { edge, toward: true } => {
                write!(formatter, "concrete breakout in shear toward {edge}")
            }
            Self::ShearBreakout {
                edge,
                toward: false,
            } => {
                write!(
                    formatter,
                    "concrete breakout at {edge} in shear parallel to it"
                )
            }
            Self::Pryout => formatter.write_str("pryout"),
        }
    }
}
