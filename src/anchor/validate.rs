//! Numbers of an anchorage that cannot be.

use super::error::{AnchorError, Shown, above_zero};
use super::{Anchorage, BaseMaterial, Concrete, Fixing, Pullout};

impl Anchorage {
    /// Refuses numbers that cannot be.
    pub(super) fn validate(&self) -> Result<(), AnchorError> {
        above_zero("anchor diameter", self.diameter)?;
        self.group.validate()?;
        if let Some(embedment) = self.embedment {
            above_zero("embedment", embedment)?;
        }
        self.validate_steel()?;
        self.validate_approval()?;
        match &self.base {
            BaseMaterial::Concrete(concrete) => self.validate_concrete(concrete),
            _ => Ok(()),
        }
    }

    fn validate_concrete(&self, concrete: &Concrete) -> Result<(), AnchorError> {
        if let Some(strength) = concrete.strength {
            above_zero("concrete strength", strength)?;
        }
        in_range(
            "lightweight factor",
            concrete.lambda,
            0.75..=1.0,
            "0.75 to 1 (ACI 318-19 19.2.4)",
        )?;
        let Some(thickness) = concrete.thickness else {
            return Ok(());
        };
        above_zero("thickness", thickness)?;
        match self.embedment {
            Some(embedment) if embedment >= thickness => Err(AnchorError::ThroughMember {
                embedment: embedment.shown(),
                thickness: thickness.shown(),
            }),
            _ => Ok(()),
        }
    }

    fn validate_steel(&self) -> Result<(), AnchorError> {
        if let Some(area) = self.steel.area {
            above_zero("steel area", area)?;
        }
        for (what, strength) in [
            ("tensile strength", self.steel.ultimate),
            ("yield strength", self.steel.yield_strength),
        ] {
            if let Some(strength) = strength {
                above_zero(what, strength)?;
            }
        }
        match self.fixing {
            Fixing::CastIn {
                head_bearing: Some(area),
                ..
            } => above_zero("head bearing area", area),
            _ => Ok(()),
        }
    }

    fn validate_approval(&self) -> Result<(), AnchorError> {
        let Some(approval) = self.fixing.approval() else {
            return Ok(());
        };
        // The lesser of the two is limited by 17.6.2.2.1; reports give up to 30 for uncracked.
        if let Some(k) = approval.coefficient_cracked {
            let accepted = "above 0 to 24 (ACI 318-19 17.6.2.2.1)";
            in_range(
                "breakout coefficient",
                k,
                f64::MIN_POSITIVE..=24.0,
                accepted,
            )?;
        }
        if let Some(k) = approval.coefficient_uncracked {
            let accepted = "above 0 to 34, which is 1.4 times 24";
            in_range(
                "breakout coefficient",
                k,
                f64::MIN_POSITIVE..=34.0,
                accepted,
            )?;
        }
        if let Some(edge) = approval.critical_edge {
            above_zero("critical edge distance", edge)?;
        }
        let pullout = match approval.pullout {
            Pullout::Stated(strength) => Some(strength),
            _ => None,
        };
        for (what, strength) in [
            ("pullout strength", pullout),
            ("bond strength", approval.bond),
            ("steel strength in tension", approval.steel_tension),
            ("steel strength in shear", approval.steel_shear),
        ] {
            if let Some(strength) = strength {
                above_zero(what, strength)?;
            }
        }
        Ok(())
    }
}

fn in_range(
    what: &'static str,
    number: f64,
    range: std::ops::RangeInclusive<f64>,
    accepted: &'static str,
) -> Result<(), AnchorError> {
    if range.contains(&number) {
        return Ok(());
    }
    Err(AnchorError::OutOfRange {
        what,
        value: number.to_string(),
        accepted,
    })
}
