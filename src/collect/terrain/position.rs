//! Where the cells of a crop lie on the earth.

use super::tiff::{Field, Layout, tag};
use super::units::Window;

/// A field of the whole image as it is for a window of it: the position of the first cell moves,
/// all else stays.
///
/// Tie points pair a cell with coordinates: the cell's number is counted from the window's corner,
/// and the coordinates stay what they are, to the last digit. A transformation matrix gives the
/// coordinates of the first corner in its last column (OGC 19-008r4, annex B.6).
pub(super) fn within(layout: Layout, field: Field, window: &Window) -> Field {
    let Some(bytes) = field.value.as_deref() else {
        return field;
    };
    let (column, row) = (as_float(window.columns.start), as_float(window.rows.start));
    let mut numbers = layout.doubles(bytes);
    match (field.tag, field.kind) {
        (tag::MODEL_TIEPOINT, tag::DOUBLE) => {
            for point in numbers.chunks_exact_mut(6) {
                point[0] -= column;
                point[1] -= row;
            }
        }
        (tag::MODEL_TRANSFORMATION, tag::DOUBLE) => {
            for line in numbers.chunks_exact_mut(4).take(2) {
                line[3] += line[0] * column + line[1] * row;
            }
        }
        _ => return field,
    }
    Field::of(field.tag, field.kind, layout.bytes_of_doubles(&numbers))
}

/// Images have fewer than 2³¹ columns: the conversion is exact.
#[allow(clippy::cast_precision_loss)]
const fn as_float(cells: u64) -> f64 {
    cells as f64
}
