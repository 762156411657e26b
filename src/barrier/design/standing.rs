//! The free-standing posts of a frame: what they carry, and which leg to divide where one of
//! them fails.

use super::frame::{Frame, Framing};
use super::spans::PlannedLeg;
use super::upright::{Upright, UprightTask};
use crate::barrier::{DesignError, Post};
use crate::load::WaveAction;
use crate::quantity::Length;
use crate::site::BraceSide;

/// Posts are set no closer than so many of their widths to make them hold (common practice,
/// no source).
const CLOSEST_POSTS_IN_WIDTHS: f64 = 3.0;

/// One kind of post that stands free in a frame.
#[derive(Clone, Copy)]
struct Standing<'a> {
    role: Upright,
    count: usize,
    post: &'a Post,
    tributary: Length,
    of_legs: Option<[Length; 2]>,
}

impl Framing<'_> {
    /// Stands the posts of a frame whose legs are divided.
    pub(super) fn stand_posts(&self, frame: &mut Frame) -> Result<(), DesignError> {
        let posts = &self.planks.kit.posts;
        if let Some(post) = &posts.intermediate {
            let divided = || frame.legs.iter().filter(|planned| is_divided(planned));
            let standing = Standing {
                role: Upright::Intermediate,
                count: divided().map(|planned| planned.leg.spans.len() - 1).sum(),
                post,
                tributary: frame.widest_divided() + post.width,
                of_legs: None,
            };
            self.stand(frame, standing)?;
        }
        if let Some(post) = &posts.corner {
            let corner = heaviest_corner(frame, post);
            let standing = Standing {
                role: Upright::Corner,
                count: self.task.run.corners(),
                post,
                tributary: corner.map_or(Length::default(), |corner| corner.sum()),
                of_legs: corner.map(|corner| corner.of_legs),
            };
            self.stand(frame, standing)?;
        }
        Ok(())
    }

    /// One kind of free-standing post: alone, or with a brace where waves act or it fails.
    fn stand(&self, frame: &mut Frame, standing: Standing<'_>) -> Result<(), DesignError> {
        if standing.count == 0 {
            return Ok(());
        }
        let task = self.task_of(standing);
        let alone = task.design(None)?;
        let waves = self.waves_act();
        if alone.holds() && !waves {
            frame.uprights.push(alone);
            return Ok(());
        }
        let Some(brace) = &self.planks.kit.brace else {
            let purpose = if waves {
                "waves ask for"
            } else {
                "its posts need under this load"
            };
            frame.lacks("brace", purpose);
            frame.uprights.push(alone);
            return Ok(());
        };
        // The moment in the post is the same on either side; the dry side also lifts its base
        // plate, so that it is the one to plan with until somebody says.
        let side = self.task.brace.unwrap_or(BraceSide::Dry);
        frame.side_missing |= self.task.brace.is_none();
        frame.uprights.push(task.design(Some((brace, side)))?);
        Ok(())
    }

    fn task_of<'a>(&'a self, standing: Standing<'a>) -> UprightTask<'a> {
        UprightTask {
            role: standing.role,
            count: u32::try_from(standing.count).unwrap_or(u32::MAX),
            post: standing.post,
            tributary: standing.tributary,
            of_legs: standing.of_legs,
            height: self.planks.stack.height,
            loads: self.planks.loads,
            rules: self.planks.rules,
        }
    }

    fn waves_act(&self) -> bool {
        matches!(
            self.task.water.waves,
            Some(
                WaveAction::Breaking(_)
                    | WaveAction::BreakingWithout { .. }
                    | WaveAction::NonBreaking
            )
        )
    }

    /// Whether a post with so much water on it holds, alone or as the kit braces it.
    pub(super) fn holds_at(
        &self,
        role: Upright,
        post: &Post,
        tributary: Length,
    ) -> Result<bool, DesignError> {
        let task = self.task_of(Standing {
            role,
            count: 1,
            post,
            tributary,
            of_legs: None,
        });
        let brace = self.planks.kit.brace.as_ref();
        let may_stand_alone = brace.is_none() || !self.waves_act();
        if may_stand_alone && task.design(None)?.holds() {
            return Ok(true);
        }
        let Some(brace) = brace else {
            return Ok(false);
        };
        let side = self.task.brace.unwrap_or(BraceSide::Dry);
        Ok(task.design(Some((brace, side)))?.holds())
    }

    /// The leg that one more post helps a failing post most in; `None` where none may be
    /// divided further.
    pub(super) fn leg_to_divide(&self, frame: &Frame, failing: Upright) -> Option<usize> {
        let post = self.planks.kit.posts.intermediate.as_ref()?;
        let closest = post.width * CLOSEST_POSTS_IN_WIDTHS;
        let all = 0..frame.legs.len();
        let candidates: Vec<usize> = match failing {
            Upright::Intermediate => all.filter(|leg| is_divided(&frame.legs[*leg])).collect(),
            Upright::Corner => {
                let corner_post = self.planks.kit.posts.corner.as_ref()?;
                let corner = heaviest_corner(frame, corner_post)?;
                vec![corner.first_leg, corner.first_leg + 1]
            }
        };
        let width = |leg: &usize| clear(&frame.legs[*leg]) + post.width;
        let wide = candidates.into_iter().filter(|leg| width(leg) > closest);
        wide.max_by(|one, other| width(one).value.total_cmp(&width(other).value))
    }
}

impl Frame {
    /// The widest clear width among the legs that are divided.
    pub(super) fn widest_divided(&self) -> Length {
        let divided = self.legs.iter().filter(|planned| is_divided(planned));
        divided.map(clear).fold(Length::default(), Length::max)
    }

    /// The width of barrier on the corner post that carries most.
    pub(super) fn heaviest_corner(&self, post: &Post) -> Option<Length> {
        heaviest_corner(self, post).map(|corner| corner.sum())
    }
}

fn is_divided(planned: &PlannedLeg) -> bool {
    planned.leg.spans.len() > 1
}

/// Clear width of the spans of a leg, which are equal.
fn clear(planned: &PlannedLeg) -> Length {
    let first = planned.leg.spans.first();
    first.map_or(Length::default(), |span| span.clear)
}

/// The corner whose post carries most.
#[derive(Clone, Copy)]
struct Corner {
    first_leg: usize,
    of_legs: [Length; 2],
}

impl Corner {
    /// The water presses each leg at a right angle to the other: the post takes the vector
    /// sum.
    fn sum(&self) -> Length {
        let [one, other] = self.of_legs;
        Length {
            value: one.value.hypot(other.value),
            ..one
        }
    }
}

fn heaviest_corner(frame: &Frame, post: &Post) -> Option<Corner> {
    let share = |planned| (clear(planned) + post.width) / 2.0;
    let corners = frame
        .legs
        .windows(2)
        .enumerate()
        .map(|(first_leg, pair)| Corner {
            first_leg,
            of_legs: [share(&pair[0]), share(&pair[1])],
        });
    corners.max_by(|one, other| one.sum().value.total_cmp(&other.sum().value))
}
