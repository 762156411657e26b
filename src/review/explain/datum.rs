//! Slips with the shift between two datums.

use crate::quantity::VerticalDatum;
use crate::review::{DatumSlip, Finding, KnownShift, Shifts, Tolerance};

/// The known shifts that explain why an elevation stated on `datum` differs by `difference`
/// (theirs, as it is shifted rightly, less ours, metres).
pub(in crate::review) fn datum_slips(
    datum: VerticalDatum,
    difference: f64,
    tolerance: &Tolerance,
    shifts: &Shifts,
) -> Vec<Finding> {
    let mut found = Vec::new();
    for shift in &shifts.known {
        let by = shift.shift.value;
        // The tolerance has the shift's own deviation only where the shift was applied.
        let deviation = shift.sd.map_or(0.0, |sd| 2.0 * sd.value);
        let near = tolerance.half_width().hypot(deviation);
        if by.abs() <= near {
            continue;
        }
        for (slip, left) in slips(datum, shift) {
            if (difference - left * by).abs() <= near {
                let shift = shift.clone();
                found.push(Finding::DatumShift { shift, slip });
            }
        }
    }
    found
}

/// What each slip leaves of the shift in the difference, as a multiple.
///
/// A level on the datum of the assessment came from the other one by adding the shift once; a
/// level on the other datum has it added here.
fn slips(datum: VerticalDatum, shift: &KnownShift) -> Vec<(DatumSlip, f64)> {
    use DatumSlip::{NotApplied, OnceTooOften, WrongWay};
    if datum == shift.to {
        vec![(NotApplied, -1.0), (WrongWay, -2.0), (OnceTooOften, 1.0)]
    } else if datum == shift.from {
        vec![(NotApplied, 1.0), (WrongWay, 2.0), (OnceTooOften, -1.0)]
    } else {
        Vec::new()
    }
}
