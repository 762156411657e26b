//! How far the planks of a kit reach, and how deep the water may stand before them.

use super::spans::Planks;
use super::water::CaseLoad;
use crate::barrier::{Check, DesignError, LoadCase, PlankStack};
use crate::load::WaterCase;
use crate::quantity::Length;

/// The answer is found to this part of itself.
const TOLERANCE: f64 = 1e-9;

impl Planks<'_> {
    /// The longest bearing length over which every plank passes every check under these
    /// loads, up to the kit's longest piece; `None` where nothing presses or no length passes.
    pub(super) fn longest_span(&self) -> Result<Option<Length>, DesignError> {
        if self.loads.iter().all(|load| load.on_barrier.is_empty()) {
            return Ok(None);
        }
        let passes = |span| Ok(self.checks(span)?.iter().all(Check::holds));
        greatest(self.kit.plank.longest, passes)
    }

    /// The greatest depth of water over the sill at which planks stacked that high pass over
    /// a bearing length, up to the height of the kit or of `most`; `None` where none does.
    pub(super) fn greatest_depth(
        &self,
        bearing: Length,
        water: WaterCase,
        most: Length,
    ) -> Result<Option<Length>, DesignError> {
        let passes = |depth: Length| {
            let load = CaseLoad::of(LoadCase::Top, water, depth, depth)?;
            let loads = [load];
            let cover = self.kit.plank.cover;
            // No plank stands in more than the lowest whole ones do.
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            let count = (depth / cover).value.ceil().max(1.0) as u32;
            let planks = Planks {
                stack: PlankStack {
                    count,
                    height: cover * f64::from(count),
                },
                loads: &loads,
                basis: self.basis.clone(),
                ..*self
            };
            Ok(planks.checks(bearing)?.iter().all(Check::holds))
        };
        greatest(most, passes)
    }
}

/// The greatest length up to `most` that passes, where every shorter one passes too.
fn greatest(
    most: Length,
    passes: impl Fn(Length) -> Result<bool, DesignError>,
) -> Result<Option<Length>, DesignError> {
    if passes(most)? {
        return Ok(Some(most));
    }
    let (mut low, mut high) = (Length::default(), most);
    while (high - low) > high * TOLERANCE {
        let middle = (low + high) / 2.0;
        if passes(middle)? {
            low = middle;
        } else {
            high = middle;
        }
        if high.value < 1e-6 {
            break;
        }
    }
    Ok((low.value > 0.0).then_some(low))
}
