//! Bytes with placeholders for secrets, and back.

use std::borrow::Cow;

use memchr::memmem;

use super::Secrets;

/// Bytes with a placeholder for each secret, and the number that tells the placeholders from
/// what else the bytes hold.
pub(in crate::service) fn hidden<'bytes>(
    secrets: &Secrets,
    bytes: &'bytes [u8],
) -> (Cow<'bytes, [u8]>, u64) {
    if secrets.0.is_empty() {
        return (Cow::Borrowed(bytes), 0);
    }
    let mut mark = 0;
    while memmem::find(bytes, &opening(mark)).is_some() {
        mark += 1;
    }
    let places = secrets.places(bytes);
    if places.is_empty() {
        return (Cow::Borrowed(bytes), mark);
    }
    let mut hidden = Vec::with_capacity(bytes.len());
    let mut end = 0;
    for (place, position) in places {
        hidden.extend_from_slice(&bytes[end..place.start]);
        hidden.extend_from_slice(&opening(mark));
        hidden.extend_from_slice(format!("{position}{CLOSING}").as_bytes());
        end = place.end;
    }
    hidden.extend_from_slice(&bytes[end..]);
    (Cow::Owned(hidden), mark)
}

/// The bytes again. `None` for a placeholder without a secret.
pub(in crate::service) fn restored(secrets: &Secrets, bytes: &[u8], mark: u64) -> Option<Vec<u8>> {
    if secrets.0.is_empty() {
        return Some(bytes.to_owned());
    }
    let opening = opening(mark);
    let mut restored = Vec::with_capacity(bytes.len());
    let mut rest = bytes;
    while let Some(start) = memmem::find(rest, &opening) {
        restored.extend_from_slice(&rest[..start]);
        rest = &rest[start + opening.len()..];
        let end = memchr::memchr(CLOSING as u8, rest)?;
        let position: usize = std::str::from_utf8(&rest[..end]).ok()?.parse().ok()?;
        restored.extend_from_slice(secrets.0.get(position)?.as_bytes());
        rest = &rest[end + 1..];
    }
    restored.extend_from_slice(rest);
    Some(restored)
}

/// Control characters, which stand in no JSON.
fn opening(mark: u64) -> Vec<u8> {
    format!("\u{2}{mark}:").into_bytes()
}

const CLOSING: char = '\u{3}';

#[cfg(test)]
mod tests {
    use super::*;
    use reqwest::Url;

    proptest::proptest! {
        #[test]
        fn what_is_hidden_comes_back(
            secrets in "[a-c2:%&=\u{e9}]{0,12}",
            bytes in proptest::collection::vec(
                proptest::sample::select(b"abc2:\x020\x031%\xc3\xa9".to_vec()), 0..60),
        ) {
            let url = Url::parse(&format!("https://h/?key={secrets}")).unwrap();
            let secrets = Secrets::of(&url);
            let (stored, mark) = hidden(&secrets, &bytes);
            if secrets.0.iter().any(|form| memmem::find(&bytes, form.as_bytes()).is_some()) {
                assert_ne!(stored.as_ref(), bytes.as_slice());
            }
            assert_eq!(restored(&secrets, &stored, mark), Some(bytes.clone()));
        }
    }
}
