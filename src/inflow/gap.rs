//! Water through an open gap.

use super::{InflowPart, Missing, Way};
use crate::load::standard_gravity;
use crate::quantity::unit::{Area, VolumeRate};
use crate::quantity::{Impossible, Length, Velocity, finite, not_negative, positive};
use crate::statement::{Citation, Confidence};

/// Discharge coefficient of a sharp-edged gap where none is stated: "about 0.6" in several
/// course notes; others print up to 0.62 for a sharp edge, so a user may state another.
pub const ORIFICE_COEFFICIENT: f64 = 0.6;

/// A discharge coefficient with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct Coefficient {
    /// The part of the ideal flow that passes.
    pub value: f64,
    /// Where it stands.
    pub citation: Citation,
}

impl Coefficient {
    /// The coefficient that is used where none is stated, [`ORIFICE_COEFFICIENT`].
    #[must_use]
    pub fn orifice() -> Self {
        Self {
            value: ORIFICE_COEFFICIENT,
            citation: Citation {
                source: "sharp-edged orifice, about 0.6 in several public course notes".into(),
                confidence: Confidence::Seen,
            },
        }
    }

    pub(super) fn check(&self) -> Result<(), Impossible> {
        positive("discharge coefficient", self.value, "")
    }
}

/// An upright rectangular gap; heights are measured up from the sill, negative below it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Its width along the wall.
    pub width: Length,
    /// Height of its lower edge.
    pub from: Length,
    /// Height of its upper edge.
    pub to: Length,
}

/// The flow through a gap that is small against the depth of its middle below the water,
/// Q = Cd·A·√(2·g·h).
///
/// # Errors
/// [`Impossible`] for an area, head or coefficient that cannot be.
///
/// ```
/// use sillmark::inflow::small_gap_flow;
/// use sillmark::quantity::unit::{Area, Length, liter_per_second, meter, square_meter};
/// let flow = small_gap_flow(Area::new::<square_meter>(0.002), Length::new::<meter>(0.6), 0.6)?;
/// assert!((flow.get::<liter_per_second>() - 4.118).abs() < 5e-4);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn small_gap_flow(
    area: Area,
    head: Length,
    coefficient: f64,
) -> Result<VolumeRate, Impossible> {
    not_negative("area of the gap", area.value, "m²")?;
    not_negative("head over the gap", head.value, "m")?;
    positive("discharge coefficient", coefficient, "")?;
    let speed: Velocity = (standard_gravity() * head * 2.0).sqrt();
    let flow: VolumeRate = area * speed * coefficient;
    finite("flow", flow.value, "m³/s")?;
    Ok(flow)
}

/// The flow through a gap of any height, dry behind, with the speed of each strip from its
/// own depth below the water, which stands `depth` above the sill: Q = ⅔·Cd·b·√(2·g)·(h₂^1.5 − h₁^1.5), h₁ and h₂ the depths of the upper and
/// the lower edge below the water (0 for an edge above it). Exact for the strip formula,
/// and the notch formula of a weir where the water stands below the upper edge.
///
/// Water behind the gap would slow the flow: what is given is the most.
///
/// A limit on leakage is no free gap. A gap of 1 mm by 2 m, 0.6 m below the water, passes
/// 4.117 L/s, which is 14,822 L/h; rates for each metre of a seal are of the order of
/// litres an hour. So neither can stand for the other.
///
/// Formula of the large rectangular orifice: public course notes and question banks, such as
/// examians.com (hydraulics and fluid mechanics).
///
/// # Errors
/// [`Impossible`] for a gap, depth or coefficient that cannot be.
///
/// ```
/// use sillmark::inflow::{Gap, gap_flow};
/// use sillmark::quantity::unit::{Length, liter_per_second, meter};
/// let metres = Length::new::<meter>;
/// let beside_a_post = Gap { width: metres(0.001), from: metres(0.0), to: metres(0.8) };
/// let part = gap_flow(&beside_a_post, metres(0.6), None)?; // wet to 0.6 m
/// assert!((part.flow.get::<liter_per_second>() - 0.8236).abs() < 1e-4);
/// assert_eq!(part.not_stated.len(), 1); // the coefficient
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn gap_flow(
    gap: &Gap,
    depth: Length,
    coefficient: Option<&Coefficient>,
) -> Result<InflowPart, Impossible> {
    not_negative("width of the gap", gap.width.value, "m")?;
    finite("lower edge of the gap", gap.from.value, "m")?;
    finite("upper edge of the gap", gap.to.value, "m")?;
    not_negative("height of the gap", (gap.to - gap.from).value, "m")?;
    finite("water depth", depth.value, "m")?;
    let used = coefficient.cloned().unwrap_or_else(Coefficient::orifice);
    used.check()?;
    let part = InflowPart {
        way: Way::Gap,
        flow: strip_flow(gap, depth, used.value),
        method: "Q = ⅔·Cd·b·√(2·g)·(h₂^1.5 − h₁^1.5)",
        citation: used.citation,
        not_stated: match coefficient {
            Some(_) => Vec::new(),
            None => vec![Missing::DischargeCoefficient],
        },
    };
    part.checked()
}

/// The strips of a gap below the water, added up.
pub(super) fn strip_flow(gap: &Gap, depth: Length, coefficient: f64) -> VolumeRate {
    // h·√(2·g·h) is the flow of a strip times its depth: h^1.5 with its units.
    let power = |edge: Length| {
        let head = (depth - edge).max(Length::default());
        let speed: Velocity = (standard_gravity() * head * 2.0).sqrt();
        speed * head
    };
    gap.width * (power(gap.from) - power(gap.to)) * (2.0 / 3.0 * coefficient)
}
