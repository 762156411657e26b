//! What has to happen, and what to know before.

use schemars::JsonSchema;
use serde::Serialize;

use crate::quantity::UnitSystem;
use crate::verdict::{Caution, CautionTexts, Verdict};

/// What has to happen, from the least to the most.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(in crate::report) enum JsonVerdict {
    /// The sill lies at or above the design level, or the map has no flood there.
    Above,
    /// A barrier within common limits.
    Protect,
    /// A licensed engineer has to design it.
    Engineer,
    /// A needed input is missing or refused.
    Unresolved,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonCaution {
    /// Stable over versions.
    pub(super) code: String,
    pub(super) text: String,
    pub(super) reference: String,
}

impl JsonCaution {
    pub(super) fn all(cautions: &[Caution], texts: &CautionTexts, units: UnitSystem) -> Vec<Self> {
        cautions
            .iter()
            .map(|caution| Self {
                code: caution.code().to_owned(),
                text: texts.text(caution, units),
                reference: texts.reference(caution),
            })
            .collect()
    }
}

impl From<Verdict> for JsonVerdict {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Above => Self::Above,
            Verdict::Protect => Self::Protect,
            Verdict::Engineer => Self::Engineer,
            Verdict::Unresolved => Self::Unresolved,
        }
    }
}
