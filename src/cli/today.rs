//! The day of a run.

use std::time::{SystemTime, UNIX_EPOCH};

use chrono::DateTime;

/// The day, as ISO 8601 writes it, in universal time.
pub(super) fn today() -> String {
    let now = SystemTime::now().duration_since(UNIX_EPOCH);
    let seconds = now.map_or(0, |time| time.as_secs());
    day(i64::try_from(seconds).unwrap_or_default())
}

fn day(seconds: i64) -> String {
    let time = DateTime::from_timestamp(seconds, 0).unwrap_or_default();
    time.date_naive().to_string()
}

#[cfg(test)]
mod tests {
    use super::day;

    #[test]
    fn days_as_dates() {
        // Python 3: date(1970, 1, 1) + timedelta(days).
        for (days, date) in [
            (0, "1970-01-01"),
            (11_016, "2000-02-29"),
            (20_782, "2026-11-25"),
        ] {
            assert_eq!(day(days * 86_400), date);
        }
    }
}
