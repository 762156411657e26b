//! The points that are about the building as a whole.

mod compliance;
mod design;
mod flood;
mod freeboard;
mod leakage;
mod level_slips;
mod warning;

pub(super) use level_slips::{level_slips, proposed};

use super::desk::Desk;
use super::{Point, Subject};

/// All of them, in the order of a review.
pub(super) fn points(desk: &Desk<'_>) -> Vec<Point> {
    let mut points = flood::flood(desk);
    points.push(freeboard::freeboard(desk));
    points.extend(design::design(desk));
    points.extend(compliance::compliance(desk));
    points.extend(leakage::leakage(desk));
    points.extend(warning::warning(desk));
    points
}

const SITE: Subject = Subject::Site;

/// What is said where the proposal is silent.
fn not_stated(what: &str) -> Vec<String> {
    vec![format!("{what} in the proposal")]
}
