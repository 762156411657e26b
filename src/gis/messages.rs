//! What GDAL said on this thread, kept for the error that is about to be made of it.

use std::cell::RefCell;

use gdal::errors::CplErrType;

/// More than this many messages of one call tell nothing new.
const KEPT: usize = 20;

thread_local! {
    static FAILURES: RefCell<Vec<String>> = const { RefCell::new(Vec::new()) };
}

/// The process-wide handler. It must not panic: C code is below it on the stack.
pub(super) fn hear(class: CplErrType, number: i32, message: &str) {
    match class {
        CplErrType::None | CplErrType::Debug => {
            tracing::debug!(target: "gdal", number, "{message}");
        }
        CplErrType::Warning => tracing::warn!(target: "gdal", number, "{message}"),
        // The error that is built from it reports it: here it is a detail only.
        CplErrType::Failure | CplErrType::Fatal => {
            tracing::debug!(target: "gdal", number, failure = true, "{message}");
            let _ = FAILURES.try_with(|failures| {
                if let Ok(mut failures) = failures.try_borrow_mut()
                    && failures.len() < KEPT
                    && !failures.iter().any(|known| known == message)
                {
                    failures.push(message.to_owned());
                }
            });
        }
    }
}

/// Forgets earlier failures.
pub(super) fn forget() {
    FAILURES.with_borrow_mut(Vec::clear);
}

/// The failures since [`forget`], in one line; empty where there were none.
pub(super) fn failures() -> String {
    FAILURES.with_borrow(|failures| {
        failures
            .iter()
            .map(|failure| failure.trim().trim_end_matches('.').replace('\n', " "))
            .collect::<Vec<_>>()
            .join("; ")
    })
}

/// Runs `work` and returns what it gave beside the failures that GDAL reported meanwhile.
pub(crate) fn heard<T>(work: impl FnOnce() -> T) -> (T, String) {
    forget();
    super::last_error::reset();
    let result = work();
    let failures = failures();
    let failures = if failures.is_empty() {
        super::last_error::failure().unwrap_or_default()
    } else {
        failures
    };
    (result, failures)
}
