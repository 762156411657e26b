//! Where the anchors up a post stand.

use proptest::prelude::*;
use sillmark::barrier::{Kit, WallAnchors};
use sillmark::quantity::Length;
use sillmark::quantity::unit::{inch, meter};

const EXAMPLE: &str = include_str!("../../data/kits/demonstration.toml");

proptest! {
    /// They rise, none stands in another, neighbours are no farther apart than the spacing and
    /// a diameter, and both ends are as far from an anchor as the kit says.
    #[test]
    fn heights(post in 0.05..4.0_f64, first in 0.01..0.5_f64, spacing in 0.02..1.0_f64) {
        let metres = Length::new::<meter>;
        let anchors = WallAnchors {
            diameter: metres(0.01),
            first: metres(first),
            spacing: metres(spacing),
        };
        let heights = anchors.heights(metres(post));
        if metres(post) - metres(first) <= metres(first) + metres(0.01) {
            prop_assert_eq!(heights, [metres(post) / 2.0]);
        } else {
            prop_assert_eq!(heights[0], metres(first));
            prop_assert_eq!(heights[heights.len() - 1], metres(post) - metres(first));
            for pair in heights.windows(2) {
                let apart = pair[1] - pair[0];
                prop_assert!(apart.value > 0.0 && apart <= metres(spacing + 0.010_000_001));
            }
        }
    }
}

/// Whole spacings up to the last anchor, in steps that binary numbers do not have: no second
/// anchor in its place.
#[test]
fn no_two_anchors_in_one_place() {
    let metres = Length::new::<meter>;
    let anchors = WallAnchors {
        diameter: Length::new::<inch>(0.375),
        first: metres(0.1),
        spacing: metres(0.1),
    };
    for tenths in 3..40_u32 {
        let found = anchors.heights(metres(0.1) * f64::from(tenths));
        assert_eq!(found.len(), tenths as usize - 1, "{tenths}");
    }
}

#[test]
fn a_spacing_that_is_a_slip() {
    let text = EXAMPLE.replace("spacing = \"12 in\"", "spacing = \"12 mm\"");
    assert_ne!(text, EXAMPLE);
    let error = Kit::from_toml("kit.toml", &text).unwrap_err().to_string();
    assert!(
        error.contains("spacing \"12 mm\": no anchors stand that close"),
        "{error}"
    );
}
