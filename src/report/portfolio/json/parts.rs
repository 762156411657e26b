//! The tables of a summary.

use schemars::JsonSchema;
use serde::Serialize;

use crate::portfolio::summary::{
    CodeTally, HeightBin, Lattice, RankedRow, RejectKind, VerdictCounts,
};
use crate::quantity::Length;
use crate::quantity::unit::meter;
use crate::report::json::verdict::JsonVerdict;
use crate::report::portfolio::cautions::CountedCaution;
use crate::site::Location;
use crate::verdict::Verdict;

/// Rows by verdict.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonVerdicts {
    /// The sill lies at or above the design level, or the map has no flood there.
    above: u64,
    /// A barrier within common limits.
    protect: u64,
    /// A licensed engineer has to design it.
    engineer: u64,
    /// A needed input is missing or refused.
    unresolved: u64,
}

impl From<&VerdictCounts> for JsonVerdicts {
    fn from(counts: &VerdictCounts) -> Self {
        Self {
            above: counts.of(Verdict::Above),
            protect: counts.of(Verdict::Protect),
            engineer: counts.of(Verdict::Engineer),
            unresolved: counts.of(Verdict::Unresolved),
        }
    }
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonZoneCount {
    /// As the layer writes it, of at most 40 characters.
    code: String,
    rows: JsonVerdicts,
}

impl JsonZoneCount {
    pub(super) fn of((code, rows): (&String, &VerdictCounts)) -> Self {
        Self {
            code: code.clone(),
            rows: rows.into(),
        }
    }
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonCode {
    code: String,
    rows: u64,
}

impl JsonCode {
    pub(super) fn all(tally: &CodeTally) -> Vec<Self> {
        let codes = tally.by_count().into_iter();
        codes
            .map(|(code, rows)| Self {
                code: code.to_owned(),
                rows,
            })
            .collect()
    }
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonHeights {
    /// The heights are above this; null where nothing is to be protected.
    above_m: Option<f64>,
    /// The heights are not above this; null for all that are higher.
    up_to_m: Option<f64>,
    rows: JsonVerdicts,
}

impl JsonHeights {
    pub(super) fn of(bin: HeightBin) -> Self {
        let metres = |length: Length| length.get::<meter>();
        Self {
            above_m: bin.above.map(metres),
            up_to_m: bin.up_to.map(metres),
            rows: (&bin.rows).into(),
        }
    }
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonNeed {
    #[serde(flatten)]
    row: JsonRow,
    protection_height_m: f64,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonChance {
    #[serde(flatten)]
    row: JsonRow,
    /// As a fraction.
    annual_chance: f64,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
struct JsonRow {
    /// Of at most 100 characters.
    id: String,
    /// Degrees east of Greenwich, WGS 84; null where the place is not known.
    longitude: Option<f64>,
    /// Degrees north of the equator, WGS 84; null where the place is not known.
    latitude: Option<f64>,
    verdict: JsonVerdict,
}

impl JsonRow {
    fn of(row: &RankedRow) -> Self {
        Self {
            id: row.id.clone(),
            longitude: row.location.map(Location::longitude),
            latitude: row.location.map(Location::latitude),
            verdict: row.verdict.into(),
        }
    }
}

impl JsonNeed {
    pub(super) fn of(row: &RankedRow) -> Self {
        Self {
            row: JsonRow::of(row),
            protection_height_m: row.figure,
        }
    }
}

impl JsonChance {
    pub(super) fn of(row: &RankedRow) -> Self {
        Self {
            row: JsonRow::of(row),
            annual_chance: row.figure,
        }
    }
}

/// Where the rows are, in cells of a lattice of degrees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonMap {
    /// Width and height of a cell in degrees.
    cell_degrees: f64,
    /// The cells that hold a row.
    cells: Vec<JsonCell>,
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct JsonCell {
    /// Longitude of its western edge, in degrees.
    west: f64,
    /// Latitude of its southern edge, in degrees.
    south: f64,
    rows: JsonVerdicts,
}

impl JsonMap {
    pub(super) fn of(lattice: &Lattice) -> Self {
        let degrees = lattice.cell_degrees();
        let cells = lattice.cells().map(|cell| JsonCell {
            west: f64::from(cell.column) * degrees,
            south: f64::from(cell.row) * degrees,
            rows: (&cell.rows).into(),
        });
        Self {
            cell_degrees: degrees,
            cells: cells.collect(),
        }
    }
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonReject {
    field: String,
    problem: String,
    rows: u64,
}

impl JsonReject {
    pub(super) fn of((kind, rows): (&RejectKind, &u64)) -> Self {
        Self {
            field: kind.field.clone(),
            problem: kind.problem.clone(),
            rows: *rows,
        }
    }
}

#[derive(Clone, Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct JsonCountedCaution {
    /// Stable over versions.
    code: String,
    text: String,
    /// Where it stands.
    reference: String,
    rows: u64,
}

impl JsonCountedCaution {
    pub(super) fn all(cautions: Vec<CountedCaution>) -> Vec<Self> {
        let each = cautions.into_iter();
        each.map(|caution| Self {
            code: caution.code,
            text: caution.text,
            reference: caution.reference,
            rows: caution.rows,
        })
        .collect()
    }
}
