//! GDAL's own record of the last error of this thread.
//!
//! It is looked at beside the error handler because GDAL silences handlers in places, and
//! the record is kept even then. The `gdal` crate has no safe call for it.

#![allow(unsafe_code)]

use std::ffi::CStr;

/// Forgets the last error of this thread.
pub(super) fn reset() {
    // SAFETY: takes no argument and touches thread-local state of GDAL only.
    unsafe { gdal_sys::CPLErrorReset() }
}

/// The last error of this thread, where it was worse than a warning.
pub(super) fn failure() -> Option<String> {
    // SAFETY: takes no argument and reads thread-local state of GDAL only.
    let class = unsafe { gdal_sys::CPLGetLastErrorType() };
    if class != gdal_sys::CPLErr::CE_Failure && class != gdal_sys::CPLErr::CE_Fatal {
        return None;
    }
    // SAFETY: takes no argument; the pointer is to a thread-local buffer.
    let message = unsafe { gdal_sys::CPLGetLastErrorMsg() };
    if message.is_null() {
        return Some(String::new());
    }
    // SAFETY: not null, zero-terminated, and valid until the next error of this thread;
    // the text is copied before any other call.
    let message = unsafe { CStr::from_ptr(message) };
    Some(message.to_string_lossy().trim().to_owned())
}
