//! What the anchors are set in.

use crate::quantity::Length;
use crate::quantity::unit::Pressure;
use crate::statement::Choice;

/// What the anchors are set in.
#[derive(Clone, Debug, PartialEq)]
pub enum BaseMaterial {
    /// Concrete, with what is known of it.
    Concrete(Concrete),
    /// Brick, block or stone: no capacity is calculated. The manufacturer's approval or tests
    /// in that very wall, and an engineer, decide.
    Masonry,
    /// Nobody said.
    Unstated,
}

/// The concrete member that the anchors are set in.
#[derive(Clone, Debug, PartialEq)]
pub struct Concrete {
    /// Specified compressive strength f'c.
    pub strength: Option<Pressure>,
    /// Thickness `h_a` of the member, measured along the anchors.
    pub thickness: Option<Length>,
    /// Lightweight factor λ: 1 for normal weight, 0.75 to 1 for lightweight (19.2.4).
    pub lambda: f64,
    /// Whether it may crack around the anchors in service.
    pub cracking: Cracking,
    /// Reinforcement between the anchors and the edge that shear acts toward.
    pub edge_reinforcement: EdgeReinforcement,
    /// Reinforcement that restrains the breakout, for φ only.
    pub supplementary: SupplementaryReinforcement,
}

impl Concrete {
    /// Normal-weight concrete that may crack, with no reinforcement counted on: the state in
    /// which the least is claimed.
    ///
    /// ```
    /// use sillmark::anchor::{Concrete, Cracking};
    /// use sillmark::quantity::unit::{Length, Pressure, inch, pound_per_square_inch};
    /// let slab = Concrete::normal_weight(Pressure::new::<pound_per_square_inch>(3000.0), Length::new::<inch>(8.0));
    /// assert_eq!(slab.cracking, Cracking::Cracked);
    /// ```
    #[must_use]
    pub fn normal_weight(strength: Pressure, thickness: Length) -> Self {
        Self {
            strength: Some(strength),
            thickness: Some(thickness),
            ..Self::unstated()
        }
    }

    /// Concrete of which nothing is known but that it is concrete.
    #[must_use]
    pub fn unstated() -> Self {
        Self {
            strength: None,
            thickness: None,
            lambda: 1.0,
            cracking: Cracking::Cracked,
            edge_reinforcement: EdgeReinforcement::NoneOrSmall,
            supplementary: SupplementaryReinforcement::Absent,
        }
    }
}

/// Whether the concrete may crack around the anchors at service loads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cracking {
    /// It may, or nobody showed that it does not.
    Cracked,
    /// Analysis shows no cracking at service loads.
    Uncracked,
}

impl Choice for Cracking {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("cracked", Self::Cracked), ("uncracked", Self::Uncracked)];
}

/// Reinforcement between the anchors and the edge (17.7.2.5.1).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeReinforcement {
    /// None, or bars smaller than No. 4.
    NoneOrSmall,
    /// A No. 4 bar (1/2 in, 13 mm) or greater between the anchors and the edge.
    Bar,
    /// The same bar, enclosed in stirrups at no more than 4 in (100 mm).
    BarInStirrups,
}

impl Choice for EdgeReinforcement {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("none", Self::NoneOrSmall),
        ("no. 4 bar or greater", Self::Bar),
        ("no. 4 bar or greater in stirrups", Self::BarInStirrups),
    ];
}

/// Reinforcement that acts to restrain the concrete breakout, without being designed to carry
/// the whole force (17.5.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SupplementaryReinforcement {
    /// Not present, or not shown.
    Absent,
    /// Present.
    Present,
}

impl Choice for SupplementaryReinforcement {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("absent", Self::Absent), ("present", Self::Present)];
}
