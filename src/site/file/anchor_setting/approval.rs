//! What the approval of the anchor product states.

use super::super::fields::{Bounds, number, within, word_or};
use crate::anchor::{Approval, Pullout};
use crate::quantity::{parse_force, parse_length};
use crate::statement::{StatementError, Table};

/// The greatest is that of ACI 318-19 17.6.2.2.1. In inch-pound units reports give 17 to 24,
/// in SI units 7 to 10 (from memory), so that below 14 the units are the wrong ones.
const CRACKED: Bounds = Bounds {
    range: 14.0..=24.0,
    problem: "it is out of range for a coefficient in inch-pound units",
    accepted: "the approval's coefficient for cracked concrete in inch-pound units, from 14 to 24 (2.41 times the one in SI units)",
};

/// The greatest is 1.4 times 24, as much as uncracked concrete gains by 17.6.2.5; SI units give
/// up to 12.7 (from memory).
const UNCRACKED: Bounds = Bounds {
    range: 14.0..=34.0,
    problem: "it is out of range for a coefficient in inch-pound units",
    accepted: "the approval's coefficient for uncracked concrete in inch-pound units, from 14 to 34 (2.41 times the one in SI units)",
};

const CRITICAL_EDGE: Bounds = Bounds {
    range: 0.01..=10.0,
    problem: "no edge distance is that small or that large",
    accepted: "the approval's critical edge distance, from 0.4 in (10 mm) to 32 ft (10 m), such as \"8 in\"",
};

const STRENGTH: Bounds = Bounds {
    range: 100.0..=1e7,
    problem: "no anchor is that weak or that strong",
    accepted: "the approval's nominal strength, from 23 lb (0.1 kN) to 2200 kip (10 MN), such as \"3200 lb\" or \"12 kN\"",
};

const PULLOUT: &str = "the approval's pullout strength of one anchor, such as \"3200 lb\" or \"12 kN\", or \"does not govern\"";

/// Reads all of them: which belong to the kind of anchor was seen before.
pub(super) fn read(table: &Table<'_, '_>) -> Result<Approval, StatementError> {
    let strength = |key| within(table, key, &STRENGTH, parse_force);
    let approval = Approval {
        category: table.choice("category")?,
        coefficient_cracked: number(table, "coefficient_cracked", &CRACKED)?,
        coefficient_uncracked: number(table, "coefficient_uncracked", &UNCRACKED)?,
        critical_edge: within(table, "critical_edge", &CRITICAL_EDGE, parse_length)?,
        pullout: pullout(table)?,
        bond: strength("bond")?,
        steel_tension: strength("sleeve_tension")?,
        steel_shear: strength("sleeve_shear")?,
    };
    let coefficients = (approval.coefficient_cracked, approval.coefficient_uncracked);
    if let (Some(cracked), Some(uncracked)) = coefficients
        && uncracked < cracked
    {
        let stated = table.required("coefficient_uncracked", UNCRACKED.accepted)?;
        return Err(stated.refuse(
            "it is less than coefficient_cracked: cracks make no concrete hold more",
            "the two as the approval has them",
        ));
    }
    Ok(approval)
}

fn pullout(table: &Table<'_, '_>) -> Result<Pullout, StatementError> {
    let pullout = word_or(
        table,
        "pullout",
        ("does not govern", Pullout::DoesNotGovern),
        PULLOUT,
        |text| parse_force(text).map(Pullout::Stated),
    )?;
    match pullout {
        Some(Pullout::Stated(force)) if !STRENGTH.take(force.value) => {
            let stated = table.required("pullout", PULLOUT)?;
            Err(stated.refuse(STRENGTH.problem, PULLOUT))
        }
        Some(pullout) => Ok(pullout),
        None => Ok(Pullout::Unstated),
    }
}
