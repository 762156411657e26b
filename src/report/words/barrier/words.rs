//! Small words that the texts of a barrier share.

use super::anchor_words;
use crate::barrier::{LoadCase, Upright};
use crate::quantity::unit::{Time, minute};
use crate::report::nearest::{How, Nearest};

/// How much of a capacity is used: `23 %`.
pub(super) fn percent(used: f64) -> String {
    if !used.is_finite() {
        "without limit".to_owned()
    } else if used > 0.0 && used < 0.005 {
        "under 1 %".to_owned()
    } else {
        format!("{:.0} %", 100.0 * used)
    }
}

/// `a`, `a and b`, `a, b and c`.
pub(super) fn list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// `1 plank`, `5 planks`.
pub(super) fn counted(count: u32, noun: &str) -> String {
    if count == 1 {
        format!("1 {noun}")
    } else {
        format!("{count} {noun}s")
    }
}

/// `one person`, `two people`, `5 people`.
pub(super) fn people(count: u64) -> String {
    match count {
        1 => "one person".to_owned(),
        2 => "two people".to_owned(),
        3 => "three people".to_owned(),
        more => format!("{more} people"),
    }
}

/// What is nearest to its limit, and how it would fail. The lowest plank has no number, the
/// others have theirs from the sill; a leg is named where there are several.
pub(super) fn nearest(nearest: &Nearest, legs: usize) -> String {
    let mut part = match nearest.part.as_str() {
        "plank 1" => "the lowest plank".to_owned(),
        plank if plank.starts_with("plank ") => format!("{plank} from the sill"),
        other => format!("the {other}"),
    };
    if let Some(leg) = nearest.leg.filter(|_| legs > 1) {
        part = format!("{part} of leg {leg}");
    }
    match nearest.how {
        How::Member("deflection") => format!("how far {part} bends"),
        How::Member(what) => format!("{part} in {what}"),
        How::Along => format!("{part} by the force along it"),
        How::Anchors(mode) => format!("{part} by {}", anchor_words::mode(mode)),
        How::AnchorsTogether => format!("{part} by tension and shear together"),
    }
}

/// The water of a case, short enough for a table.
pub(super) const fn water(case: LoadCase) -> &'static str {
    match case {
        LoadCase::DesignLevel => "design level",
        LoadCase::Top => "top of the barrier",
    }
}

/// The kind of a post, short enough for a table.
pub(super) const fn role(post: Upright) -> &'static str {
    match post {
        Upright::Intermediate => "intermediate",
        Upright::Corner => "corner",
    }
}

/// A time to the minute; beyond two days to the hour.
pub(super) fn duration(time: Time) -> String {
    let minutes = time.get::<minute>().round();
    let hours = (minutes / 60.0).floor();
    let rest = minutes - 60.0 * hours;
    if minutes < 1.0 && time.value > 0.0 {
        "less than a minute".to_owned()
    } else if hours < 1.0 {
        format!("{minutes:.0} min")
    } else if hours >= 48.0 {
        let days = (hours / 24.0).floor();
        match hours - 24.0 * days {
            0.0 => format!("{days:.0} days"),
            rest => format!("{days:.0} days {rest:.0} h"),
        }
    } else if rest < 0.5 {
        format!("{hours:.0} h")
    } else {
        format!("{hours:.0} h {rest:.0} min")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::hour;

    #[test]
    fn times_read_as_people_say_them() {
        for (minutes, text) in [
            (0.0, "0 min"),
            (0.2, "less than a minute"),
            (45.0, "45 min"),
            (59.7, "1 h"),
            (75.0, "1 h 15 min"),
            (2879.0, "47 h 59 min"),
            (2880.0, "2 days"),
            (3000.0, "2 days 2 h"),
        ] {
            assert_eq!(duration(Time::new::<minute>(minutes)), text);
        }
        assert_eq!(duration(Time::new::<hour>(12.0)), "12 h");
    }

    #[test]
    fn parts_of_a_capacity() {
        for (used, text) in [
            (0.0, "0 %"),
            (0.001, "under 1 %"),
            (0.234, "23 %"),
            (1.5, "150 %"),
            (f64::INFINITY, "without limit"),
        ] {
            assert_eq!(percent(used), text);
        }
    }
}
