//! What is compared.

/// What a point compares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Topic {
    /// The flood level.
    FloodLevel,
    /// The annual chance of the flood.
    AnnualChance,
    /// The freeboard.
    Freeboard,
    /// The design level.
    DesignLevel,
    /// The design level against the proposal's own flood level and freeboard.
    OwnDesignLevel,
    /// Whether it may be sold as compliance.
    Compliance,
    /// Leakage through each length of seal, against the kit's.
    LeakageRate,
    /// Leakage in all, against 4 in of water in 24 hours.
    Leakage,
    /// The warning that it counts on, against the warning at the site.
    Warning,
    /// How long the fitting takes.
    FittingTime,
    /// The fitting against the warning.
    FittingInWarning,
    /// The warning against twelve hours.
    TwelveHours,
    /// The sill.
    Sill,
    /// The ground before the opening.
    Ground,
    /// The protection height.
    ProtectionHeight,
    /// The protection height against the proposal's own design level and sill.
    OwnProtectionHeight,
    /// The height of the barrier against the protection height that is needed.
    BarrierHeight,
    /// The height of the barrier against the proposal's own protection height.
    OwnBarrierHeight,
    /// The height of the barrier against its own planks.
    PlankStack,
    /// The height of a plank against the kit's.
    PlankHeight,
    /// The height of the barrier against the kit's limit.
    KitHeight,
    /// The span of planks against what the kit's planks pass.
    Span,
    /// All posts.
    Posts,
    /// Posts between planks.
    IntermediatePosts,
    /// The depth that the load is taken for.
    LoadDepth,
    /// Pressure, recomputed from the proposal's own depth.
    Pressure,
    /// Force on each unit of width, recomputed from the proposal's own depth.
    ForcePerWidth,
    /// Moment on each unit of width, recomputed from the proposal's own depth.
    MomentPerWidth,
    /// Force on the whole width, recomputed from the proposal's own depth.
    Force,
    /// The water on the wall against what the wall takes.
    WaterOnWall,
    /// An opening that the proposal leaves out.
    LeftOut,
    /// An opening that the site does not have.
    UnknownOpening,
}

use Topic as T;

/// Codes for programs, and titles for people.
const NAMES: [(Topic, &str, &str); 32] = [
    (T::FloodLevel, "flood-level", "flood level"),
    (
        T::AnnualChance,
        "annual-chance",
        "annual chance of the flood",
    ),
    (T::Freeboard, "freeboard", "freeboard"),
    (T::DesignLevel, "design-level", "design level"),
    (
        T::OwnDesignLevel,
        "own-design-level",
        "design level against its own flood level and freeboard",
    ),
    (
        T::Compliance,
        "compliance",
        "offered as compliance with flood-plain rules",
    ),
    (
        T::LeakageRate,
        "leakage-rate",
        "leakage through each length of seal",
    ),
    (
        T::Leakage,
        "leakage",
        "leakage against 4 in of water inside in 24 hours",
    ),
    (T::Warning, "warning", "warning time that it counts on"),
    (T::FittingTime, "fitting-time", "time to fit"),
    (
        T::FittingInWarning,
        "fitting-in-warning",
        "time to fit against the warning",
    ),
    (
        T::TwelveHours,
        "twelve-hours",
        "warning against twelve hours",
    ),
    (T::Sill, "sill", "sill"),
    (T::Ground, "ground", "ground before the opening"),
    (
        T::ProtectionHeight,
        "protection-height",
        "protection height",
    ),
    (
        T::OwnProtectionHeight,
        "own-protection-height",
        "protection height against its own design level and sill",
    ),
    (
        T::BarrierHeight,
        "barrier-height",
        "barrier height against the height to protect",
    ),
    (
        T::OwnBarrierHeight,
        "own-barrier-height",
        "barrier height against its own protection height",
    ),
    (
        T::PlankStack,
        "plank-stack",
        "barrier height against its own planks",
    ),
    (
        T::PlankHeight,
        "plank-height",
        "plank height against the kit",
    ),
    (
        T::KitHeight,
        "kit-height",
        "barrier height against the kit's limit",
    ),
    (T::Span, "span", "span against what the kit's planks pass"),
    (T::Posts, "posts", "posts"),
    (
        T::IntermediatePosts,
        "intermediate-posts",
        "intermediate posts",
    ),
    (
        T::LoadDepth,
        "load-depth",
        "depth that the load is taken for",
    ),
    (T::Pressure, "pressure", "pressure from its own depth"),
    (
        T::ForcePerWidth,
        "force-per-width",
        "force per width from its own depth",
    ),
    (
        T::MomentPerWidth,
        "moment-per-width",
        "moment per width from its own depth",
    ),
    (T::Force, "force", "force from its own depth"),
    (T::WaterOnWall, "water-on-wall", "water on the wall"),
    (T::LeftOut, "left-out", "opening left out"),
    (T::UnknownOpening, "unknown-opening", "opening of this name"),
];

/// What a proposed figure is held against.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Against {
    /// A figure of the assessment.
    Ours,
    /// What the proposal's own figures come to.
    ItsOwnFigures,
    /// A limit of a rule, of the kit or of a wall.
    Limit,
}

impl Against {
    /// In words, before the figure.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Ours => "ours",
            Self::ItsOwnFigures => "by its own figures",
            Self::Limit => "limit",
        }
    }
}

impl Topic {
    /// What the proposed figure is held against.
    #[must_use]
    pub const fn against(self) -> Against {
        match self {
            T::OwnDesignLevel
            | T::OwnProtectionHeight
            | T::OwnBarrierHeight
            | T::PlankStack
            | T::Pressure
            | T::ForcePerWidth
            | T::MomentPerWidth
            | T::Force => Against::ItsOwnFigures,
            T::Leakage
            | T::FittingInWarning
            | T::TwelveHours
            | T::KitHeight
            | T::Span
            | T::WaterOnWall => Against::Limit,
            _ => Against::Ours,
        }
    }

    /// All of them, in the order of a review.
    pub fn all() -> impl Iterator<Item = Self> {
        NAMES.iter().map(|(topic, ..)| *topic)
    }

    /// Its code in results for programs.
    #[must_use]
    pub fn code(self) -> &'static str {
        self.names().1
    }

    /// Its title.
    #[must_use]
    pub fn title(self) -> &'static str {
        self.names().2
    }

    fn names(self) -> (Self, &'static str, &'static str) {
        let found = NAMES.iter().find(|(topic, ..)| *topic == self);
        found.copied().unwrap_or((self, "", ""))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_topic_has_a_code_of_its_own() {
        let mut codes: Vec<&str> = Topic::all().map(Topic::code).collect();
        codes.sort_unstable();
        codes.dedup();
        assert_eq!(codes.len(), NAMES.len());
        assert!(codes.iter().all(|code| !code.is_empty()));
    }
}
