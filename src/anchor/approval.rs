//! What the approval of an anchor product states.

use crate::quantity::Length;
use crate::quantity::unit::Force;
use crate::statement::Choice;

/// What the product's approval (an evaluation report to ACI 355.2 or 355.4) states; what it
/// does not state stays `None`.
///
/// Values are for the anchor as used: its diameter, embedment, concrete strength and cracking.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Approval {
    /// Anchor category, from the installation sensitivity tests.
    pub category: Option<Category>,
    /// Coefficient `k_c` for breakout in cracked concrete, inch-pound units, at most 24.
    pub coefficient_cracked: Option<f64>,
    /// Coefficient `k_uncr` for breakout in uncracked concrete, inch-pound units.
    pub coefficient_uncracked: Option<f64>,
    /// Critical edge distance `c_ac` for splitting.
    pub critical_edge: Option<Length>,
    /// Pullout strength `N_p` of one anchor (mechanical anchors).
    pub pullout: Pullout,
    /// Nominal bond strength `N_a` or `N_ag` of the anchors in tension (adhesive anchors).
    pub bond: Option<Force>,
    /// Nominal steel strength `N_sa` of one anchor in tension.
    pub steel_tension: Option<Force>,
    /// Nominal steel strength `V_sa` of one anchor in shear.
    pub steel_shear: Option<Force>,
}

/// Anchor category of ACI 355.2 or 355.4: 1 for low sensitivity to installation, 3 for high.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Category {
    /// Category 1.
    One,
    /// Category 2.
    Two,
    /// Category 3.
    Three,
}

impl Choice for Category {
    const CHOICES: &'static [(&'static str, Self)] =
        &[("1", Self::One), ("2", Self::Two), ("3", Self::Three)];
}

/// The pullout strength of one mechanical post-installed anchor. It cannot be calculated
/// (17.6.3.2.1).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Pullout {
    /// Nobody stated it.
    #[default]
    Unstated,
    /// The approval says that pullout does not govern.
    DoesNotGovern,
    /// `N_p`, for the concrete at hand.
    Stated(Force),
}
