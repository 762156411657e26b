//! Addresses as logs and reports may show them.

use reqwest::Url;

use super::BLOT;
use super::harmless::is_harmless;

/// An address without a user's name, password and fragment; of its parameters only those show
/// their values that are known to be harmless.
pub(in crate::service) fn shown(url: &Url) -> String {
    let mut shown = url.clone();
    // Only what cannot carry them refuses, and then there is nothing to hide.
    let _ = shown.set_username("");
    let _ = shown.set_password(None);
    shown.set_fragment(None);
    let Some(query) = url.query() else {
        return shown.to_string();
    };
    shown.set_query(None);
    format!("{shown}?{}", parameters(query, is_harmless))
}

/// A text that is meant as an address and is none: scheme, host and path of it.
pub(in crate::service) fn disguised(text: &str) -> String {
    let scheme_end = text.find(':').map_or(0, |colon| {
        let behind = &text[colon + 1..];
        colon + 1 + (behind.len() - behind.trim_start_matches('/').len())
    });
    let (scheme, rest) = text.split_at(scheme_end);
    // A password may hold any letter: all before the last @ may be of it.
    let (user, rest) = match rest.rsplit_once('@') {
        Some((_, rest)) => (format!("{BLOT}@"), rest),
        None => (String::new(), rest),
    };
    let (rest, fragment) = match rest.split_once('#') {
        Some((rest, _)) => (rest, format!("#{BLOT}")),
        None => (rest, String::new()),
    };
    let (path, query) = match rest.split_once('?') {
        Some((path, query)) => (path, format!("?{}", parameters(query, |_| false))),
        None => (rest, String::new()),
    };
    format!("{scheme}{user}{}{query}{fragment}", without_bad_port(path))
}

fn parameters(query: &str, may_be_shown: impl Fn(&str) -> bool) -> String {
    let parts = query.split('&').map(|part| match part.split_once('=') {
        _ if part.is_empty() => String::new(),
        Some((name, value)) if may_be_shown(name) || value.is_empty() => part.to_owned(),
        Some((name, _)) => format!("{name}={BLOT}"),
        None if may_be_shown(part) => part.to_owned(),
        None => BLOT.to_owned(),
    });
    parts.collect::<Vec<String>>().join("&")
}

/// What stands where a port would and is no number may be half a password.
fn without_bad_port(path: &str) -> String {
    let end = path.find('/').unwrap_or(path.len());
    let (authority, behind) = path.split_at(end);
    match authority.rsplit_once(':') {
        Some((host, port))
            if !host.contains('[') && port.bytes().any(|byte| !byte.is_ascii_digit()) =>
        {
            format!("{host}:{BLOT}{behind}")
        }
        _ => path.to_owned(),
    }
}
