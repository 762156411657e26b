//! Shaded ground: a picture of the grid, lit from the north-west.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

use crate::quantity::unit::meter;
use crate::report::drawing::nice::at_most;
use crate::surroundings::GroundGrid;

/// How many times heights are raised for the light at most.
const MOST: f64 = 20.0;

/// The slope, raised, that nine of ten cells keep to: steep enough to be seen, shallow enough not
/// to lie in the dark (a judgement, no source).
const WANTED_SLOPE: f64 = 0.5;

/// The picture of the ground as a `data:` address, cells without a height transparent, and how
/// many times heights were raised for it; `None` where it cannot be encoded.
///
/// Brightness is the cosine between the ground and the light from 315° at 45° of height (north-west, by custom of
/// cartographers); slopes by Horn's weights of the eight neighbours (B. K. P. Horn, "Hill
/// shading and the reflectance map", Proceedings of the IEEE 69 (1), 1981, from memory).
pub(super) fn picture(grid: &GroundGrid) -> Option<(String, f64)> {
    let raised = raised(grid);
    let mut pixels = Vec::with_capacity(2 * grid.side * grid.side);
    for row in 0..grid.side {
        for column in 0..grid.side {
            match slope(grid, column, row) {
                Some(slope) => pixels.extend([grey(shade(slope, raised)), u8::MAX]),
                None => pixels.extend([0, 0]),
            }
        }
    }
    let side = u32::try_from(grid.side).ok()?;
    let mut file = Vec::new();
    let mut encoder = png::Encoder::new(&mut file, side, side);
    encoder.set_color(png::ColorType::GrayscaleAlpha);
    encoder.set_depth(png::BitDepth::Eight);
    let mut writer = encoder.write_header().ok()?;
    writer.write_image_data(&pixels).ok()?;
    writer.finish().ok()?;
    let text = STANDARD.encode(file);
    Some((format!("data:image/png;base64,{text}"), raised))
}

/// How steep the ground is towards east and north; `None` where it has no height. A neighbour
/// without one counts as level with the cell.
fn slope(grid: &GroundGrid, column: usize, row: usize) -> Option<[f64; 2]> {
    let metres = |height: crate::quantity::Length| height.get::<meter>();
    let here = grid.height(column, row).map(metres)?;
    let near = |right: isize, down: isize| {
        let column = column.checked_add_signed(right);
        let row = row.checked_add_signed(down);
        let height = column
            .zip(row)
            .and_then(|(column, row)| grid.height(column, row));
        height.map_or(here, metres)
    };
    let weighted = |cells: [(isize, isize); 3]| {
        let [one, two, three] = cells.map(|(right, down)| near(right, down));
        one + 2.0 * two + three
    };
    let east = weighted([(1, -1), (1, 0), (1, 1)]) - weighted([(-1, -1), (-1, 0), (-1, 1)]);
    let north = weighted([(-1, -1), (0, -1), (1, -1)]) - weighted([(-1, 1), (0, 1), (1, 1)]);
    let span = 8.0 * grid.cell.get::<meter>();
    Some([east / span, north / span])
}

/// How many times heights are raised: flat ground would be one grey.
fn raised(grid: &GroundGrid) -> f64 {
    let cells = (0..grid.side).flat_map(|row| (0..grid.side).map(move |column| (column, row)));
    let slopes = cells.filter_map(|(column, row)| slope(grid, column, row));
    let mut steep: Vec<f64> = slopes
        .map(|[east, north]| east.hypot(north))
        .filter(|slope| *slope > 0.0)
        .collect();
    steep.sort_by(f64::total_cmp);
    match steep.get(steep.len() * 9 / 10) {
        Some(slope) => at_most((WANTED_SLOPE / slope).clamp(1.0, MOST)),
        None => 1.0,
    }
}

/// The cosine of the angle between the ground and the light, not below nothing.
fn shade([east, north]: [f64; 2], raised: f64) -> f64 {
    // Towards 315° at 45°: minus a half east, a half north, the square root of a half up.
    const LIGHT: [f64; 3] = [-0.5, 0.5, std::f64::consts::FRAC_1_SQRT_2];
    let (east, north) = (raised * east, raised * north);
    let length = (east * east + north * north + 1.0).sqrt();
    let cosine = (-east * LIGHT[0] - north * LIGHT[1] + LIGHT[2]) / length;
    cosine.max(0.0)
}

/// Light greys, so that ink stays legible on them.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 140 to 250
fn grey(shade: f64) -> u8 {
    (140.0 + 110.0 * shade).round() as u8
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Length;

    fn plane(east: f64, north: f64) -> GroundGrid {
        let heights = (0..25_i32).map(|number| {
            let (column, row) = (f64::from(number % 5), f64::from(number / 5));
            Some(Length::new::<meter>(2.0 * (east * column - north * row)))
        });
        GroundGrid {
            side: 5,
            cell: Length::new::<meter>(2.0),
            heights: heights.collect(),
        }
    }

    #[test]
    fn the_slope_of_a_plane_is_its_own() {
        let [east, north] = slope(&plane(0.1, -0.3), 2, 2).unwrap();
        assert!((east - 0.1).abs() < 1e-12 && (north + 0.3).abs() < 1e-12);
    }

    #[test]
    fn what_faces_the_light_is_brightest() {
        // Rising to the south-east it faces the north-west: square to light of 45° at a slope
        // of 1.
        let diagonal = std::f64::consts::FRAC_1_SQRT_2;
        assert!((shade([diagonal, -diagonal], 1.0) - 1.0).abs() < 1e-12);
        assert!(shade([-diagonal, diagonal], 1.0) < 1e-9);
        assert!((shade([0.0, 0.0], 1.0) - diagonal).abs() < 1e-12);
    }

    #[test]
    fn flat_ground_is_raised_and_steep_ground_is_not() {
        assert!((raised(&plane(0.04, 0.0)) - 10.0).abs() < 1e-9);
        assert!((raised(&plane(2.0, 0.0)) - 1.0).abs() < 1e-9);
        assert!((raised(&plane(0.0, 0.0)) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn the_picture_is_read_back_with_its_voids() {
        let mut grid = plane(0.1, 0.0);
        grid.heights[7] = None;
        let (address, _) = picture(&grid).unwrap();
        let text = address.strip_prefix("data:image/png;base64,").unwrap();
        let file = STANDARD.decode(text).unwrap();
        let mut reader = png::Decoder::new(std::io::Cursor::new(file))
            .read_info()
            .unwrap();
        let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
        reader.next_frame(&mut pixels).unwrap();
        let alphas: Vec<u8> = pixels.chunks(2).map(|pixel| pixel[1]).collect();
        let void = alphas.iter().position(|alpha| *alpha == 0);
        assert_eq!((void, alphas.len()), (Some(7), 25));
    }
}
