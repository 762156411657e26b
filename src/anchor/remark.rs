//! What a reader of a check has to know beside its numbers.

use std::fmt;

use crate::quantity::unit::{Pressure, pound_per_square_inch};

/// Something to know beside the numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remark {
    /// The concrete is stronger than the clauses count (17.3.1).
    ConcreteStrengthLimited {
        /// As stated.
        stated: Pressure,
        /// As used: 10,000 psi for cast-in anchors, 8,000 psi for post-installed ones.
        used: Pressure,
        /// Whether the anchor has to be tested in such concrete.
        needs_testing: bool,
    },
    /// The steel is stronger than the clauses count (17.6.1.2, 17.7.1.2).
    SteelStrengthLimited {
        /// As stated.
        stated: Pressure,
        /// As used: the least of `f_uta`, 1.9 `f_ya` and 125,000 psi.
        used: Pressure,
    },
    /// Least edge distances, spacings and thickness of 17.9 are not checked here.
    LeastDistancesNotChecked,
}

impl fmt::Display for Remark {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let psi = |pressure: &Pressure| pressure.get::<pound_per_square_inch>();
        match self {
            Self::ConcreteStrengthLimited {
                stated,
                used,
                needs_testing,
            } => {
                write!(
                    formatter,
                    "concrete strength {:.0} psi counts as {:.0} psi (ACI 318-19 17.3.1)",
                    psi(stated),
                    psi(used)
                )?;
                if *needs_testing {
                    formatter.write_str("; post-installed anchors need testing in such concrete")?;
                }
                Ok(())
            }
            Self::SteelStrengthLimited { stated, used } => write!(
                formatter,
                "tensile strength {:.0} psi of the steel counts as {:.0} psi, the least of itself, 1.9 times the yield strength and 125,000 psi (ACI 318-19 17.6.1.2)",
                psi(stated),
                psi(used)
            ),
            Self::LeastDistancesNotChecked => formatter.write_str(
                "least edge distance, spacing and member thickness (ACI 318-19 17.9, or the product's approval) are not checked",
            ),
        }
    }
}
