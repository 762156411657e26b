//! Where the end posts stand: within the reveal or on the face of the wall.

use crate::barrier::limit::exceeds;
use crate::quantity::{Length, UnitSystem};
use crate::site::Mount;

/// What an opening offers to end posts, as far as it was measured.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Place {
    /// Depth of the reveal.
    pub reveal: Option<Length>,
    /// Flat wall at each side.
    pub face: Option<Length>,
    /// The mount that the user asks for.
    pub asked: Option<Mount>,
}

/// What the kit's end posts need: depth of reveal, width of flat wall; `None` where the kit
/// has no such post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Needs {
    /// Depth of reveal for an inside mount.
    pub reveal: Option<Length>,
    /// Flat wall at each side for an outside mount.
    pub face: Option<Length>,
}

/// The mount, or why there is none yet.
#[derive(Clone, Debug, PartialEq)]
pub enum MountChoice {
    /// It fits.
    Fits(Mount),
    /// It depends on what nobody has measured yet.
    MeasureOnSite {
        /// The field that is missing and what it has to be at least.
        missing: Vec<(&'static str, Length)>,
    },
    /// What was measured is too small for every post of the kit, or for the one asked for.
    Nothing {
        /// What was measured and what is needed.
        too_small: Vec<TooSmall>,
    },
}

/// A measure that is too small for a post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TooSmall {
    /// `reveal` or `face`.
    pub field: &'static str,
    /// As measured.
    pub measured: Length,
    /// What the post needs.
    pub needed: Length,
}

impl TooSmall {
    /// In words.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        format!(
            "{} of {} where the kit's post needs {}",
            self.field,
            units.dimension(self.measured),
            units.dimension(self.needed)
        )
    }
}

/// Chooses the mount: the one asked for; else inside where the reveal is deep enough; else
/// outside where the face is wide enough.
///
/// ```
/// use sillmark::site::Mount;
/// use sillmark::barrier::{MountChoice, MountNeeds, MountPlace, choose_mount};
/// use sillmark::quantity::{Length, unit::inch};
/// let inches = Length::new::<inch>;
/// let needs = MountNeeds { reveal: Some(inches(4.0)), face: Some(inches(5.0)) };
/// let shallow = MountPlace { reveal: Some(inches(2.0)), face: Some(inches(8.0)), asked: None };
/// assert_eq!(choose_mount(shallow, needs), MountChoice::Fits(Mount::Outside));
/// let unmeasured = MountPlace::default();
/// assert!(matches!(choose_mount(unmeasured, needs), MountChoice::MeasureOnSite { .. }));
/// ```
#[must_use]
pub fn choose_mount(place: Place, needs: Needs) -> MountChoice {
    let offers = [
        (Mount::Inside, "reveal", place.reveal, needs.reveal),
        (Mount::Outside, "face", place.face, needs.face),
    ];
    let (mut missing, mut too_small) = (Vec::new(), Vec::new());
    for (mount, field, measured, needed) in offers {
        if place.asked.is_some_and(|asked| asked != mount) {
            continue;
        }
        match (measured, needed) {
            (Some(measured), Some(needed)) if !exceeds(needed, measured) => {
                return MountChoice::Fits(mount);
            }
            (Some(measured), Some(needed)) => too_small.push(TooSmall {
                field,
                measured,
                needed,
            }),
            (None, Some(needed)) => missing.push((field, needed)),
            (_, None) => {}
        }
    }
    if missing.is_empty() {
        MountChoice::Nothing { too_small }
    } else {
        MountChoice::MeasureOnSite { missing }
    }
}
