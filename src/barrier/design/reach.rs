//! How far the planks of a kit reach, and how deep the water may stand before them.

use super::spans::{HeaviestPlank, Planks, heaviest_planks};
use super::water::CaseLoad;
use crate::barrier::span::plank_holds;
use crate::barrier::{DesignError, LoadCase};
use crate::load::{WaterCase, fastest_for_velocity_head};
use crate::quantity::Length;

/// The answer is found to this part of itself.
const TOLERANCE: f64 = 1e-9;

impl Planks<'_> {
    /// The longest bearing length over which every plank passes every check under these
    /// loads, up to `most`; `None` where no length passes.
    ///
    /// Moment, shear and deflection over the length all grow with it, so that every shorter
    /// one passes too.
    pub(super) fn longest_bearing(&self, most: Length) -> Result<Option<Length>, DesignError> {
        greatest(most, |bearing| self.hold(&self.heaviest, bearing))
    }

    /// The greatest depth of water over the sill at which planks stacked that high pass over
    /// a bearing length, up to `most`; `None` where none does, and for water that drags, whose
    /// pressure may be greater in shallower water.
    pub(super) fn greatest_depth(
        &self,
        bearing: Length,
        water: WaterCase,
        most: Length,
    ) -> Result<Option<Length>, DesignError> {
        let limit = fastest_for_velocity_head();
        if water.velocity.is_some_and(|velocity| velocity > limit) {
            return Ok(None);
        }
        let at_top = self.loads.iter().find(|load| load.case == LoadCase::Top);
        let debris = at_top.and_then(|load| load.debris);
        greatest(most, |depth| {
            let load = CaseLoad::of(LoadCase::Top, water, depth, depth)?;
            // Debris strikes this barrier, whose height does not change with the water.
            let load = CaseLoad { debris, ..load };
            let cover = self.kit.plank.cover;
            // No plank stands in more than the lowest whole ones do.
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            let count = (depth / cover).value.ceil().max(1.0) as u32;
            self.hold(&heaviest_planks(&load, cover, count), bearing)
        })
    }

    fn hold(&self, planks: &[HeaviestPlank], bearing: Length) -> Result<bool, DesignError> {
        let loads = planks.iter().map(|plank| plank.load);
        plank_holds(&self.kit.plank, bearing, loads, &self.basis)
    }
}

/// The greatest length up to `most` that passes, where every shorter one passes too.
fn greatest(
    most: Length,
    passes: impl Fn(Length) -> Result<bool, DesignError>,
) -> Result<Option<Length>, DesignError> {
    if most.value <= 0.0 {
        return Ok(None);
    }
    if passes(most)? {
        return Ok(Some(most));
    }
    let (mut low, mut high) = (Length::default(), most);
    while (high - low) > high * TOLERANCE && high.value >= 1e-6 {
        let middle = (low + high) / 2.0;
        if passes(middle)? {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok((low.value > 0.0).then_some(low))
}
