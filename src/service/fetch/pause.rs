//! How long to wait before a request is tried again.

use std::time::{Duration, SystemTime};

use crate::service::Limits;

/// The pause before the next try: as long as the server asks for in `Retry-After` (RFC 9110,
/// section 10.2.3: seconds, or a date), else twice as long as the one before; never longer than
/// the limit.
pub(super) fn before(tries: u32, retry_after: Option<&str>, limits: &Limits) -> Duration {
    let asked = retry_after.and_then(|text| asked_for(text.trim()));
    let doubled = limits.pause * 2_u32.saturating_pow(tries.saturating_sub(1).min(16));
    asked.unwrap_or(doubled).min(limits.longest_pause)
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
        let milliseconds = |tries| before(tries, None, &limits).as_millis();
        assert_eq!([1, 2, 3, 40].map(milliseconds), [500, 1000, 2000, 60_000]);
    }

    #[test]
    fn a_server_is_listened_to() {
        let limits = Limits::default();
        assert_eq!(before(1, Some("7"), &limits), Duration::from_secs(7));
        assert_eq!(before(1, Some("86400"), &limits), Duration::from_mins(1));
        // A date that is past, and what is neither.
        let past = Some("Sun, 06 Nov 1994 08:49:37 GMT"); // RFC 9110, section 5.6.7
        assert_eq!(before(3, past, &limits), Duration::ZERO);
        assert_eq!(before(2, Some("soon"), &limits), Duration::from_secs(1));
    }
}
