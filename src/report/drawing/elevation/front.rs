//! The barrier along the wall: where its posts stand and its planks lie.
//!
//! Places are metres from the left jamb; the legs of a barrier around corners lie side by
//! side, unfolded.

use super::subject::Subject;
use crate::barrier::{Ends, Leg, Open, Shortfall};
use crate::quantity::Length;
use crate::site::Mount;

/// From one place to another.
pub(super) type Stretch = (f64, f64);

#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Front {
    /// From jamb to jamb, or along all legs.
    pub(super) length: f64,
    /// Whether somebody stated that length.
    pub(super) is_stated: bool,
    pub(super) legs: Vec<Stretch>,
    /// Where planks lie, a span each; the number of its leg goes with it.
    pub(super) spans: Vec<(usize, Stretch)>,
    pub(super) posts: Vec<Stand>,
    /// How its ends meet the wall, as a clause.
    pub(super) ends: Option<&'static str>,
}

/// A post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stand {
    pub(super) kind: Kind,
    pub(super) place: Stretch,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    End,
    /// One of the places where an end post may come to stand.
    Perhaps,
    Intermediate,
    Corner,
}

impl Front {
    pub(super) fn of(subject: &Subject<'_>) -> Self {
        let mut front = Self::lengths(subject);
        let planned = subject
            .design
            .map_or(&[][..], |design| design.legs.as_slice());
        if planned.len() == front.legs.len() {
            for (number, planned) in planned.iter().enumerate() {
                front.divide(number, &planned.leg, subject);
            }
            front.end_posts(subject);
        } else if subject.design.is_none() && subject.stack.is_some() {
            front.spans = front.legs.iter().copied().enumerate().collect();
        }
        front
    }

    fn lengths(subject: &Subject<'_>) -> Self {
        let straight = subject.width.map(|width| vec![width]);
        let lengths = if subject.legs.is_empty() {
            straight
        } else {
            Some(subject.legs.to_vec())
        };
        let is_stated = lengths.is_some();
        // Without a width something still has to stand between two jambs.
        let shown = || subject.stack.map_or(1.0, |stack| stack.height.value);
        let lengths = lengths.unwrap_or_else(|| {
            let shown = subject.head.map_or_else(shown, |head| head.value * 0.6);
            vec![Length::new::<crate::quantity::unit::meter>(shown)]
        });
        let mut legs = Vec::new();
        let mut from = 0.0;
        for length in lengths {
            legs.push((from, from + length.value));
            from += length.value;
        }
        Self {
            length: from,
            is_stated,
            legs,
            ..Self::default()
        }
    }

    /// Spans and posts of one leg.
    fn divide(&mut self, number: usize, leg: &Leg, subject: &Subject<'_>) {
        let posts = &subject.kit.posts;
        let between = posts.intermediate.as_ref().map_or(0.0, |p| p.width.value);
        let corner = posts.corner.as_ref().map_or(0.0, |post| post.width.value);
        let clear: f64 = leg.spans.iter().map(|span| span.clear.value).sum();
        let gaps = leg.spans.windows(2).count();
        #[allow(clippy::cast_precision_loss)] // a barrier has at most 200 spans
        let at_ends = leg.length.value - clear - gaps as f64 * between;
        // Beside a corner a post takes half its width; what is left is the wall's.
        let (from, to) = self.legs[number];
        let last = self.legs.len() - 1;
        let taken = match (number == 0, number == last) {
            (true, true) => at_ends / 2.0,
            (true, false) => at_ends - corner / 2.0,
            _ => corner / 2.0,
        };
        let mut place = from + taken;
        for (position, span) in leg.spans.iter().enumerate() {
            if position > 0 {
                self.stand(Kind::Intermediate, place, between);
                place += between;
            }
            let end = place + span.clear.value;
            self.spans.push((number, (place, end)));
            place = end;
        }
        if number < last {
            self.stand(Kind::Corner, to - corner / 2.0, corner);
        }
    }

    fn stand(&mut self, kind: Kind, from: f64, width: f64) {
        self.posts.push(Stand {
            kind,
            place: (from, from + width),
        });
    }

    fn end_posts(&mut self, subject: &Subject<'_>) {
        let Some(design) = subject.design else { return };
        let end = design.end_post.as_ref();
        let ends = end.and_then(|end| end.ends);
        match ends {
            Some(Ends::Mounted(mount)) => {
                self.both_ends(Kind::End, mount, subject);
                self.ends = Some(match mount {
                    Mount::Inside => "end posts in the reveal",
                    Mount::Outside => "end posts on the face of the wall",
                });
            }
            Some(Ends::AgainstWall) => {
                self.both_ends(Kind::End, Mount::Inside, subject);
                self.ends = Some("end posts with their backs to the wall");
            }
            None => self.perhaps(design, subject),
        }
    }

    /// End posts that wait for somebody to measure, or that do not fit.
    fn perhaps(&mut self, design: &crate::barrier::BarrierDesign, subject: &Subject<'_>) {
        let missing = design.open.iter().find_map(|open| match open {
            Open::Mount { missing } => Some(missing),
            _ => None,
        });
        let waits_for = |field| {
            missing.is_some_and(|missing| missing.iter().any(|(waiting, _)| *waiting == field))
        };
        let (reveal, face) = (waits_for("reveal"), waits_for("face"));
        if reveal {
            self.both_ends(Kind::Perhaps, Mount::Inside, subject);
        }
        if face {
            self.both_ends(Kind::Perhaps, Mount::Outside, subject);
        }
        let no_mount = |found: &Shortfall| matches!(found, Shortfall::NoMount { .. });
        self.ends = match (reveal, face) {
            (true, true) => Some(
                "mount not decided: end posts in the reveal or on the face of the wall, both dashed, until somebody measures",
            ),
            (true, false) => {
                Some("mount not decided: end posts in the reveal, dashed, until it is measured")
            }
            (false, true) => Some(
                "mount not decided: end posts on the face of the wall, dashed, until it is measured",
            ),
            (false, false) if design.shortfalls.iter().any(no_mount) => {
                Some("no end post of the kit fits here, so none is drawn")
            }
            (false, false) => Some("no end post is designed"),
        };
    }

    fn both_ends(&mut self, kind: Kind, mount: Mount, subject: &Subject<'_>) {
        let posts = &subject.kit.posts;
        let (post, inward) = match mount {
            Mount::Inside => (posts.inside.as_ref(), 1.0),
            Mount::Outside => (posts.outside.as_ref(), -1.0),
        };
        let Some(width) = post.map(|post| post.width.value) else {
            return;
        };
        let other = width * inward;
        self.stand(kind, other.min(0.0), width);
        self.stand(kind, self.length - other.max(0.0), width);
    }

    /// How far posts stand out beyond the jambs.
    pub(super) fn overhang(&self) -> f64 {
        let left = self.posts.iter().map(|post| -post.place.0);
        left.fold(0.0, f64::max)
    }
}
