//! Straight lines in place of circular arcs, which `geo` does not know.
//!
//! The `gdal` crate has no safe call for it.

#![allow(unsafe_code)]

use gdal::vector::Geometry;

/// Whether a geometry's type is one with arcs, by its well-known name.
pub(super) fn has_curves(name: &str) -> bool {
    matches!(
        name,
        "CIRCULARSTRING" | "COMPOUNDCURVE" | "CURVEPOLYGON" | "MULTICURVE" | "MULTISURFACE"
    )
}

/// The geometry with its arcs replaced by chords of at most 4 degrees, GDAL's default.
/// `None` where GDAL cannot do it.
pub(super) fn straightened(curved: &Geometry) -> Option<Geometry> {
    // SAFETY: the handle is valid while `curved` is borrowed; a step of zero degrees asks
    // for the default, and options may be null. The result belongs to us.
    let straight = unsafe {
        gdal_sys::OGR_G_GetLinearGeometry(curved.c_geometry(), 0.0, std::ptr::null_mut())
    };
    if straight.is_null() {
        return None;
    }
    // SAFETY: `straight` is a valid geometry.
    let size = unsafe { gdal_sys::OGR_G_WkbSize(straight) };
    let mut bytes = vec![0_u8; usize::try_from(size).unwrap_or(0)];
    // SAFETY: the buffer has the size that GDAL asked for; `straight` is destroyed once
    // and not used after.
    let written = unsafe {
        let written = gdal_sys::OGR_G_ExportToWkb(
            straight,
            gdal_sys::OGRwkbByteOrder::wkbNDR,
            bytes.as_mut_ptr(),
        );
        gdal_sys::OGR_G_DestroyGeometry(straight);
        written
    };
    if written != gdal_sys::OGRErr::OGRERR_NONE {
        return None;
    }
    Geometry::from_wkb(&bytes).ok()
}
