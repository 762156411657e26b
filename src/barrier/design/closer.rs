//! How close posts have to stand so that they hold.

use super::frame::{Frame, Framing};
use super::upright::{Upright, UprightDesign};
use crate::barrier::{DesignError, Post, divide};
use crate::quantity::Length;

/// Halvings of the width that a post carries: to a thousand-millionth of it.
const HALVINGS: u32 = 30;

impl Framing<'_> {
    /// The spans of each leg with which the posts of a failing kind hold, one span after the
    /// other put into the leg that loads them most; `None` where no number of spans will do.
    ///
    /// What a post holds is asked once, and the spans are counted up to it: a long run of many
    /// legs would otherwise be designed again for each of its posts.
    pub(super) fn closer(
        &self,
        frame: &Frame,
        failing: &UprightDesign,
    ) -> Result<Option<Vec<u32>>, DesignError> {
        let Some(post) = self.planks.kit.posts.standing(failing.role) else {
            return Ok(None);
        };
        let Some(holds) = self.widest_that_holds(post, failing)? else {
            return Ok(None);
        };
        let mut planned = Frame {
            legs: frame.legs.clone(),
            ..Frame::default()
        };
        loop {
            let Some(leg) = self.leg_to_divide(&planned, failing.role) else {
                return Ok(None);
            };
            let spans = planned.spans_of(leg) + 1;
            let ends = self.fits_of(leg);
            let length = planned.legs[leg].leg.length;
            let Some(divided) = divide(length, ends, self.between(), spans) else {
                return Ok(None);
            };
            planned.legs[leg].leg = divided;
            if tributary(&planned, failing.role, post) <= holds {
                break;
            }
        }
        let legs = 0..planned.legs.len();
        Ok(Some(legs.map(|leg| planned.spans_of(leg)).collect()))
    }

    /// The greatest width of barrier, up to the failing post's, that such a post carries; `None`
    /// where it carries none.
    fn widest_that_holds(
        &self,
        post: &Post,
        failing: &UprightDesign,
    ) -> Result<Option<Length>, DesignError> {
        let (mut holds, mut fails) = (Length::default(), failing.tributary);
        for _ in 0..HALVINGS {
            let middle = (holds + fails) / 2.0;
            if self.holds_at(failing.role, post, middle)? {
                holds = middle;
            } else {
                fails = middle;
            }
        }
        Ok((holds.value > 0.0).then_some(holds))
    }
}

/// The width of barrier that the post of a kind which carries most has.
fn tributary(frame: &Frame, role: Upright, post: &Post) -> Length {
    match role {
        Upright::Intermediate => frame.widest_divided() + post.width,
        Upright::Corner => frame.heaviest_corner(post).unwrap_or_default(),
    }
}
