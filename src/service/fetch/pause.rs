//! How long to wait before a request is tried again.

use std::time::{Duration, SystemTime};

use crate::service::Limits;

/// The pause before the next try: as long as the server asks for in `Retry-After` (RFC 9110,
/// section 10.2.3: seconds, or a date), else twice as long as the one before.
///
/// # Errors
/// What the server asks for, where that is longer than the limit.
pub(super) fn before(
    tries: u32,
    retry_after: Option<&str>,
    limits: &Limits,
) -> Result<Duration, Duration> {
    match retry_after.and_then(|text| asked_for(text.trim())) {
        Some(asked) if asked > limits.longest_pause => Err(asked),
        Some(asked) => Ok(asked),
        None => Ok(doubled(tries, limits)),
    }
}

/// A pause twice as long as the one before, no longer than the limit.
pub(super) fn doubled(tries: u32, limits: &Limits) -> Duration {
    let doubled = limits.pause * 2_u32.saturating_pow(tries.saturating_sub(1).min(16));
    doubled.min(limits.longest_pause)
}

/// A time in words, rounded up to what is told.
pub(super) fn words(time: Duration) -> String {
    let seconds = time.as_secs() + u64::from(time.subsec_nanos() > 0);
    match seconds {
        ..=119 => format!("{seconds} s"),
        120..=7199 => format!("{} min", seconds.div_ceil(60)),
        _ => format!("{} h", seconds.div_ceil(3600)),
    }
}

fn asked_for(text: &str) -> Option<Duration> {
    if let Ok(seconds) = text.parse() {
        return Some(Duration::from_secs(seconds));
    }
    let until = httpdate::parse_http_date(text).ok()?;
    Some(
        until
            .duration_since(SystemTime::now())
            .unwrap_or(Duration::ZERO),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pauses_double_up_to_the_limit() {
        let limits = Limits::default();
        let milliseconds = |tries| doubled(tries, &limits).as_millis();
        assert_eq!([1, 2, 3, 40].map(milliseconds), [500, 1000, 2000, 60_000]);
    }

    #[test]
    fn a_server_is_listened_to() {
        let limits = Limits::default();
        let before = |tries, text| before(tries, Some(text), &limits);
        assert_eq!(before(1, "7"), Ok(Duration::from_secs(7)));
        assert_eq!(before(1, "100800"), Err(Duration::from_hours(28)));
        // A date that is past, and what is neither.
        let past = "Sun, 06 Nov 1994 08:49:37 GMT"; // RFC 9110, section 5.6.7
        assert_eq!(before(3, past), Ok(Duration::ZERO));
        assert_eq!(before(2, "soon"), Ok(Duration::from_secs(1)));
    }

    #[test]
    fn a_time_is_told_in_words() {
        let told = [61, 119, 120, 121, 7199, 7200, 100_800]
            .map(|seconds| words(Duration::from_secs(seconds)));
        assert_eq!(
            told,
            ["61 s", "119 s", "2 min", "3 min", "120 min", "2 h", "28 h"]
        );
        assert_eq!(words(Duration::from_millis(99_500)), "100 s");
    }
}
