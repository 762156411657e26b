//! How far a run is, on stderr where that is a terminal.

use std::io::IsTerminal as _;
use std::time::Duration;

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use sillmark::portfolio::Progress;
use sillmark::table::TableReader;

/// A line with rows, rate and the time that is left; nothing where nobody looks on.
pub(super) struct Bar {
    line: ProgressBar,
    rows: Option<u64>,
    bytes: Option<u64>,
}

impl Bar {
    pub(super) fn new(reader: &TableReader) -> Self {
        let bar = if std::io::stderr().is_terminal() {
            ProgressBar::with_draw_target(None, ProgressDrawTarget::stderr_with_hz(4))
        } else {
            ProgressBar::hidden()
        };
        let told = "{human_pos} of {human_len} rows, {per_sec}, {eta} left";
        if let Ok(style) = ProgressStyle::with_template(told) {
            bar.set_style(style);
        }
        bar.enable_steady_tick(Duration::from_millis(500));
        Self {
            line: bar,
            rows: reader.rows_hint(),
            bytes: reader.bytes_hint(),
        }
    }

    /// Parsing is a quarter of the work on a row, reading its maps a half, answering it the rest.
    pub(super) fn show(&mut self, progress: Progress) {
        let of_bytes = self.bytes.and_then(|bytes| {
            let (all, read) = (u128::from(bytes), u128::from(progress.bytes));
            let rows = (u128::from(progress.parsed) * all).checked_div(read)?;
            u64::try_from(rows).ok()
        });
        if let Some(rows) = self.rows.or(of_bytes) {
            self.line.set_length(rows.max(progress.parsed));
        }
        let done = (progress.parsed + 2 * progress.surveyed + progress.answered) / 4;
        self.line.set_position(done);
    }

    pub(super) fn clear(&self) {
        self.line.finish_and_clear();
    }
}
