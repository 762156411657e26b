//! What the concrete gives: `λ_a` √f'c, and the coefficient of breakout.

use super::factor::Factor;
use super::need::Need;
use super::{Approval, Concrete, Cracking, Fixing};
use crate::quantity::unit::{Pressure, pound_per_square_inch};

/// `λ_a` √f'c with f'c in psi, and its parts.
pub(super) struct RootStrength {
    lambda: f64,
    used: Pressure,
}

impl RootStrength {
    pub(super) fn value(&self) -> f64 {
        self.lambda * self.used.get::<pound_per_square_inch>().sqrt()
    }

    pub(super) fn factors(&self) -> [Factor; 2] {
        [
            Factor::seen("lambda_a", self.lambda, "Table 17.2.4.1"),
            Factor::seen("f'c", self.used, "17.3.1"),
        ]
    }
}

/// `λ_a` and the strength that counts. An unstated strength counts as nothing; callers ask for it.
pub(super) fn root_strength(concrete: &Concrete, fixing: &Fixing) -> RootStrength {
    // The factor on λ is for lightweight concrete; normal-weight concrete has λ_a = 1.
    let lambda = if concrete.lambda < 1.0 {
        fixing.lightweight_factor() * concrete.lambda
    } else {
        1.0
    };
    let stated = concrete.strength.unwrap_or_default();
    RootStrength {
        lambda,
        used: stated.min(strength_limit(fixing)),
    }
}

/// The greatest f'c that calculations may use (17.3.1).
pub(super) fn strength_limit(fixing: &Fixing) -> Pressure {
    Pressure::new::<pound_per_square_inch>(match fixing {
        Fixing::CastIn { .. } => 10_000.0,
        _ => 8_000.0,
    })
}

/// `k_c` and `ψ_c,N`, which belong together.
pub(super) struct Coefficient {
    /// `k_c`.
    pub k: Factor,
    /// `ψ_c,N`.
    pub psi_cracking: Factor,
}

impl Coefficient {
    pub(super) fn of(fixing: &Fixing, cracking: Cracking) -> Result<Self, Need> {
        let uncracked = cracking == Cracking::Uncracked;
        let Some(approval) = fixing.approval() else {
            return Ok(Self::by_code(24.0, if uncracked { 1.25 } else { 1.0 }));
        };
        if let Some(k) = stated_coefficient(approval, cracking) {
            return Ok(Self {
                k: Factor::stated("k_c", k, "17.6.2.2.1"),
                psi_cracking: Factor::stated("psi_c,N", 1.0, "17.6.2.5.1"),
            });
        }
        // An approval for uncracked concrete alone says that the anchor is not for cracked one.
        if approval.coefficient_uncracked.is_some() || matches!(fixing, Fixing::DropInSleeve { .. })
        {
            return Err(Need::BreakoutCoefficient);
        }
        Ok(Self::by_code(17.0, if uncracked { 1.4 } else { 1.0 }))
    }

    fn by_code(k: f64, psi: f64) -> Self {
        Self {
            k: Factor::seen("k_c", k, "17.6.2.2.1"),
            psi_cracking: Factor::seen("psi_c,N", psi, "17.6.2.5.1"),
        }
    }
}

/// The approval's coefficient for the concrete at hand; the one for cracked concrete is safe in
/// uncracked concrete too.
fn stated_coefficient(approval: &Approval, cracking: Cracking) -> Option<f64> {
    match cracking {
        Cracking::Cracked => approval.coefficient_cracked,
        Cracking::Uncracked => approval
            .coefficient_uncracked
            .or(approval.coefficient_cracked),
    }
}
