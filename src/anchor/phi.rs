//! Strength reduction factors φ (17.5.3).

use super::factor::Factor;
use super::{Category, Ductility, Fixing, Need, SupplementaryReinforcement};

/// Steel in tension, Table 17.5.3(a).
pub(super) fn steel_tension(ductility: Ductility) -> Factor {
    let phi = match ductility {
        Ductility::Ductile => 0.75,
        Ductility::Brittle => 0.65,
    };
    Factor::seen("phi", phi, "Table 17.5.3(a)")
}

/// Steel in shear, Table 17.5.3(a).
pub(super) fn steel_shear(ductility: Ductility) -> Factor {
    let phi = match ductility {
        Ductility::Ductile => 0.65,
        Ductility::Brittle => 0.60,
    };
    Factor::seen("phi", phi, "Table 17.5.3(a)")
}

/// Concrete breakout in tension, bond and side-face blowout, Table 17.5.3(b).
pub(super) fn breakout_tension(
    fixing: &Fixing,
    supplementary: SupplementaryReinforcement,
) -> Result<Factor, Need> {
    let present = supplementary == SupplementaryReinforcement::Present;
    let phi = match (category(fixing)?, present) {
        (None | Some(Category::One), true) => 0.75,
        (None, false) => 0.70,
        (Some(Category::One), false) | (Some(Category::Two), true) => 0.65,
        (Some(Category::Two), false) | (Some(Category::Three), true) => 0.55,
        (Some(Category::Three), false) => 0.45,
    };
    Ok(Factor::seen("phi", phi, "Table 17.5.3(b)"))
}

/// Concrete breakout in shear, Table 17.5.3(b): whatever the anchor.
pub(super) fn breakout_shear(supplementary: SupplementaryReinforcement) -> Factor {
    let phi = match supplementary {
        SupplementaryReinforcement::Present => 0.75,
        SupplementaryReinforcement::Absent => 0.70,
    };
    Factor::seen("phi", phi, "Table 17.5.3(b)")
}

/// Pullout, Table 17.5.3(c).
pub(super) fn pullout(fixing: &Fixing) -> Result<Factor, Need> {
    let phi = match category(fixing)? {
        None => 0.70,
        Some(Category::One) => 0.65,
        Some(Category::Two) => 0.55,
        Some(Category::Three) => 0.45,
    };
    Ok(Factor::seen("phi", phi, "Table 17.5.3(c)"))
}

/// Pryout, Table 17.5.3(c): whatever the anchor.
pub(super) fn pryout() -> Factor {
    Factor::seen("phi", 0.70, "Table 17.5.3(c)")
}

/// The category of a post-installed anchor, `None` for a cast-in one.
fn category(fixing: &Fixing) -> Result<Option<Category>, Need> {
    match fixing.approval() {
        None => Ok(None),
        Some(approval) => approval.category.map(Some).ok_or(Need::Category),
    }
}
