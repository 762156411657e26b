//! What a design could not settle: where an engineer is needed, and what is still to be
//! measured, stated or chosen.

use super::{Amount, Check, TooSmall};
use crate::load::NotIncluded;
use crate::quantity::unit::Force;
use crate::quantity::{Length, UnitSystem};
use crate::statement::Choice;

/// Why a barrier of this kit is no answer without a licensed engineer.
#[derive(Clone, Debug, PartialEq)]
pub enum Shortfall {
    /// The barrier would be higher than the maker allows.
    OverKitHeight {
        /// The barrier.
        height: Length,
        /// The maker's limit.
        limit: Length,
    },
    /// The barrier would be higher than the opening.
    OverOpeningHeight {
        /// The barrier.
        height: Length,
        /// The clear height of the opening.
        opening: Length,
    },
    /// The layout needs a part that the kit does not have.
    KitLacks {
        /// The part.
        part: &'static str,
        /// What it is needed for.
        purpose: String,
    },
    /// Neither reveal nor face is large enough for the kit's posts.
    NoMount {
        /// What was measured and what is needed.
        too_small: Vec<TooSmall>,
    },
    /// The posts leave no clear width.
    NoRoom {
        /// The leg.
        leg: Length,
    },
    /// A part does not carry its load.
    Fails(Check),
    /// A plank is cut longer than the kit's longest piece.
    TooLong {
        /// The piece.
        piece: Length,
        /// The kit's longest.
        longest: Length,
    },
    /// The water stands above the barrier.
    Overtopped {
        /// Depth of the water over the sill.
        depth: Length,
        /// The barrier.
        height: Length,
    },
    /// The brace carries more than its maker allows.
    BraceFails {
        /// Force along it, with the load factor.
        along: Force,
        /// What its maker allows.
        capacity: Force,
    },
    /// The anchors of a base plate do not hold in the stated concrete.
    AnchorsFail {
        /// The post.
        post: &'static str,
        /// Demand over design strength of the governing mode.
        utilisation: f64,
    },
    /// The water lies outside what the formulas here are for.
    OutsideMethod {
        /// What.
        what: String,
    },
}

impl Shortfall {
    /// In words, without a full stop.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        match self {
            Self::OverKitHeight { height, limit } => format!(
                "a barrier of {} is higher than the {} that the kit's maker allows",
                units.height(*height),
                units.height(*limit)
            ),
            Self::OverOpeningHeight { height, opening } => format!(
                "a barrier of {} is higher than the opening ({})",
                units.height(*height),
                units.height(*opening)
            ),
            Self::KitLacks { part, purpose } => format!("the kit has no {part}, which {purpose}"),
            Self::NoMount { too_small } if too_small.is_empty() => {
                "the kit has no end post for such a mount".to_owned()
            }
            Self::NoMount { too_small } => {
                let measures: Vec<String> = too_small
                    .iter()
                    .map(|measure| measure.text(units))
                    .collect();
                format!("no end post of the kit fits: {}", measures.join(", "))
            }
            Self::NoRoom { leg } => format!(
                "posts leave no clear width on a length of {}",
                units.dimension(*leg)
            ),
            Self::Fails(check) => format!(
                "{}: {} of {} is more than the {} it takes ({})",
                check.part,
                check.what,
                check.demand.text(units),
                check.capacity.text(units),
                check.case.word()
            ),
            Self::TooLong { piece, longest } => format!(
                "a plank of {} is longer than the kit's longest, {}",
                units.dimension(*piece),
                units.dimension(*longest)
            ),
            Self::Overtopped { depth, height } => format!(
                "{} of water stands above a barrier of {}",
                units.height(*depth),
                units.height(*height)
            ),
            Self::BraceFails { along, capacity } => format!(
                "brace: {} along it is more than the {} that its maker allows",
                units.force(*along),
                units.force(*capacity)
            ),
            Self::AnchorsFail { post, utilisation } => format!(
                "anchors of the {post}: they would carry {:.0} % of what the stated concrete and steel take (ACI 318-19 chapter 17)",
                100.0 * utilisation
            ),
            Self::OutsideMethod { what } => what.clone(),
        }
    }
}

/// What somebody still has to measure, state or choose before anything is cut.
#[derive(Clone, Debug, PartialEq)]
pub enum Open {
    /// The mount depends on measures that nobody has taken.
    Mount {
        /// The field and what the kit's post needs.
        missing: Vec<(&'static str, Length)>,
    },
    /// A brace is needed, and nobody said on which side it may stand.
    BraceSide,
    /// The anchors' demand is known, their capacity is not.
    AnchorCapacity {
        /// The post.
        post: String,
        /// What is missing.
        why: Vec<String>,
    },
    /// The kit does not say what a part takes or lets through.
    KitDoesNotState {
        /// What.
        what: String,
    },
    /// The strength of a part does not cover everything that the standard asks for.
    NotChecked {
        /// The part.
        part: String,
        /// What was not checked.
        what: String,
    },
    /// The set of load factors counts the water with less than its whole load.
    SmallFactor {
        /// The least of its factors.
        factor: f64,
        /// The set.
        set: String,
    },
    /// A load that may act was not stated, so it is not in the figures.
    LoadNotIncluded(NotIncluded),
}

impl Open {
    /// In words, without a full stop.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        match self {
            Self::Mount { missing } => {
                let measures: Vec<String> = missing
                    .iter()
                    .map(|(field, needed)| {
                        format!("{field} (at least {})", units.dimension(*needed))
                    })
                    .collect();
                format!(
                    "measure on site: {}; until then no plank is cut, and spans are taken for the wider of the mounts",
                    measures.join(" or ")
                )
            }
            Self::BraceSide => {
                "a brace is needed; state on which side it may stand (brace = \"dry side\" or \"water side\")".to_owned()
            }
            Self::AnchorCapacity { post, why } => {
                format!("anchors of the {post}: demand only, because {}", why.join("; "))
            }
            Self::KitDoesNotState { what } => format!("the kit does not state {what}"),
            Self::NotChecked { part, what } => format!("{part}: {what}"),
            Self::SmallFactor { factor, set } => format!(
                "have an engineer confirm the factor {factor} on the load of the water ({set}): a factor below 1 belongs to combinations with wind and other loads, and a barrier carries the water alone"
            ),
            Self::LoadNotIncluded(absent) => {
                format!("the loads are without {}: {}", absent.part, absent.reason)
            }
        }
    }
}

impl Amount {
    /// For a person.
    #[must_use]
    pub fn text(self, units: UnitSystem) -> String {
        match self {
            Self::Moment(moment) => units.moment(moment),
            Self::Force(force) => units.force(force),
            Self::Deflection(length) => units.deflection(length),
        }
    }
}
