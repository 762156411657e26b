//! What a report has to say about the run that it comes from: enough to repeat it.

/// The run of a report.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SiteRun {
    /// Version of the program, such as `0.1.0`.
    pub version: String,
    /// The day of the run, as it is to be printed.
    pub date: String,
    /// The command as it was typed, the program first.
    pub command: Vec<String>,
    /// The files that were read.
    pub inputs: Vec<InputFile>,
}

/// A file that an answer was read from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InputFile {
    /// What it was read for, such as `terrain`.
    pub role: String,
    /// Its path, as it was given, or where a service's answer came from and when.
    pub path: String,
    /// Its length in bytes.
    pub bytes: u64,
    /// SHA-256 of its bytes (FIPS 180-4), in hexadecimal.
    pub sha256: String,
}

impl SiteRun {
    /// The command as a shell takes it: arguments with other than plain characters in quotes.
    ///
    /// ```
    /// use sillmark::report::SiteRun;
    /// let run = SiteRun {
    ///     command: ["sillmark", "site", "it's.toml"].map(str::to_owned).into(),
    ///     ..SiteRun::default()
    /// };
    /// assert_eq!(run.command_line(), r"sillmark site 'it'\''s.toml'");
    /// ```
    #[must_use]
    pub fn command_line(&self) -> String {
        let quoted: Vec<String> = self.command.iter().map(|word| quoted(word)).collect();
        quoted.join(" ")
    }
}

/// A word as POSIX shells take it (IEEE 1003.1, 2.2.2 Single-Quotes).
fn quoted(word: &str) -> String {
    let plain =
        |character: char| character.is_ascii_alphanumeric() || "-_./=,:%+@".contains(character);
    if !word.is_empty() && word.chars().all(plain) {
        word.to_owned()
    } else {
        format!("'{}'", word.replace('\'', r"'\''"))
    }
}
