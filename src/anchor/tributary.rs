//! Anchors up a post that is fixed to a wall or reveal, and the share of the load of each.

use super::error::{AnchorError, Shown};
use crate::beam::LinearLoad;
use crate::quantity::Length;
use crate::quantity::unit::{Force, meter};

/// The part of a load between two heights.
fn force_between(load: &LinearLoad, bottom: Length, top: Length) -> Force {
    let (bottom, top) = (bottom.max(load.from), top.min(load.to));
    if top <= bottom {
        return Force::default();
    }
    let at = |height: Length| {
        let part = (height - load.from) / (load.to - load.from);
        load.at_from + (load.at_to - load.at_from) * part
    };
    (at(bottom) + at(top)) / 2.0 * (top - bottom)
}

/// What one anchor up a post carries in shear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AnchorShare {
    /// The height of the anchor.
    pub height: Length,
    /// Its share of the load.
    pub shear: Force,
}

/// Shear on each anchor up a post: each carries the load nearer to it than to its neighbours,
/// the lowest all below it, the uppermost all above it. Common practice, no source.
///
/// # Errors
/// [`AnchorError`] where there are no anchors, heights do not rise, or a band is empty or not
/// finite.
///
/// ```
/// use sillmark::anchor::tributary_shares;
/// use sillmark::beam::LinearLoad;
/// use sillmark::quantity::unit::{Force, Length, kilonewton, meter};
/// let metres = Length::new::<meter>;
/// let load = |number| Force::new::<kilonewton>(number) / metres(1.0);
/// // A triangle from 6 kN/m at the sill to nothing at 1.2 m, three anchors.
/// let water = LinearLoad { from: metres(0.0), to: metres(1.2), at_from: load(6.0), at_to: load(0.0) };
/// let shares = tributary_shares(&[metres(0.2), metres(0.6), metres(1.0)], &[water])?;
/// let kilonewtons: Vec<_> = shares.iter().map(|share| share.shear.get::<kilonewton>()).collect();
/// assert!((kilonewtons[0] - 2.0).abs() < 1e-9);
/// assert!((kilonewtons.iter().sum::<f64>() - 3.6).abs() < 1e-9);
/// # Ok::<(), sillmark::anchor::AnchorError>(())
/// ```
pub fn tributary_shares(
    heights: &[Length],
    bands: &[LinearLoad],
) -> Result<Vec<AnchorShare>, AnchorError> {
    validate(heights, bands)?;
    let middle = |pair: &[Length]| (pair[0] + pair[1]) / 2.0;
    let beyond = Length::new::<meter>(f64::INFINITY);
    let mut bottom = -beyond;
    let shares = heights.iter().enumerate().map(|(position, height)| {
        let top = heights.get(position..position + 2).map_or(beyond, middle);
        let shear = bands.iter().fold(Force::default(), |sum, band| {
            sum + force_between(band, bottom, top)
        });
        bottom = top;
        AnchorShare {
            height: *height,
            shear,
        }
    });
    Ok(shares.collect())
}

fn validate(heights: &[Length], bands: &[LinearLoad]) -> Result<(), AnchorError> {
    if heights.is_empty() {
        return Err(AnchorError::NoAnchors {
            what: "anchors up the post",
        });
    }
    for (position, height) in heights.iter().enumerate() {
        let rises = position == 0 || *height > heights[position - 1];
        if !height.value.is_finite() || !rises {
            return Err(AnchorError::HeightsDoNotRise {
                height: height.shown(),
            });
        }
    }
    for band in bands {
        let finite = [band.from, band.to]
            .iter()
            .all(|height| height.value.is_finite());
        if !finite || band.to <= band.from {
            return Err(AnchorError::EmptyBand {
                from: band.from.shown(),
                to: band.to.shown(),
            });
        }
        for load in [band.at_from, band.at_to] {
            if !load.value.is_finite() {
                return Err(AnchorError::OutOfRange {
                    what: "load",
                    value: format!("{} N/m", load.value),
                    accepted: "a finite load",
                });
            }
        }
    }
    Ok(())
}
