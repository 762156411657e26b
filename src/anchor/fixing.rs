//! How the parts are fixed: cast in, post-installed to stay, or a sleeve for a removable bolt.

use super::{Approval, Need};
use crate::quantity::unit::Area;
use crate::statement::Choice;

/// How the parts are fixed to the concrete. It determines what has to be stated.
#[derive(Clone, Debug, PartialEq)]
pub enum Fixing {
    /// Headed steel cast into the concrete.
    CastIn {
        /// Stud or bolt.
        shape: CastInShape,
        /// Net bearing area `A_brg` of the head.
        head_bearing: Option<Area>,
    },
    /// Anchors set into hardened concrete that stay.
    PostInstalled {
        /// How they hold.
        system: AnchorSystem,
        /// What their approval states.
        approval: Approval,
    },
    /// Sleeves with an inner thread (drop-in sleeves) that stay in the ground, flush; bolts are
    /// screwed in when the barrier goes up. A displacement-controlled post-installed anchor,
    /// whose steel is both the sleeve's, from its approval, and the bolt's.
    DropInSleeve {
        /// What the sleeve's approval states.
        approval: Approval,
    },
}

/// The form of a cast-in anchor. Hooked bolts are outside the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CastInShape {
    /// A headed stud, welded to the plate.
    HeadedStud,
    /// A bolt with a head or a nut at its foot.
    HeadedBolt,
}

impl Choice for CastInShape {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("headed stud", Self::HeadedStud),
        ("headed bolt", Self::HeadedBolt),
    ];
}

/// How a post-installed anchor holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AnchorSystem {
    /// Expanded by tightening.
    TorqueControlled,
    /// Expanded by driving a plug or the anchor itself.
    DisplacementControlled,
    /// A screw that cuts its own thread into the concrete.
    Screw,
    /// Keyed into a widened hole.
    Undercut,
    /// Glued.
    Adhesive,
}

impl Choice for AnchorSystem {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("torque-controlled", Self::TorqueControlled),
        ("displacement-controlled", Self::DisplacementControlled),
        ("screw", Self::Screw),
        ("undercut", Self::Undercut),
        ("adhesive", Self::Adhesive),
    ];
}

impl AnchorSystem {
    /// Critical edge distance `c_ac` as a multiple of the embedment, where no test gave another
    /// (17.9.5).
    #[must_use]
    pub fn critical_edge_in_embedments(self) -> f64 {
        match self {
            Self::TorqueControlled | Self::DisplacementControlled | Self::Screw => 4.0,
            Self::Undercut => 2.5,
            Self::Adhesive => 2.0,
        }
    }
}

impl Fixing {
    /// The system of a post-installed anchor; `None` for a cast-in one.
    #[must_use]
    pub fn system(&self) -> Option<AnchorSystem> {
        match self {
            Self::CastIn { .. } => None,
            Self::PostInstalled { system, .. } => Some(*system),
            Self::DropInSleeve { .. } => Some(AnchorSystem::DisplacementControlled),
        }
    }

    /// The approval of a post-installed anchor; `None` for a cast-in one.
    #[must_use]
    pub fn approval(&self) -> Option<&Approval> {
        match self {
            Self::CastIn { .. } => None,
            Self::PostInstalled { approval, .. } | Self::DropInSleeve { approval } => {
                Some(approval)
            }
        }
    }

    /// Factor on λ for concrete failure (Table 17.2.4.1): 1.0 for cast-in and undercut anchors,
    /// 0.8 for expansion, screw and adhesive ones. It counts in lightweight concrete only.
    #[must_use]
    pub fn lightweight_factor(&self) -> f64 {
        match self.system() {
            None | Some(AnchorSystem::Undercut) => 1.0,
            Some(_) => 0.8,
        }
    }

    /// Everything that has to be stated of this fixing, apart from the concrete and the group,
    /// before all its modes can be checked.
    ///
    /// ```
    /// use sillmark::anchor::{Approval, Fixing, Need};
    /// let sleeve = Fixing::DropInSleeve { approval: Approval::default() };
    /// assert!(sleeve.has_to_state().contains(&Need::Category));
    /// assert!(sleeve.has_to_state().contains(&Need::PulloutStrength));
    /// ```
    #[must_use]
    pub fn has_to_state(&self) -> &'static [Need] {
        const STEEL: [Need; 5] = [
            Need::Embedment,
            Need::SteelArea,
            Need::UltimateStrength,
            Need::YieldStrength,
            Need::Ductility,
        ];
        const CAST_IN: [Need; 6] = with(STEEL, [Need::HeadBearing]);
        const MECHANICAL: [Need; 7] = with(STEEL, [Need::Category, Need::PulloutStrength]);
        const ADHESIVE: [Need; 7] = with(STEEL, [Need::Category, Need::BondStrength]);
        const SLEEVE: [Need; 10] = with(
            STEEL,
            [
                Need::Category,
                Need::BreakoutCoefficient,
                Need::PulloutStrength,
                Need::SleeveTension,
                Need::SleeveShear,
            ],
        );
        match self {
            Self::CastIn { .. } => &CAST_IN,
            Self::PostInstalled {
                system: AnchorSystem::Adhesive,
                ..
            } => &ADHESIVE,
            Self::PostInstalled { .. } => &MECHANICAL,
            Self::DropInSleeve { .. } => &SLEEVE,
        }
    }
}

/// Two lists as one.
const fn with<const ALL: usize, const ONE: usize, const OTHER: usize>(
    one: [Need; ONE],
    other: [Need; OTHER],
) -> [Need; ALL] {
    let mut all = [Need::Embedment; ALL];
    let mut index = 0;
    while index < ALL {
        all[index] = if index < ONE {
            one[index]
        } else {
            other[index - ONE]
        };
        index += 1;
    }
    all
}
