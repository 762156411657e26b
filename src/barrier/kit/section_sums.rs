//! The properties of a section that is made of rectangles, by summing strips.

use crate::quantity::Length;
use crate::quantity::unit::{Area, SecondMoment, SectionModulus, meter};

/// One rectangle of a profile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rectangle {
    /// Its near edge, measured in the direction of the water.
    pub x: Length,
    /// Its lower edge, measured across that.
    pub y: Length,
    /// Its extent in the direction of the water.
    pub width: Length,
    /// Its extent across that.
    pub height: Length,
    /// Whether it is cut out of the others.
    pub hole: bool,
}

/// The sums over a profile, about its own axis across the direction of the water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionSums {
    /// Extent in the direction of the water.
    pub depth: Length,
    /// Area of the metal.
    pub area: Area,
    /// Second moment of area.
    pub second_moment: SecondMoment,
    /// Elastic modulus at the fibre that is farthest from the axis.
    pub elastic_modulus: SectionModulus,
    /// Plastic modulus, about the axis that halves the area.
    pub plastic_modulus: SectionModulus,
}

/// A profile that is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ProfileError {
    /// Two solid rectangles or two holes lie on each other and would be counted twice.
    #[error("rectangles {0} and {1} overlap")]
    Overlap(usize, usize),
    /// A hole reaches beyond the solid rectangles.
    #[error("hole {0} is not wholly within the metal")]
    HoleOutside(usize),
    /// There is no metal.
    #[error("it has no metal")]
    Empty,
}

/// Between two neighbouring edges the metal is of one breadth.
struct Strip {
    from: f64,
    to: f64,
    breadth: f64,
}

/// Overlaps below this are rounding: a nanometre.
const ROUNDING_METRES: f64 = 1e-9;

/// Sums a profile: strips of one breadth between neighbouring edges, each exact.
///
/// # Errors
/// [`ProfileError`] where rectangles overlap, a hole is not in metal, or there is none.
/// Rectangles are counted from 1.
///
/// ```
/// use sillmark::barrier::{Rectangle, section_sums};
/// use sillmark::quantity::Length;
/// use sillmark::quantity::unit::inch;
/// let inches = Length::new::<inch>;
/// let bar = Rectangle { x: inches(0.0), y: inches(0.0), width: inches(2.0), height: inches(6.0), hole: false };
/// let sums = section_sums(&[bar])?;
/// // b·d²/6 and b·d²/4
/// assert!((sums.elastic_modulus.value / inches(1.0).value.powi(3) - 4.0).abs() < 1e-12);
/// assert!((sums.plastic_modulus.value / inches(1.0).value.powi(3) - 6.0).abs() < 1e-12);
/// # Ok::<(), sillmark::barrier::ProfileError>(())
/// ```
pub fn section_sums(profile: &[Rectangle]) -> Result<SectionSums, ProfileError> {
    check(profile)?;
    let strips = strips(profile);
    let area: f64 = strips.iter().map(Strip::area).sum();
    let (Some(first), Some(last)) = (strips.first(), strips.last()) else {
        return Err(ProfileError::Empty);
    };
    let axis = strips
        .iter()
        .map(|strip| strip.area() * strip.middle())
        .sum::<f64>()
        / area;
    let second: f64 = strips.iter().map(|strip| strip.second_moment(axis)).sum();
    let farthest = (axis - first.from).max(last.to - axis);
    let square_metre = Length::new::<meter>(1.0) * Length::new::<meter>(1.0);
    Ok(SectionSums {
        depth: Length::new::<meter>(last.to - first.from),
        area: square_metre * area,
        second_moment: square_metre * square_metre * second,
        elastic_modulus: square_metre * Length::new::<meter>(second / farthest),
        plastic_modulus: square_metre * Length::new::<meter>(plastic(&strips, area)),
    })
}

impl Rectangle {
    fn far(&self) -> Length {
        self.x + self.width
    }

    fn shared_with(&self, other: &Self) -> Area {
        let shared = |from: Length, to: Length| (to - from).max(Length::default());
        shared(self.x.max(other.x), self.far().min(other.far()))
            * shared(
                self.y.max(other.y),
                (self.y + self.height).min(other.y + other.height),
            )
    }
}

impl Strip {
    fn area(&self) -> f64 {
        self.breadth * (self.to - self.from)
    }

    fn middle(&self) -> f64 {
        f64::midpoint(self.from, self.to)
    }

    fn second_moment(&self, axis: f64) -> f64 {
        let depth = self.to - self.from;
        self.area() * (depth * depth / 12.0 + (self.middle() - axis).powi(2))
    }

    /// First moment of what lies on either side of an axis, without signs.
    fn first_moment(&self, axis: f64) -> f64 {
        let arm = |at: f64| self.breadth * (at - axis).powi(2) / 2.0;
        if axis <= self.from {
            arm(self.to) - arm(self.from)
        } else if axis >= self.to {
            arm(self.from) - arm(self.to)
        } else {
            arm(self.from) + arm(self.to)
        }
    }
}

/// The first moments of both halves about the axis that halves the area.
fn plastic(strips: &[Strip], area: f64) -> f64 {
    let mut rest = area / 2.0;
    let mut axis = 0.0;
    for strip in strips {
        if rest <= strip.area() {
            axis = strip.from + rest / strip.breadth;
            break;
        }
        rest -= strip.area();
    }
    strips.iter().map(|strip| strip.first_moment(axis)).sum()
}

/// The strips that have metal, in order.
fn strips(profile: &[Rectangle]) -> Vec<Strip> {
    let mut edges: Vec<f64> = profile
        .iter()
        .flat_map(|rectangle| [rectangle.x.value, rectangle.far().value])
        .collect();
    edges.sort_by(f64::total_cmp);
    edges
        .windows(2)
        .filter(|edge| edge[1] - edge[0] > ROUNDING_METRES)
        .map(|edge| Strip {
            from: edge[0],
            to: edge[1],
            breadth: breadth(profile, f64::midpoint(edge[0], edge[1])),
        })
        .filter(|strip| strip.breadth > ROUNDING_METRES)
        .collect()
}

fn breadth(profile: &[Rectangle], at: f64) -> f64 {
    profile
        .iter()
        .filter(|rectangle| (rectangle.x.value..rectangle.far().value).contains(&at))
        .map(|rectangle| {
            let sign = if rectangle.hole { -1.0 } else { 1.0 };
            sign * rectangle.height.value
        })
        .sum()
}

fn check(profile: &[Rectangle]) -> Result<(), ProfileError> {
    let small =
        |area: Area, of: &Rectangle| area.value <= ROUNDING_METRES * (of.width + of.height).value;
    for (place, one) in profile.iter().enumerate() {
        for (further, other) in profile.iter().enumerate().skip(place + 1) {
            if one.hole == other.hole && !small(one.shared_with(other), one) {
                return Err(ProfileError::Overlap(place + 1, further + 1));
            }
        }
        if one.hole {
            let metal = profile
                .iter()
                .filter(|other| !other.hole)
                .map(|other| one.shared_with(other))
                .fold(Area::default(), |sum, part| sum + part);
            if !small(one.width * one.height - metal, one) {
                return Err(ProfileError::HoleOutside(place + 1));
            }
        }
    }
    Ok(())
}
