//! Where things lie on the sheet: one scale up and across.

use super::front::Front;
use super::levels::{heights_in_words, levels_in_words};
use super::subject::{Level, Subject};
use crate::report::drawing::beside::{Label, Seat, height_of};

/// Width of the sheet, and the part of it that is drawn on, in pixels.
pub(super) const WIDTH: f64 = 640.0;
pub(super) const LEFT: f64 = 136.0;
pub(super) const RIGHT: f64 = 462.0;
pub(super) const TOP: f64 = 34.0;
/// Wall at either side.
const MARGIN: f64 = 26.0;
/// The greatest height of what is drawn.
const MOST_HIGH: f64 = 420.0;
const LEAST_HIGH: f64 = 120.0;
/// What a barrier is at least drawn high, so that it can be seen.
const LEAST_BARRIER: f64 = 26.0;
/// Width of the strip that stands for a part that is left out.
const STRIP: f64 = 14.0;

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Frame {
    /// Pixels a metre.
    pub(super) scale: f64,
    /// Heights over the sill at the lower and upper edge, in metres.
    pub(super) low: f64,
    pub(super) high: f64,
    /// Where the left jamb lies.
    jamb: f64,
    /// The stretch along the wall that is left out, in metres.
    pub(super) left_out: Option<(f64, f64)>,
}

impl Frame {
    pub(super) fn around(subject: &Subject<'_>, front: &Front) -> Self {
        let reach = Reach::of(subject, front);
        let (room, overhang) = (RIGHT - LEFT - 2.0 * MARGIN, front.overhang());
        let tallest = MOST_HIGH / (reach.high - reach.low);
        let fitting = (room / (front.length + 2.0 * overhang)).min(tallest);
        let readable = (LEAST_BARRIER / reach.size).min(tallest);
        let scale = fitting.max(readable);
        // What a readable scale has no room for is left out in the middle.
        let shown = (room - STRIP) / scale;
        let left_out = (readable > fitting && shown < front.length).then(|| {
            let half = shown / 2.0;
            (half, front.length - half)
        });
        let drawn = match left_out {
            Some(_) => room,
            None => front.length * scale,
        };
        let mut frame = Self {
            scale,
            low: reach.low,
            high: reach.high,
            jamb: f64::midpoint(LEFT, RIGHT) - drawn / 2.0,
            left_out,
        };
        frame.make_room(subject);
        frame
    }

    /// Shows more wall where labels need it.
    fn make_room(&mut self, subject: &Subject<'_>) {
        self.make_room_beyond(subject);
        let right = height_of(&levels_in_words(subject, self));
        let left = height_of(&heights_in_words(subject, self));
        let needed = right.max(left).max(LEAST_HIGH);
        let missing = needed - (self.high - self.low) * self.scale;
        if missing > 0.0 {
            self.high += missing * 0.7 / self.scale;
            self.low -= missing * 0.3 / self.scale;
        }
    }

    /// Shows more wall beyond the outermost level that is drawn, so that the arrows of those
    /// that are not keep clear of its leader.
    fn make_room_beyond(&mut self, subject: &Subject<'_>) {
        let labels = levels_in_words(subject, self);
        let room = |seat: Seat| {
            let beyond = labels.iter().filter(|label| label.seat == seat);
            let beyond: Vec<Label> = beyond.cloned().collect();
            let half = if beyond.is_empty() { 0.0 } else { 0.5 };
            height_of(&beyond) + half * height_of(&labels[..labels.len().min(1)])
        };
        let drawn = labels.iter().filter_map(|label| match label.seat {
            Seat::At(height) => Some(height),
            Seat::Above | Seat::Below => None,
        });
        let (highest, lowest) = drawn.fold((f64::INFINITY, 0.0_f64), |(high, low), at| {
            (high.min(at), low.max(at))
        });
        let (above, below) = (room(Seat::Above), room(Seat::Below));
        let missing = |needed: f64, has: f64| (needed - has).max(0.0) / self.scale;
        let (up, down) = (
            missing(above, highest - TOP),
            missing(below, self.bottom() - lowest),
        );
        self.high += up;
        self.low -= down;
    }

    /// Where a place along the wall lies across the sheet.
    pub(super) fn across(&self, place: f64) -> f64 {
        let along = match self.left_out {
            Some((from, to)) if place > from => {
                let strip = (place.min(to) - from) / (to - from) * STRIP;
                from * self.scale + strip + (place - to).max(0.0) * self.scale
            }
            _ => place * self.scale,
        };
        self.jamb + along
    }

    /// Where a height over the sill lies.
    pub(super) fn up(&self, height: f64) -> f64 {
        TOP + (self.high - height) * self.scale
    }

    /// The same, or that it lies beyond what is drawn.
    pub(super) fn seat(&self, height: f64) -> Seat {
        if height > self.high {
            Seat::Above
        } else if height < self.low {
            Seat::Below
        } else {
            Seat::At(self.up(height))
        }
    }

    pub(super) fn bottom(&self) -> f64 {
        self.up(self.low)
    }

    /// Whether a place along the wall is drawn.
    pub(super) fn shows(&self, place: f64) -> bool {
        self.left_out
            .is_none_or(|(from, to)| place <= from || place >= to)
    }
}

/// How far up and down is drawn, in metres over the sill.
struct Reach {
    low: f64,
    high: f64,
    /// The height that has to be readable.
    size: f64,
}

impl Reach {
    fn of(subject: &Subject<'_>, front: &Front) -> Self {
        let barrier = subject.stack.map(|stack| stack.height.value);
        let protection = subject.protection.map(|height| height.value);
        let core = barrier.into_iter().chain(protection).fold(0.0, f64::max);
        let head = subject.head.map(|head| head.value);
        let size = if core > 0.0 {
            core
        } else {
            head.unwrap_or(f64::INFINITY).min(front.length).max(0.01)
        };
        let mut reach = Self {
            low: -0.15 * size,
            high: 1.15 * size,
            size,
        };
        for mark in &subject.marks {
            reach.take(mark.height.value);
            if mark.level == Level::Flood
                && let Some(band) = mark.band
            {
                reach.take(mark.height.value + band.value);
                reach.take(mark.height.value - band.value);
            }
        }
        if let Some(head) = head
            && head <= 3.2 * reach.high
        {
            reach.high = reach.high.max(head + 0.1 * size);
        }
        reach
    }

    /// Reaches a level, if it is near enough.
    fn take(&mut self, height: f64) {
        let edge = 0.1 * self.size;
        if height < 0.0 && height >= -2.0 * self.size {
            self.low = self.low.min(height - edge);
        }
        if height > 0.0 && height <= 2.0 * self.size {
            self.high = self.high.max(height + edge);
        }
    }
}
