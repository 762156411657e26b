//! `gap` of an `[[opening]]`.

use super::super::SillGap;
use crate::quantity::{Length, parse_length, unit::meter};
use crate::statement::{StatementError, Table};

const GAP: &str = "{ length = \"24 in\", height = \"0.1 in\" }";
const GAP_LENGTH: &str = "the length of the gap along the sill, such as \"24 in\"";
const GAP_HEIGHT: &str = "the height of the gap under the barrier, more than nothing and less than 3.9 in (10 cm), such as \"0.1 in\"";

/// A gap as high as this is no seal that fails to touch: a plank would close it (common
/// practice, no source).
const HIGHEST_METRES: f64 = 0.1;

/// The gap along the sill of a barrier that is `barrier` long.
pub(super) fn gap(
    opening: &Table<'_, '_>,
    barrier: Length,
) -> Result<Option<SillGap>, StatementError> {
    let table = opening.table("gap").map_err(|error| StatementError {
        accepted: GAP.to_owned(),
        ..error
    })?;
    let Some(table) = table else {
        return Ok(None);
    };
    table.allow(&["length", "height"])?;
    let length = table.required("length", GAP_LENGTH)?;
    let height = table.required("height", GAP_HEIGHT)?;
    let gap = SillGap {
        length: length.read(parse_length)?,
        height: height.read(parse_length)?,
    };
    if gap.length.value <= 0.0 {
        return Err(length.refuse("a gap has a length", GAP_LENGTH));
    }
    if gap.length > barrier {
        return Err(length.refuse(
            "it is longer than the barrier",
            "a length up to the opening's width or, of a run, the sum of its legs",
        ));
    }
    if gap.height.value <= 0.0 {
        return Err(height.refuse("a gap has a height", GAP_HEIGHT));
    }
    if gap.height >= Length::new::<meter>(HIGHEST_METRES) {
        return Err(height.refuse("it is no gap under a seal, but an opening", GAP_HEIGHT));
    }
    Ok(Some(gap))
}
