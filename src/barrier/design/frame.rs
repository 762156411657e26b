//! The posts of a barrier and the legs between them.

use super::end_choice::EndChoice;
use super::spans::{Planks, PlannedLeg};
use super::task::BarrierTask;
use super::upright::UprightDesign;
use crate::barrier::{DesignError, Kit, PostFit, Shortfall};

/// Legs, free-standing posts, and what they lack.
#[derive(Default)]
pub(super) struct Frame {
    pub(super) legs: Vec<PlannedLeg>,
    pub(super) uprights: Vec<UprightDesign>,
    pub(super) shortfalls: Vec<Shortfall>,
    /// Whether a brace is needed, and no side for it was stated.
    pub(super) side_missing: bool,
}

/// What a frame is built from.
pub(super) struct Framing<'a> {
    pub(super) task: &'a BarrierTask,
    pub(super) planks: Planks<'a>,
    pub(super) ends: &'a EndChoice<'a>,
}

impl Framing<'_> {
    /// The frame with the fewest spans whose planks, posts and braces hold.
    ///
    /// Posts that fail alone are braced; those that fail braced, or cannot be, are set
    /// closer, one span after the other in the leg that loads them most. Where nothing
    /// holds, the frame with the fewest spans whose planks hold is given with its failing
    /// checks.
    pub(super) fn build(&self) -> Result<Frame, DesignError> {
        let mut least = vec![1; self.task.run.legs().len()];
        let mut first: Option<Frame> = None;
        while let Some(frame) = self.with_spans(&least)? {
            let failing = frame.uprights.iter().find(|post| !post.holds());
            let Some(failing) = failing else {
                return Ok(frame);
            };
            let closer = self.closer(&frame, failing)?;
            let first = first.get_or_insert(frame);
            match closer {
                Some(closer) => least = closer,
                None => return Ok(std::mem::take(first)),
            }
        }
        Ok(first.unwrap_or_default())
    }

    /// The frame whose legs have so many spans or more; `None` where one cannot be divided
    /// into so many.
    fn with_spans(&self, least: &[u32]) -> Result<Option<Frame>, DesignError> {
        let mut frame = Frame::default();
        let kit = self.planks.kit;
        let corners = self.task.run.corners();
        if corners > 0 && kit.posts.corner.is_none() {
            frame.lacks("corner post", "this run needs where it turns");
        }
        let between = self.between();
        for (position, (length, least)) in self.task.run.legs().iter().zip(least).enumerate() {
            let ends = self.fits_of(position);
            match self.planks.plan(*length, ends, between, *least)? {
                Some(planned) => frame.take_leg(planned, &self.planks),
                None if *least > 1 => return Ok(None),
                None => frame.shortfalls.push(Shortfall::NoRoom { leg: *length }),
            }
        }
        if frame.legs.len() < least.len() {
            // A run with a leg missing is none, and its posts would carry something else.
            frame.legs.clear();
        } else {
            self.stand_posts(&mut frame)?;
        }
        Ok(Some(frame))
    }
}

impl Framing<'_> {
    /// How the posts at both ends of a leg meet its planks.
    pub(super) fn fits_of(&self, leg: usize) -> [PostFit; 2] {
        let corner = corner_fit(self.planks.kit);
        let at_wall = |end: bool| if end { self.ends.fit } else { corner };
        [at_wall(leg == 0), at_wall(leg == self.task.run.corners())]
    }

    /// How a post between two planks of a leg meets them; `None` where the kit has none.
    pub(super) fn between(&self) -> Option<PostFit> {
        let post = self.planks.kit.posts.intermediate.as_ref();
        post.map(|post| PostFit {
            taken: post.width,
            engagement: post.engagement(),
        })
    }
}

/// How a corner post meets the planks: legs are measured to its middle.
fn corner_fit(kit: &Kit) -> PostFit {
    let post = kit.posts.corner.as_ref();
    post.map_or_else(PostFit::default, |post| PostFit {
        taken: post.width / 2.0,
        engagement: post.engagement(),
    })
}

impl Frame {
    pub(super) fn lacks(&mut self, part: &'static str, purpose: &str) {
        let shortfall = Shortfall::KitLacks {
            part,
            purpose: purpose.to_owned(),
        };
        if !self.shortfalls.contains(&shortfall) {
            self.shortfalls.push(shortfall);
        }
    }

    pub(super) fn spans_of(&self, leg: usize) -> u32 {
        let spans = self
            .legs
            .get(leg)
            .map_or(0, |planned| planned.leg.spans.len());
        u32::try_from(spans).unwrap_or(u32::MAX)
    }

    fn take_leg(&mut self, planned: PlannedLeg, planks: &Planks<'_>) {
        let no_post = planks.kit.posts.intermediate.is_none();
        let failing: Vec<Shortfall> = planned
            .checks
            .iter()
            .filter(|check| !check.holds())
            .map(|check| Shortfall::Fails(check.clone()))
            .collect();
        let too_long = planks.is_too_long(&planned.leg);
        if no_post && (too_long || !failing.is_empty()) {
            self.lacks("intermediate post", "its planks need at this width");
        }
        if no_post && planks.practice_asks(planned.leg.length) {
            self.lacks(
                "intermediate post",
                "common practice asks for in a barrier so wide and so high",
            );
        }
        if too_long {
            self.shortfalls.push(Shortfall::TooLong {
                piece: planned.leg.longest_cut(),
                longest: planks.kit.plank.longest,
            });
        }
        self.shortfalls.extend(failing);
        self.legs.push(planned);
    }
}
