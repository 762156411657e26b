//! A position well inside of a ring.

use geo::{Coord, LineString};

/// At how many heights a ring is cut across. Common practice, no source.
const CUTS: usize = 8;

/// The middle of the widest of some cuts across a ring; `None` where it has no area.
///
/// `geo` has an `InteriorPoint`, which looks for all crossings of all edges: for a ring whose
/// edges all lie above each other that takes the square of their number.
pub(super) fn inner_position(ring: &LineString<f64>) -> Option<Coord<f64>> {
    let mut heights: Vec<f64> = ring.coords().map(|position| position.y).collect();
    heights.sort_by(f64::total_cmp);
    heights.dedup();
    let gaps = heights.len().checked_sub(1)?;
    let cuts = (0..CUTS.min(gaps)).map(|cut| {
        let gap = gaps * (2 * cut + 1) / (2 * CUTS.min(gaps));
        // Between two heights, so that no position of the ring lies on the cut.
        f64::midpoint(heights[gap], heights[gap + 1])
    });
    let widest = cuts.filter_map(|height| widest_at(ring, height));
    widest
        .max_by(|(one, _), (other, _)| one.total_cmp(other))
        .map(|(_, middle)| middle)
}

/// The widest part inside of a ring at a height, and the middle of that part.
fn widest_at(ring: &LineString<f64>, height: f64) -> Option<(f64, Coord<f64>)> {
    let mut crossings: Vec<f64> = ring
        .lines()
        .filter(|edge| (edge.start.y < height) != (edge.end.y < height))
        .map(|edge| edge.start.x + (height - edge.start.y) / edge.dy() * edge.dx())
        .collect();
    crossings.sort_by(f64::total_cmp);
    let parts = crossings.chunks_exact(2);
    parts
        .map(|part| {
            let middle = f64::midpoint(part[0], part[1]);
            (
                part[1] - part[0],
                Coord {
                    x: middle,
                    y: height,
                },
            )
        })
        .max_by(|(one, _), (other, _)| one.total_cmp(other))
}

#[cfg(test)]
mod tests {
    use geo::{Contains as _, Polygon};

    use super::*;

    #[test]
    fn it_lies_inside_of_crooked_rings() {
        for ring in [
            vec![(0.0, 0.0), (4.0, 0.0), (2.0, 2.0)],
            // A comb, its back on the left, and a spike on a block.
            vec![
                (0.0, 0.0),
                (9.0, 0.0),
                (1.0, 1.0),
                (9.0, 2.0),
                (1.0, 3.0),
                (9.0, 4.0),
                (0.0, 4.0),
            ],
            vec![
                (0.0, 0.0),
                (1.0, 0.0),
                (1.0, 1.0),
                (0.5, 90.0),
                (0.5, 1.0),
                (0.0, 1.0),
            ],
        ] {
            let mut ring = LineString::from(ring);
            ring.close();
            let inside = inner_position(&ring).unwrap();
            assert!(
                Polygon::new(ring, Vec::new()).contains(&inside),
                "{inside:?}"
            );
        }
        assert_eq!(inner_position(&LineString::new(Vec::new())), None);
        assert_eq!(inner_position(&vec![(0.0, 0.0), (1.0, 0.0)].into()), None);
    }
}
