//! One way in, and all of them together.

use std::fmt;

use crate::quantity::unit::{VolumeRate, meter};
use crate::quantity::{Impossible, Length, finite};
use crate::statement::Citation;

/// How water gets past a barrier.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Through seals that touch, at the rate their maker states.
    Seal,
    /// Through an open gap.
    Gap,
    /// Over the top.
    Overtopping,
    /// Rain that falls inside the protected ring and cannot run off.
    Rain,
    /// Through and under the wall or bank.
    Seepage,
}

impl fmt::Display for Way {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(match self {
            Self::Seal => "through the seals",
            Self::Gap => "through an open gap",
            Self::Overtopping => "over the top",
            Self::Rain => "rain inside",
            Self::Seepage => "through and under the wall",
        })
    }
}

/// What nobody stated, and what was done about it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// The maker's leakage for each metre of seal.
    LeakageRate,
    /// The depth of water that the leakage was tested at.
    TestedDepth,
    /// The height of a plank, where joints between planks count.
    PlankCover,
    /// The discharge coefficient of a gap.
    DischargeCoefficient,
    /// The area that rain runs off from.
    RainArea,
    /// The part of the rain that runs off.
    RunoffCoefficient,
    /// How much more than the inflow a pump should carry.
    PumpMargin,
    /// The height and the pipes that the pump works against.
    PumpHead,
}

impl fmt::Display for Missing {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::LeakageRate => "the maker's leakage for each metre of seal is not stated",
            Self::TestedDepth => {
                "the water depth of the maker's leakage test is not stated: the rate is taken for any depth"
            }
            Self::PlankCover => {
                "the height of a plank is not stated, though the leakage rate counts the joints between planks"
            }
            Self::DischargeCoefficient => {
                "the discharge coefficient of the gap is not stated: 0.6 of course notes is used"
            }
            Self::RainArea => {
                "rain is stated, but neither the area that it runs off from nor the floor ([inside] rain_area, floor_area)"
            }
            Self::RunoffCoefficient => {
                "the runoff coefficient is not stated: all rain is taken to run to the pump (1.0)"
            }
            Self::PumpMargin => {
                "no margin for the pump is stated: its capacity is the sum of the inflows"
            }
            Self::PumpHead => {
                "the height and the pipes that the pump works against are not stated: its capacity is needed at that head, from the pump maker's curve"
            }
        })
    }
}

/// The flow that comes in one way.
#[derive(Clone, Debug, PartialEq)]
pub struct InflowPart {
    /// Which way.
    pub way: Way,
    /// How much.
    pub flow: VolumeRate,
    /// The formula, in words for a trail.
    pub method: &'static str,
    /// Where the formula's number comes from.
    pub citation: Citation,
    /// What was not stated and had to be taken as its words say.
    pub not_stated: Vec<Missing>,
}

impl InflowPart {
    /// The part, unless its numbers were so great that the flow is none.
    pub(super) fn checked(self) -> Result<Self, Impossible> {
        finite("flow", self.flow.value, "m³/s")?;
        Ok(self)
    }
}

/// Why a way in has no number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// Something that only the maker or the user can state is missing.
    NotStated(Missing),
    /// The water is deeper than the maker tested; nothing is extrapolated.
    NotCovered {
        /// Depth of the water.
        depth: Length,
        /// Greatest depth of the maker's test.
        tested_depth: Length,
    },
}

impl fmt::Display for Reason {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotStated(missing) => missing.fmt(formatter),
            Self::NotCovered {
                depth,
                tested_depth,
            } => write!(
                formatter,
                "water of {:.3} m is not covered by the maker's statement, which is for {:.3} m",
                depth.get::<meter>(),
                tested_depth.get::<meter>()
            ),
        }
    }
}

/// A way in that is known but has no number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NotCounted {
    /// Which way.
    pub way: Way,
    /// Why.
    pub reason: Reason,
}

/// What became of one way in.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// It has a flow.
    Counted(InflowPart),
    /// It has none, and a sum without it is too small.
    NotCounted(NotCounted),
}

/// All ways in together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Inflow {
    /// Those with a flow.
    pub parts: Vec<InflowPart>,
    /// Those without.
    pub not_counted: Vec<NotCounted>,
}

impl Inflow {
    /// Adds one way in.
    pub fn add(&mut self, finding: impl Into<Finding>) {
        match finding.into() {
            Finding::Counted(part) => self.parts.push(part),
            Finding::NotCounted(other) => self.not_counted.push(other),
        }
    }

    /// Adds everything of another sum.
    pub fn join(&mut self, other: &Self) {
        self.parts.extend(other.parts.iter().cloned());
        self.not_counted.extend(other.not_counted.iter().copied());
    }

    /// The sum of what has a flow; the whole inflow only where [`Self::is_complete`].
    #[must_use]
    pub fn total(&self) -> VolumeRate {
        self.parts.iter().map(|part| part.flow).sum()
    }

    /// Whether every way in that was asked for has a flow.
    #[must_use]
    pub fn is_complete(&self) -> bool {
        self.not_counted.is_empty()
    }

    /// Everything that was not stated, each once.
    #[must_use]
    pub fn not_stated(&self) -> Vec<Missing> {
        let of_parts = self.parts.iter().flat_map(|part| part.not_stated.iter());
        let of_others = self
            .not_counted
            .iter()
            .filter_map(|other| match &other.reason {
                Reason::NotStated(missing) => Some(missing),
                Reason::NotCovered { .. } => None,
            });
        let mut all = Vec::new();
        for missing in of_parts.chain(of_others) {
            if !all.contains(missing) {
                all.push(*missing);
            }
        }
        all
    }
}

impl From<InflowPart> for Finding {
    fn from(part: InflowPart) -> Self {
        Self::Counted(part)
    }
}
