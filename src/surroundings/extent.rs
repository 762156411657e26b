//! How large a square has to be seen.

use geo::Coord;

use super::OpeningPlace;
use super::lines::UsedLine;
use crate::quantity::{Length, unit::meter};
use crate::site::{Footprint, Site};

/// Half the side of the square where nothing asks for more, metres: a street and the nearest
/// water of a town (a judgement, no source).
const USUAL: f64 = 120.0;

/// The most, metres: the tangent plane is good to a few parts in ten thousand there, and a
/// building is no more than a dot on a larger square.
const MOST: f64 = 1000.0;

/// What has to be seen does not stand at the very edge.
const MARGIN: f64 = 1.15;

/// The square is a whole number of these, metres.
const STEP: f64 = 10.0;

/// Half the side of the square: what lies too far away for the largest one asks for nothing.
pub(super) fn reach(
    openings: &[OpeningPlace],
    outline: &[Coord<f64>],
    lines: &[UsedLine],
) -> Length {
    let side = |at: &Coord<f64>| at.x.abs().max(at.y.abs());
    let building = openings.iter().map(|opening| side(&opening.at));
    let building = building.chain(outline.iter().map(side));
    let lines = lines.iter().map(|line| line.distance.get::<meter>());
    let wanted = building.chain(lines).map(|metres| MARGIN * metres);
    let widest = wanted
        .filter(|metres| *metres <= MOST)
        .fold(USUAL, f64::max);
    Length::new::<meter>((widest / STEP).ceil() * STEP)
}

/// How far the square about a site may reach before anything is assessed: for those who bring
/// only a part of a terrain here.
pub(super) fn farthest_reach(site: &Site, has_lines: bool) -> Length {
    if has_lines {
        return Length::new::<meter>(MOST);
    }
    let openings = site.openings.iter().filter_map(|opening| opening.location);
    let corners = site.footprint.iter().flat_map(Footprint::corners).copied();
    let places = openings.chain(corners);
    // The sphere's distances are good to half a percent.
    let metres =
        places.map(|place| 1.01 * MARGIN * site.location.distance_to(place).get::<meter>());
    let widest = metres.fold(USUAL, f64::max).min(MOST);
    Length::new::<meter>((widest / STEP).ceil() * STEP)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn opening(x: f64, y: f64) -> OpeningPlace {
        OpeningPlace {
            number: 0,
            id: "gate".to_owned(),
            at: Coord { x, y },
        }
    }

    #[test]
    fn the_square_holds_what_has_to_be_seen() {
        let holds = |openings: &[OpeningPlace], wanted: f64| {
            let metres = reach(openings, &[], &[]).get::<meter>();
            assert!((metres - wanted).abs() < 1e-9, "{metres}, not {wanted}");
        };
        holds(&[], 120.0);
        holds(&[opening(3.0, -4.0)], 120.0);
        holds(&[opening(-300.0, 200.0)], 350.0);
        // Too far to be seen: the others decide.
        holds(&[opening(1500.0, 0.0), opening(0.0, 200.0)], 230.0);
    }
}
