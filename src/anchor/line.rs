//! Anchors along one axis, between the two edges of that axis.

use crate::quantity::Length;

/// Anchors along one axis, and where the concrete ends on either side (infinitely far where no
/// edge is near).
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Line {
    /// Rising, never empty.
    positions: Vec<Length>,
    start: Length,
    end: Length,
}

impl Line {
    /// The first anchor stands at 0.
    pub(super) fn new(spacings: &[Length], before: Length, after: Length) -> Self {
        let mut last = Length::default();
        let mut positions = vec![last];
        for spacing in spacings {
            last += *spacing;
            positions.push(last);
        }
        Self {
            positions,
            start: -before,
            end: last + after,
        }
    }

    pub(super) fn count(&self) -> usize {
        self.positions.len()
    }

    fn first(&self) -> Length {
        self.positions.first().copied().unwrap_or_default()
    }

    fn last(&self) -> Length {
        self.positions.last().copied().unwrap_or_default()
    }

    /// From the first and from the last anchor to the edge beyond it.
    pub(super) fn edge_distances(&self) -> [Length; 2] {
        [self.first() - self.start, self.end - self.last()]
    }

    /// From the first anchor to the last.
    pub(super) fn extent(&self) -> Length {
        self.last() - self.first()
    }

    /// The widest gap between neighbours, 0 for one anchor.
    pub(super) fn greatest_spacing(&self) -> Length {
        self.positions
            .windows(2)
            .map(|pair| pair[1] - pair[0])
            .fold(Length::default(), Length::max)
    }

    /// The length within `reach` of any anchor and inside the edges: what projected areas
    /// cover of this axis, overlaps counted once.
    pub(super) fn covered(&self, reach: Length) -> Length {
        let mut covered = Length::default();
        let mut done = self.start;
        for position in &self.positions {
            let from = (*position - reach).max(done);
            let to = (*position + reach).min(self.end);
            if to > from {
                covered += to - from;
                done = to;
            }
        }
        covered
    }

    /// Parts whose anchors act together: those closer to their neighbour than `critical`.
    pub(super) fn clusters(&self, critical: Length) -> Vec<Self> {
        let mut clusters = Vec::new();
        let mut current: Vec<Length> = Vec::new();
        for position in &self.positions {
            if current
                .last()
                .is_some_and(|last| *position - *last >= critical)
            {
                clusters.push(std::mem::take(&mut current));
            }
            current.push(*position);
        }
        clusters.push(current);
        clusters
            .into_iter()
            .map(|positions| Self {
                positions,
                start: self.start,
                end: self.end,
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::meter;

    fn metres(number: f64) -> Length {
        Length::new::<meter>(number)
    }

    #[test]
    fn overlaps_count_once_and_edges_cut() {
        let line = Line::new(
            &[metres(1.0), metres(5.0)],
            metres(0.5),
            metres(f64::INFINITY),
        );
        // -0.5 … 2 and 5 … 7.
        assert_eq!(line.covered(metres(1.0)), metres(4.5));
        assert_eq!(line.edge_distances()[0], metres(0.5));
        assert!(line.edge_distances()[1].value.is_infinite());
    }

    #[test]
    fn anchors_farther_apart_than_critical_part() {
        let line = Line::new(&[metres(1.0), metres(3.0)], metres(1.0), metres(2.0));
        let counts = |critical| {
            let clusters = line.clusters(metres(critical));
            clusters.iter().map(Line::count).collect::<Vec<_>>()
        };
        assert_eq!(counts(3.5), [3]);
        assert_eq!(counts(3.0), [2, 1]);
        assert_eq!(counts(1.0), [1, 1, 1]);
        assert_eq!(
            line.clusters(metres(3.0))[0].edge_distances(),
            [metres(1.0), metres(5.0)]
        );
    }
}
