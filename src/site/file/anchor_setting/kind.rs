//! The kind of anchor, and which fields belong to it.

use super::super::fields::{Bounds, within};
use super::approval;
use crate::anchor::{AnchorSystem, CastInShape, Fixing};
use crate::quantity::parse_area;
use crate::statement::{Choice, StatementError, Table};

/// The fields that only some kinds of anchor have.
pub(super) const FIELDS: [&str; 9] = [
    "head_bearing",
    "category",
    "coefficient_cracked",
    "coefficient_uncracked",
    "critical_edge",
    "pullout",
    "bond",
    "sleeve_tension",
    "sleeve_shear",
];

const HEAD_BEARING: Bounds = Bounds {
    range: 5e-6..=0.01,
    problem: "no anchor's head bears on that little or that much",
    accepted: "the net bearing area of the head, from 5 mm2 (0.008 in2) to 100 cm2 (15.5 in2), such as \"0.291 in2\"",
};

/// How an anchor is fixed, in the words of [`CastInShape`], [`AnchorSystem`] and one more.
#[derive(Clone, Copy, Debug, PartialEq)]
enum AnchorKind {
    CastIn(CastInShape),
    PostInstalled(AnchorSystem),
    DropInSleeve,
}

impl Choice for AnchorKind {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("headed stud", Self::CastIn(CastInShape::HeadedStud)),
        ("headed bolt", Self::CastIn(CastInShape::HeadedBolt)),
        (
            "torque-controlled",
            Self::PostInstalled(AnchorSystem::TorqueControlled),
        ),
        (
            "displacement-controlled",
            Self::PostInstalled(AnchorSystem::DisplacementControlled),
        ),
        ("screw", Self::PostInstalled(AnchorSystem::Screw)),
        ("undercut", Self::PostInstalled(AnchorSystem::Undercut)),
        ("adhesive", Self::PostInstalled(AnchorSystem::Adhesive)),
        ("drop-in sleeve", Self::DropInSleeve),
    ];
}

impl AnchorKind {
    /// Those of [`FIELDS`] that belong to it.
    const fn fields(self) -> &'static [&'static str] {
        match self {
            Self::CastIn(_) => &["head_bearing"],
            Self::PostInstalled(AnchorSystem::Adhesive) => &[
                "category",
                "coefficient_cracked",
                "coefficient_uncracked",
                "critical_edge",
                "bond",
            ],
            Self::PostInstalled(_) => &[
                "category",
                "coefficient_cracked",
                "coefficient_uncracked",
                "critical_edge",
                "pullout",
            ],
            Self::DropInSleeve => &[
                "category",
                "coefficient_cracked",
                "coefficient_uncracked",
                "critical_edge",
                "pullout",
                "sleeve_tension",
                "sleeve_shear",
            ],
        }
    }
}

pub(super) fn read(table: &Table<'_, '_>) -> Result<Option<Fixing>, StatementError> {
    let kind = table.choice::<AnchorKind>("anchors")?;
    none_of_other_kinds(table, kind)?;
    let Some(kind) = kind else {
        return Ok(None);
    };
    Ok(Some(match kind {
        AnchorKind::CastIn(shape) => Fixing::CastIn {
            shape,
            head_bearing: within(table, "head_bearing", &HEAD_BEARING, parse_area)?,
        },
        AnchorKind::PostInstalled(system) => Fixing::PostInstalled {
            system,
            approval: approval::read(table)?,
        },
        AnchorKind::DropInSleeve => Fixing::DropInSleeve {
            approval: approval::read(table)?,
        },
    }))
}

/// A value of another kind of anchor must not be passed over.
fn none_of_other_kinds(
    table: &Table<'_, '_>,
    kind: Option<AnchorKind>,
) -> Result<(), StatementError> {
    let own = kind.map_or(&[][..], AnchorKind::fields);
    for key in FIELDS {
        if own.contains(&key) {
            continue;
        }
        let Some(stated) = table.optional(key)? else {
            continue;
        };
        return Err(match kind {
            Some(kind) => stated.refuse(
                format!("no such value belongs to anchors = \"{}\"", kind.word()),
                format!("with these anchors {}", own.join(", ")),
            ),
            None => stated.refuse(
                "it belongs to some kinds of anchor, and anchors is not stated",
                format!("{key} with anchors = {}", kinds_with(key)),
            ),
        });
    }
    Ok(())
}

/// The kinds that have a field, to offer them.
fn kinds_with(key: &str) -> String {
    let kinds: Vec<String> = AnchorKind::CHOICES
        .iter()
        .filter(|(_, kind)| kind.fields().contains(&key))
        .map(|(word, _)| format!("\"{word}\""))
        .collect();
    kinds.join(", ")
}
