//! What a layer of lines holds.

/// The two kinds of lines that flood maps draw across a watercourse.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LineKind {
    /// Cross-sections of the flood study's model, each with its own computed level.
    CrossSections,
    /// Contours of the water surface at whole levels.
    LevelLines,
}

impl LineKind {
    /// The option that names a layer of this kind; its statements are called as it with an
    /// ending, such as `--lines-datum`.
    #[must_use]
    pub const fn option(self) -> &'static str {
        match self {
            Self::CrossSections => "--sections",
            Self::LevelLines => "--lines",
        }
    }

    /// The layer's contents in words.
    #[must_use]
    pub const fn plural(self) -> &'static str {
        match self {
            Self::CrossSections => "cross-sections",
            Self::LevelLines => "flood-level lines",
        }
    }

    /// One of them in words.
    #[must_use]
    pub const fn singular(self) -> &'static str {
        match self {
            Self::CrossSections => "cross-section",
            Self::LevelLines => "flood-level line",
        }
    }
}
