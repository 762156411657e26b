//! What has to be stated before a failure mode can be checked.

use std::fmt;

use super::{Mode, Side};

/// A thing that has to be stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// f'c.
    ConcreteStrength,
    /// `h_a`.
    Thickness,
    /// `h_ef`.
    Embedment,
    /// The distance to an edge, or that it is far.
    Edge(Side),
    /// `A_se`.
    SteelArea,
    /// `f_uta`.
    UltimateStrength,
    /// `f_ya`.
    YieldStrength,
    /// Ductile or brittle.
    Ductility,
    /// `A_brg`.
    HeadBearing,
    /// The approval's category.
    Category,
    /// The approval's `k_c` for the concrete at hand.
    BreakoutCoefficient,
    /// The approval's `N_p`.
    PulloutStrength,
    /// The bond strength of adhesive anchors.
    BondStrength,
    /// The approval's `N_sa` of a sleeve.
    SleeveTension,
    /// The approval's `V_sa` of a sleeve.
    SleeveShear,
    /// Masonry.
    MasonryTestAndEngineer,
    /// What the base is.
    BaseMaterial,
}

impl fmt::Display for Need {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::ConcreteStrength => "the concrete's specified strength",
            Self::Thickness => "the thickness of the concrete member",
            Self::Embedment => "the effective embedment of the anchors",
            Self::Edge(side) => {
                return write!(
                    formatter,
                    "the distance from the anchors to the edge at {side}, or that it is far"
                );
            }
            Self::SteelArea => "the effective area of an anchor's steel",
            Self::UltimateStrength => "the tensile strength of the steel",
            Self::YieldStrength => "the yield strength of the steel",
            Self::Ductility => "whether the steel is ductile or brittle",
            Self::HeadBearing => "the bearing area of the anchor's head",
            Self::Category => "the anchor category, from the product's approval",
            Self::BreakoutCoefficient => {
                "the breakout coefficient for the concrete at hand, from the product's approval"
            }
            Self::PulloutStrength => {
                "the pullout strength, which only the product's approval can state"
            }
            Self::BondStrength => {
                "the bond strength of the group, by the product's approval and ACI 318-19 17.6.5"
            }
            Self::SleeveTension => "the sleeve's steel strength in tension, from its approval",
            Self::SleeveShear => "the sleeve's steel strength in shear, from its approval",
            Self::MasonryTestAndEngineer => {
                "for masonry, the anchor manufacturer's approval or tests in that masonry, and an engineer's design"
            }
            Self::BaseMaterial => "what the anchors are set in",
        })
    }
}

/// A failure mode that was not checked, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Unchecked {
    /// The mode.
    pub mode: Mode,
    /// What to state; never empty.
    pub state: Vec<Need>,
}

impl fmt::Display for Unchecked {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let state: Vec<_> = self.state.iter().map(ToString::to_string).collect();
        write!(
            formatter,
            "{} is not checked; state {}",
            self.mode,
            state.join("; ")
        )
    }
}

/// What is missing, gathered, so that a user hears of all of it at once.
#[derive(Debug, Default)]
pub(super) struct Needs(Vec<Need>);

impl Needs {
    /// Passes on what was stated; else notes that it is needed.
    pub(super) fn take<T>(&mut self, stated: Option<T>, need: Need) -> Option<T> {
        if stated.is_none() {
            self.0.push(need);
        }
        stated
    }

    /// Adds the needs of a part.
    pub(super) fn append<T>(&mut self, part: Result<T, Self>) -> Option<T> {
        match part {
            Ok(part) => Some(part),
            Err(needs) => {
                for need in needs.0 {
                    if !self.0.contains(&need) {
                        self.0.push(need);
                    }
                }
                None
            }
        }
    }

    /// For edges that nobody stated.
    pub(super) fn edges(sides: Vec<Side>) -> Self {
        Self(sides.into_iter().map(Need::Edge).collect())
    }

    /// As the reason why a mode was not checked.
    pub(super) fn unchecked(self, mode: Mode) -> Unchecked {
        Unchecked {
            mode,
            state: self.0,
        }
    }
}

impl From<Need> for Needs {
    fn from(need: Need) -> Self {
        Self(vec![need])
    }
}
