//! The day of a run.

use std::time::{SystemTime, UNIX_EPOCH};

/// The day, as ISO 8601 writes it, in universal time.
pub(super) fn today() -> String {
    let days = SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .map_or(0, |time| time.as_secs() / 86_400);
    civil(i64::try_from(days).unwrap_or_default())
}

/// Year, month and day of a number of days since 1970: H. Hinnant, "chrono-Compatible
/// Low-Level Date Algorithms", `civil_from_days`.
fn civil(days: i64) -> String {
    let shifted = days + 719_468;
    let era = shifted.div_euclid(146_097);
    let of_era = shifted.rem_euclid(146_097);
    let year_of_era = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let from_march = (5 * of_year + 2) / 153;
    let day = of_year - (153 * from_march + 2) / 5 + 1;
    let month = if from_march < 10 {
        from_march + 3
    } else {
        from_march - 9
    };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    format!("{year:04}-{month:02}-{day:02}")
}

#[cfg(test)]
mod tests {
    use super::civil;

    #[test]
    fn days_as_dates() {
        // Python 3: date(1970, 1, 1) + timedelta(days).
        for (days, date) in [
            (0, "1970-01-01"),
            (11_016, "2000-02-29"),
            (20_782, "2026-11-25"),
        ] {
            assert_eq!(civil(days), date);
        }
    }
}
