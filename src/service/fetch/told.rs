//! What a server says of an error.

/// No more bytes are looked at, and no more letters shown. Common practice, no source.
const READ: usize = 1 << 16;
const SHOWN: usize = 200;

/// The start of what a server says, on one line, behind a colon; of a page its title.
pub(in crate::service) fn first_words(bytes: &[u8]) -> String {
    let line = page_title(bytes).unwrap_or_else(|| {
        let text = String::from_utf8_lossy(&bytes[..bytes.len().min(READ)]);
        line(&text, bytes.len() > READ)
    });
    if line.is_empty() {
        line
    } else {
        format!(": {line}")
    }
}

/// The title of a page of HTML, or its text where it has none; `None` of what is no page.
pub(in crate::service) fn page_title(bytes: &[u8]) -> Option<String> {
    let start = bytes.trim_ascii_start();
    let start = start.strip_prefix(b"\xef\xbb\xbf").unwrap_or(start);
    let is_page = start.trim_ascii_start().starts_with(b"<");
    is_page.then(|| {
        let text = String::from_utf8_lossy(&start[..start.len().min(READ)]);
        let title = between(&text, "<title", "</title").map(without_tags);
        let title = title.filter(|title| !title.trim().is_empty());
        let text = title.unwrap_or_else(|| without_tags(&text));
        line(&text, bytes.len() > READ)
    })
}

/// What stands in an element, behind the end of its first tag.
fn between<'text>(text: &'text str, opening: &str, closing: &str) -> Option<&'text str> {
    // Letters of ASCII alone change, so that positions hold in both.
    let small = text.to_ascii_lowercase();
    let start = small.find(opening)?;
    let start = start + small[start..].find('>')? + 1;
    let end = start + small[start..].find(closing)?;
    Some(&text[start..end])
}

/// What is no text of a page, from its start to its end.
const UNSEEN: [(&str, &str); 3] = [
    ("<script", "</script>"),
    ("<style", "</style>"),
    ("<!--", "-->"),
];

fn without_tags(page: &str) -> String {
    let small = page.to_ascii_lowercase();
    let mut text = String::with_capacity(page.len());
    let mut at = 0;
    while let Some(start) = small[at..].find('<') {
        text.push_str(&page[at..at + start]);
        text.push(' ');
        at += start;
        let is_here = |(opening, _): &&(&str, &str)| small[at..].starts_with(opening);
        let end = UNSEEN.iter().find(is_here).map_or(">", |(_, end)| end);
        at = small[at..]
            .find(end)
            .map_or(page.len(), |before| at + before + end.len());
    }
    text.push_str(&page[at..]);
    for (entity, letter) in [
        ("&nbsp;", " "),
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&#39;", "'"),
        ("&amp;", "&"),
    ] {
        text = text.replace(entity, letter);
    }
    text
}

/// Words on one line, as many as are shown. One that is cut is left out: it may be the start of
/// a key, which is not known again.
fn line(text: &str, is_cut: bool) -> String {
    let words = text
        .split(|letter: char| letter.is_whitespace() || letter.is_control())
        .filter(|word| !word.is_empty());
    let mut words: Vec<&str> = words.collect();
    let mut length: usize = words.iter().map(|word| word.chars().count() + 1).sum();
    let is_long = length > SHOWN + 1;
    if is_cut && !is_long {
        words.pop();
    }
    while length > SHOWN + 1
        && let Some(last) = words.pop()
    {
        length -= last.chars().count() + 1;
    }
    if is_cut || is_long {
        words.push("…");
    }
    words.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_a_page_its_title_is_told() {
        for (page, told) in [
            (
                "<!DOCTYPE html><html><TITLE lang=en>\nSign &amp; in</TITLE><body>x",
                ": Sign & in",
            ),
            (
                "\u{feff} <p class='a'>No <b>such</b>\nlayer<script>a<b</script><style>p{}</style>",
                ": No such layer",
            ),
            ("<title></title><h1>Gone", ": Gone"),
            ("<", ""),
            ("1 < 2", ": 1 < 2"),
        ] {
            assert_eq!(first_words(page.as_bytes()), told);
        }
    }

    #[test]
    fn a_word_is_whole_or_left_out() {
        let long = format!("Invalid token: {}", "e".repeat(300));
        assert_eq!(first_words(long.as_bytes()), ": Invalid token: …");
        let many = "words ".repeat(20_000);
        let told = first_words(many.as_bytes());
        assert!(told.ends_with("words …") && told.len() < 210, "{told}");
        assert_eq!(first_words(" a\tb ".as_bytes()), ": a b");
    }
}
