//! One leg, divided into equal spans.

use crate::quantity::Length;

/// How a post meets the planks of a leg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PostFit {
    /// How much of the leg's length the post takes.
    pub taken: Length,
    /// How far a plank reaches into the post's pocket.
    pub engagement: Length,
}

/// A straight part of a barrier between two walls or corners.
#[derive(Clone, Debug, PartialEq)]
pub struct Leg {
    /// Its length.
    pub length: Length,
    /// Its spans in order; the clear widths are equal.
    pub spans: Vec<Span>,
}

/// The planks between two posts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Clear width between the posts.
    pub clear: Length,
    /// Length that a plank bends over: from the middle of one bearing to that of the other.
    pub bearing: Length,
    /// Length that a plank is cut to: it ends short of the bottom of each pocket by the
    /// kit's clearance.
    pub cut: Length,
}

impl Leg {
    /// The longest that a plank of the leg bends over.
    #[must_use]
    pub fn longest_bearing(&self) -> Length {
        let bearings = self.spans.iter().map(|span| span.bearing);
        bearings.fold(Length::default(), Length::max)
    }

    /// The longest piece of the leg.
    #[must_use]
    pub fn longest_cut(&self) -> Length {
        let cuts = self.spans.iter().map(|span| span.cut);
        cuts.fold(Length::default(), Length::max)
    }
}

/// Divides a leg into `spans` spans of equal clear width between its two end posts, with
/// `between` posts where there is more than one span; `None` where the posts leave no clear
/// width or there is no post to put between.
///
/// ```
/// use sillmark::barrier::{PostFit, divide};
/// use sillmark::quantity::{Length, unit::inch};
/// let inches = Length::new::<inch>;
/// let channel = PostFit { taken: inches(2.0), engagement: inches(1.5) };
/// let leg = divide(inches(36.0), [channel, channel], None, 1).unwrap();
/// let span = leg.spans[0];
/// assert!((span.clear.get::<inch>() - 32.0).abs() < 1e-9);
/// assert!((span.cut.get::<inch>() - 35.0).abs() < 1e-9);
/// assert!((span.bearing.get::<inch>() - 33.5).abs() < 1e-9);
/// ```
#[must_use]
pub fn divide(
    length: Length,
    ends: [PostFit; 2],
    between: Option<PostFit>,
    spans: u32,
) -> Option<Leg> {
    let posts_between = spans.checked_sub(1)?;
    let mut posts = vec![ends[0]];
    for _ in 0..posts_between {
        posts.push(between?);
    }
    posts.push(ends[1]);
    let taken: Length = posts.iter().map(|post| post.taken).sum();
    let clear = (length - taken) / f64::from(spans);
    if clear <= Length::default() {
        return None;
    }
    let spans = posts
        .windows(2)
        .map(|pair| {
            let engagement = pair[0].engagement + pair[1].engagement;
            Span {
                clear,
                bearing: clear + engagement / 2.0,
                cut: clear + engagement,
            }
        })
        .collect();
    Some(Leg { length, spans })
}
