//! The colour of each verdict, in pages and map layers.
//!
//! Four of the eight colours of Okabe and Ito, *Color Universal Design* (2008), which people
//! with any of the common kinds of colour blindness can tell apart: blue, orange, vermillion and
//! reddish purple (values from memory). The greens of the scheme are left out on purpose: green
//! reads as "safe", and no verdict says that.

use crate::statement::Choice;
use crate::table::{ClassStyle, StyleClass};
use crate::verdict::Verdict;

/// Red, green and blue, each 0 to 255.
///
/// ```
/// use sillmark::report::verdict_colour;
/// use sillmark::verdict::Verdict;
/// assert_eq!(verdict_colour(Verdict::Above), [0, 114, 178]);
/// ```
#[must_use]
pub const fn verdict_colour(verdict: Verdict) -> [u8; 3] {
    match verdict {
        Verdict::Above => [0, 114, 178],
        Verdict::Protect => [230, 159, 0],
        Verdict::Engineer => [213, 94, 0],
        Verdict::Unresolved => [204, 121, 167],
    }
}

/// A map layer's style by its column `verdict`: each in its colour.
#[must_use]
pub fn verdict_style() -> ClassStyle {
    let classes = Verdict::CHOICES.iter();
    let classes = classes.map(|(word, verdict)| StyleClass {
        value: (*word).to_owned(),
        label: (*word).to_owned(),
        colour: verdict_colour(*verdict),
    });
    ClassStyle {
        column: "verdict".to_owned(),
        classes: classes.collect(),
    }
}
