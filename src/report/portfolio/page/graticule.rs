//! Meridians and parallels with their degrees.

use super::frame::Frame;
use crate::report::drawing::nice::{at_least, decimals, pixels};

/// A meridian or a parallel.
pub(super) struct Line {
    /// Pixels from the left, or from the top.
    pub(super) at: String,
    /// Its degrees.
    pub(super) label: String,
}

/// Least distance of two lines, in pixels: a label has to fit between.
const APART: f64 = 110.0;
/// A line this near to a corner has no room for its label.
const MARGIN: f64 = 24.0;

pub(super) fn meridians(frame: &Frame) -> Vec<Line> {
    let step = at_least(APART / frame.pixels_for_a_degree_of_longitude());
    let east = frame.west + frame.degrees_across;
    multiples(step, frame.west, east)
        .map(|longitude| (frame.x(longitude), longitude))
        .filter(|(x, _)| within(*x, frame.width))
        .map(|(x, longitude)| Line {
            at: pixels(x),
            label: longitude_label(longitude, decimals(step)),
        })
        .collect()
}

pub(super) fn parallels(frame: &Frame) -> Vec<Line> {
    let step = at_least(APART / frame.pixels_for_a_degree_of_latitude());
    let south = (frame.north - frame.degrees_down).max(-90.0);
    multiples(step, south, frame.north.min(90.0))
        .map(|latitude| (frame.y(latitude), latitude))
        .filter(|(y, _)| within(*y, frame.height))
        .map(|(y, latitude)| Line {
            at: pixels(y),
            label: sided(latitude, decimals(step), 'N', 'S'),
        })
        .collect()
}

fn within(position: f64, length: f64) -> bool {
    (MARGIN..=length - MARGIN).contains(&position)
}

#[allow(clippy::cast_possible_truncation)] // a few lines on a map
fn multiples(step: f64, from: f64, to: f64) -> impl Iterator<Item = f64> {
    let (first, last) = ((from / step).ceil() as i64, (to / step).floor() as i64);
    #[allow(clippy::cast_precision_loss)] // small numbers
    (first..=last).map(move |number| number as f64 * step)
}

fn longitude_label(longitude: f64, decimals: usize) -> String {
    let wrapped = (longitude + 180.0).rem_euclid(360.0) - 180.0;
    if (wrapped + 180.0).abs() < 1e-9 {
        return "180°".to_owned();
    }
    sided(wrapped, decimals, 'E', 'W')
}

fn sided(degrees: f64, decimals: usize, above: char, below: char) -> String {
    let number = format!("{:.decimals$}°", degrees.abs());
    if degrees.abs() < 1e-9 {
        number
    } else {
        format!("{number} {}", if degrees > 0.0 { above } else { below })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn degrees_have_their_side() {
        assert_eq!(longitude_label(182.5, 1), "177.5° W");
        assert_eq!(longitude_label(180.0, 0), "180°");
        assert_eq!(longitude_label(-180.0, 0), "180°");
        assert_eq!(longitude_label(0.0, 0), "0°");
        assert_eq!(sided(-41.25, 2, 'N', 'S'), "41.25° S");
    }
}
