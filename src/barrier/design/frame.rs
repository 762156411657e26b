//! The posts of a barrier and the legs between them.

use super::ends::Ends;
use super::spans::{Planks, PlannedLeg};
use super::task::BarrierTask;
use super::upright::{Upright, UprightDesign, UprightTask};
use crate::barrier::{
    Check, DesignError, Kit, MountChoice, MountNeeds, Post, PostFit, Shortfall, choose_mount,
};
use crate::load::WaveAction;
use crate::quantity::Length;
use crate::site::{BraceSide, Mount};

/// How the ends meet the wall, and the post that layout and loads are worked out with.
pub(super) struct EndChoice<'a> {
    /// `None` until somebody has measured on site.
    pub(super) ends: Option<Ends>,
    /// What the choice of the mount came to; `None` for a run, which has none.
    pub(super) mount: Option<MountChoice>,
    /// The post; that of the wider mount where the mount is not known. `None` where the kit
    /// has none that could stand there.
    pub(super) post: Option<&'a Post>,
    pub(super) fit: PostFit,
}

impl<'a> EndChoice<'a> {
    pub(super) fn of(task: &BarrierTask, kit: &'a Kit) -> Self {
        if task.run.corners() > 0 {
            let post = kit.posts.inside.as_ref();
            return Self {
                ends: Some(Ends::AgainstWall),
                mount: None,
                post,
                fit: fit(post, Mount::Inside),
            };
        }
        let (inside, outside) = (kit.posts.inside.as_ref(), kit.posts.outside.as_ref());
        let mount = choose_mount(
            task.place,
            MountNeeds {
                reveal: inside.map(|post| post.least_room(Mount::Inside)),
                face: outside.map(|post| post.least_room(Mount::Outside)),
            },
        );
        let posts = &kit.posts;
        let chosen = match (&mount, task.place.asked) {
            (MountChoice::Fits(fits), _) => *fits,
            (_, Some(asked)) => asked,
            // On the face planks are longer than in the reveal.
            _ if posts.outside.is_some() => Mount::Outside,
            _ => Mount::Inside,
        };
        let post = match chosen {
            Mount::Inside => posts.inside.as_ref(),
            Mount::Outside => posts.outside.as_ref(),
        };
        Self {
            ends: match mount {
                MountChoice::Fits(fits) => Some(Ends::Mounted(fits)),
                MountChoice::MeasureOnSite { .. } | MountChoice::Nothing { .. } => None,
            },
            mount: Some(mount),
            post,
            fit: fit(post, chosen),
        }
    }
}

/// How an end post meets the planks: in the reveal it takes a part of the opening's width, on
/// the face it does not.
fn fit(post: Option<&Post>, mount: Mount) -> PostFit {
    post.map_or_else(PostFit::default, |post| PostFit {
        taken: match mount {
            Mount::Inside => post.width,
            Mount::Outside => Length::default(),
        },
        engagement: post.engagement(),
    })
}

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

/// Posts are set no closer than so many of their widths to make them hold.
const CLOSEST_POSTS_IN_WIDTHS: f64 = 3.0;

impl Framing<'_> {
    /// The frame with the fewest spans whose planks and posts hold.
    ///
    /// Posts that fail alone are braced; those that fail braced, or cannot be, are set
    /// closer. Where nothing holds, the frame with the fewest spans whose planks hold is
    /// given with its failing checks.
    pub(super) fn build(&self) -> Result<Frame, DesignError> {
        let mut first = None;
        let mut least = 1;
        loop {
            let frame = self.with_spans(least)?;
            let holds = frame
                .uprights
                .iter()
                .flat_map(|post| &post.checks)
                .all(Check::holds);
            if holds || frame.legs.is_empty() {
                return Ok(if holds { frame } else { first.unwrap_or(frame) });
            }
            let widest = frame.uprights.iter().map(|post| post.tributary);
            let widest = widest.fold(Length::default(), Length::max);
            let most = frame.legs.iter().map(|planned| planned.leg.spans.len());
            let next = u32::try_from(most.max().unwrap_or(1)).unwrap_or(u32::MAX) + 1;
            let post = self.planks.kit.posts.intermediate.as_ref();
            let closest = post.map_or(widest, |post| post.width * CLOSEST_POSTS_IN_WIDTHS);
            // Corner posts alone do not get less load by posts between them for ever.
            if widest <= closest || next > 64 {
                return Ok(first.unwrap_or(frame));
            }
            least = next;
            first.get_or_insert(frame);
        }
    }

    fn with_spans(&self, least: u32) -> Result<Frame, DesignError> {
        let mut frame = Frame::default();
        let kit = self.planks.kit;
        let corners = self.task.run.corners();
        let corner = kit.posts.corner.as_ref();
        if corners > 0 && corner.is_none() {
            frame.lacks("corner post", "this run needs where it turns");
        }
        let between = kit.posts.intermediate.as_ref();
        let corner_fit = corner.map_or_else(PostFit::default, |post| PostFit {
            taken: post.width / 2.0,
            engagement: post.engagement(),
        });
        for (position, length) in self.task.run.legs().iter().enumerate() {
            let at_wall = |end: bool| if end { self.ends.fit } else { corner_fit };
            let ends = [at_wall(position == 0), at_wall(position == corners)];
            let fit = between.map(|post| PostFit {
                taken: post.width,
                engagement: post.engagement(),
            });
            match self.planks.plan(*length, ends, fit, least)? {
                Some(planned) => frame.take_leg(planned, &self.planks, between.is_none()),
                None if least > 1 => return Ok(Frame::default()),
                None => frame.shortfalls.push(Shortfall::NoRoom { leg: *length }),
            }
        }
        self.posts_of(&mut frame)?;
        Ok(frame)
    }

    /// The free-standing posts of a frame.
    fn posts_of(&self, frame: &mut Frame) -> Result<(), DesignError> {
        let posts = &self.planks.kit.posts;
        let clear = |planned: &PlannedLeg| {
            planned
                .leg
                .spans
                .first()
                .map_or(Length::default(), |span| span.clear)
        };
        let mut tasks = Vec::new();
        if let Some(post) = &posts.intermediate {
            let count: usize = frame
                .legs
                .iter()
                .map(|planned| planned.leg.spans.len() - 1)
                .sum();
            let divided = frame
                .legs
                .iter()
                .filter(|planned| planned.leg.spans.len() > 1);
            let widest = divided.map(clear).fold(Length::default(), Length::max);
            tasks.push((Upright::Intermediate, count, post, widest + post.width));
        }
        if let Some(post) = &posts.corner {
            // The water presses each leg at a right angle to the other: the post takes the
            // vector sum.
            let sums = frame.legs.windows(2).map(|pair| {
                let share = |planned| (clear(planned) + post.width) / 2.0;
                let (one, other) = (share(&pair[0]), share(&pair[1]));
                Length {
                    value: one.value.hypot(other.value),
                    ..one
                }
            });
            let greatest = sums.fold(Length::default(), Length::max);
            tasks.push((Upright::Corner, self.task.run.corners(), post, greatest));
        }
        for (role, count, post, tributary) in tasks {
            if count > 0 {
                let count = u32::try_from(count).unwrap_or(u32::MAX);
                self.post(frame, role, count, post, tributary)?;
            }
        }
        Ok(())
    }

    /// One kind of free-standing post: alone, or with a brace where waves act or it fails.
    fn post(
        &self,
        frame: &mut Frame,
        role: Upright,
        count: u32,
        post: &Post,
        tributary: Length,
    ) -> Result<(), DesignError> {
        let task = UprightTask {
            role,
            count,
            post,
            tributary,
            height: self.planks.stack.height,
            loads: self.planks.loads,
            rules: self.planks.rules,
        };
        let alone = task.design(None)?;
        let waves = matches!(
            self.task.water.waves,
            Some(WaveAction::Breaking(_) | WaveAction::NonBreaking)
        );
        if alone.checks.iter().all(Check::holds) && !waves {
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
}

impl Frame {
    fn lacks(&mut self, part: &'static str, purpose: &str) {
        let shortfall = Shortfall::KitLacks {
            part,
            purpose: purpose.to_owned(),
        };
        if !self.shortfalls.contains(&shortfall) {
            self.shortfalls.push(shortfall);
        }
    }

    fn take_leg(&mut self, planned: PlannedLeg, planks: &Planks<'_>, no_post: bool) {
        let failing: Vec<Shortfall> = planned
            .checks
            .iter()
            .filter(|check| !check.holds())
            .map(|check| Shortfall::Fails(check.clone()))
            .collect();
        let too_long = planned.leg.longest_cut() > planks.kit.plank.longest;
        if no_post && (too_long || !failing.is_empty()) {
            self.lacks("intermediate post", "its planks need at this width");
        } else if too_long {
            self.shortfalls.push(Shortfall::TooLong {
                piece: planned.leg.longest_cut(),
                longest: planks.kit.plank.longest,
            });
        }
        self.shortfalls.extend(failing);
        self.legs.push(planned);
    }
}
