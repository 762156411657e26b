//! What a layer is read for.

use super::LineKind;

/// What a layer of a flood map holds, and what messages about it say.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LayerContent {
    /// Areas with their zone.
    Zones,
    /// Lines of a known level.
    Lines(LineKind),
}

impl LayerContent {
    /// The option that names such a layer; its statements are called as it with an ending,
    /// such as `--zones-crs`.
    #[must_use]
    pub const fn option(self) -> &'static str {
        match self {
            Self::Zones => "--zones",
            Self::Lines(kind) => kind.option(),
        }
    }

    /// The content in full, for who reads it beside other maps.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Zones => "flood zones",
            Self::Lines(kind) => kind.plural(),
        }
    }

    /// The content in words.
    #[must_use]
    pub const fn plural(self) -> &'static str {
        match self {
            Self::Zones => "zones",
            Self::Lines(kind) => kind.plural(),
        }
    }
}
