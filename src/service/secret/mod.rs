//! What of an address nobody else has to know, and how it is kept out of texts and files.

mod error;
mod harmless;
mod hidden;
mod shown;
mod variants;

pub(super) use hidden::{hidden, restored};
pub(super) use shown::{disguised, shown};

use std::ops::Range;

use memchr::memmem;
use reqwest::Url;

use self::harmless::is_harmless;
use super::Request;

/// Values shorter than this, in bytes, are no secrets: they stand in any text by chance. Common
/// practice, no source.
const SHORTEST: usize = 4;

/// What stands in the place of a secret.
const BLOT: &str = "…";

/// The values of an address that are secret, in all forms in which they may be repeated, the
/// longest first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Secrets(Vec<String>);

impl Secrets {
    /// Those of an address.
    pub(super) fn of(url: &Url) -> Self {
        let parts = url.query().unwrap_or_default().split('&');
        let raw = parts.filter_map(|part| match part.split_once('=') {
            Some((name, value)) => (!is_harmless(name)).then_some(value),
            None => (!is_harmless(part)).then_some(part),
        });
        Self::from_forms(raw.flat_map(variants::of_encoded))
    }

    /// Those of a request, its address and its form.
    pub(super) fn of_request(request: &Request) -> Self {
        let fields = request.form.iter().flatten();
        let plain = fields.filter(|(name, _)| !is_harmless(name));
        let of_form = Self::from_forms(plain.flat_map(|(_, value)| variants::of_plain(value)));
        Self::of(&request.url).and(&of_form)
    }

    /// These and others.
    pub(super) fn and(self, others: &Self) -> Self {
        Self::from_forms(self.0.into_iter().chain(others.0.iter().cloned()))
    }

    fn from_forms(forms: impl Iterator<Item = String>) -> Self {
        let mut forms: Vec<String> = forms.filter(|form| form.len() >= SHORTEST).collect();
        forms.sort_by(|one, other| other.len().cmp(&one.len()).then_with(|| one.cmp(other)));
        forms.dedup();
        Self(forms)
    }

    /// A text without them.
    pub(super) fn blotted(&self, text: &str) -> String {
        let mut blotted = String::with_capacity(text.len());
        let mut end = 0;
        for (place, _) in self.places(text.as_bytes()) {
            blotted.push_str(&text[end..place.start]);
            blotted.push_str(BLOT);
            end = place.end;
        }
        blotted + &text[end..]
    }

    /// Where they stand, each with its position in the list; of those that overlap the first, of
    /// those that begin together the longest.
    fn places(&self, bytes: &[u8]) -> Vec<(Range<usize>, usize)> {
        let mut places: Vec<(Range<usize>, usize)> = Vec::new();
        for (position, form) in self.0.iter().enumerate() {
            let starts = memmem::find_iter(bytes, form.as_bytes());
            places.extend(starts.map(|start| (start..start + form.len(), position)));
        }
        places.sort_by_key(|(place, position)| (place.start, *position));
        let mut free = 0;
        places.retain(|(place, _)| {
            let is_free = place.start >= free;
            if is_free {
                free = place.end;
            }
            is_free
        });
        places
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn secrets(query: &str) -> Secrets {
        Secrets::of(&Url::parse(&format!("https://h/a?{query}")).unwrap())
    }

    #[test]
    fn secrets_are_blotted_in_every_form() {
        let of = secrets("token=a%2Fb%3D%22c&limit=1000&sig=xyz&code=SEKRIT9");
        for (text, blotted) in [
            ("Invalid token: a/b=\"c.", "Invalid token: …."),
            ("a%2Fb%3D%22c a%2fb%3d%22c", "… …"),
            (r#"{"href":"a\/b=\"c"}"#, r#"{"href":"…"}"#),
            ("limit 1000, xyz, SEKRIT9SEKRIT9", "limit 1000, xyz, ……"),
            ("nothing", "nothing"),
        ] {
            assert_eq!(of.blotted(text), blotted);
        }
    }

    #[test]
    fn the_longer_secret_goes_first() {
        let of = secrets("a=abcdef&b=abcd&c=efgh");
        assert_eq!(of.blotted("abcdefgh abcd efgh"), "…gh … …");
    }
}
