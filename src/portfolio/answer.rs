//! A row of the result.

use std::io::Write as _;

use super::{Columns, Role};
use crate::assess::{Assessment, OpeningAssessment};
use crate::barrier::{BarrierDesign, Upright};
use crate::quantity::unit::{in_newtons_per_metre, meter};
use crate::quantity::{Elevation, Length, push_fixed};
use crate::risk::ChanceAtLevel;
use crate::statement::Choice;
use crate::table::{ColumnKind, OutColumn, csv_label, csv_text};
use crate::verdict::Caution;

/// Decimals of lengths: a tenth of a millimetre.
const METRES: usize = 4;
/// Decimals of forces on a metre of width, newtons.
const NEWTONS: usize = 2;
/// Decimals of chances.
const CHANCES: usize = 6;

/// Which columns a result has beside those that every one has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(clippy::struct_excessive_bools)] // each column is there or not
pub struct ResultShape {
    /// The name of the building.
    pub building: bool,
    /// The name of the opening.
    pub opening: bool,
    /// Coordinates in degrees, and not as x and y.
    pub degrees: bool,
    /// The sill, where it is not the threshold.
    pub sill: bool,
    /// The barrier, where openings have widths.
    pub barrier: bool,
}

impl ResultShape {
    /// What a table of such columns is answered with.
    #[must_use]
    pub fn of(input: &Columns) -> Self {
        Self {
            building: input.at(Role::Building).is_some(),
            opening: input.at(Role::Opening).is_some(),
            degrees: input.degrees,
            sill: input.at(Role::SillAboveThreshold).is_some(),
            barrier: input.has_widths(),
        }
    }
}

/// The columns of the result, in their order.
#[must_use]
pub fn answer_columns(shape: ResultShape) -> Vec<OutColumn> {
    use ColumnKind::{Number, Text, Whole};
    let mut columns = Vec::new();
    let mut add = |kind, names: &[&str]| {
        columns.extend(names.iter().map(|name| OutColumn {
            name: (*name).to_owned(),
            kind,
        }));
    };
    add(Text, &["id"]);
    for (role, wanted) in [
        (Role::Building, shape.building),
        (Role::Opening, shape.opening),
    ] {
        if wanted {
            add(Text, &[role.name()]);
        }
    }
    add(Number, &coordinate_names(shape.degrees));
    add(Text, &["zone", "zone_subtype", "level_source"]);
    add(
        Number,
        &[
            "flood_level_m",
            "flood_level_sd_m",
            "ground_m",
            "threshold_m",
        ],
    );
    add(Text, &["vertical_datum"]);
    add(
        Number,
        &[
            "freeboard_m",
            "design_level_m",
            "depth_m",
            "protection_height_m",
            "force_n_per_m",
        ],
    );
    add(
        Text,
        &["verdict", "reasons", "cautions", "threshold_source"],
    );
    add(Number, &["chance_at_sill"]);
    if shape.sill {
        add(Number, &["sill_m"]);
    }
    if shape.barrier {
        add(Number, &["width_m", "barrier_height_m"]);
        add(Whole, &["planks", "spans", "intermediate_posts"]);
    }
    columns
}

/// What the two columns of coordinates are called: as in the input, and of points by their
/// system.
#[must_use]
pub const fn coordinate_names(degrees: bool) -> [&'static str; 2] {
    if degrees {
        ["longitude", "latitude"]
    } else {
        ["x", "y"]
    }
}

/// Writes a row: `lead` is its start with id and coordinates.
pub(super) fn write(
    line: &mut Vec<u8>,
    lead: &[u8],
    assessment: &Assessment<'_>,
    columns: &Columns,
) {
    line.extend_from_slice(lead);
    if let Some(opening) = assessment.openings.first() {
        push_opening(line, assessment, opening, ResultShape::of(columns));
    }
}

/// Writes what is known of an opening, behind id and coordinates.
pub(crate) fn push_opening(
    line: &mut Vec<u8>,
    assessment: &Assessment<'_>,
    opening: &OpeningAssessment<'_>,
    shape: ResultShape,
) {
    let place = opening.place.as_deref().unwrap_or(&assessment.place);
    let zone = place.zone.as_ref().map(|here| here.worst);
    let level = place.flood_level.as_ref().map(|level| &level.decided);
    let design = place.design_level.as_ref();
    text(line, zone.map(|zone| zone.code.as_str()));
    text(line, zone.and_then(|zone| zone.subtype.as_deref()));
    code(line, level.map(|level| level.source.code()));
    height(line, level.map(|level| level.elevation));
    length(line, level.and_then(|level| level.sd));
    height(line, place.ground.elevation());
    height(line, assessment.threshold);
    datum(line, assessment);
    length(line, design.and_then(|design| design.freeboard));
    height(line, design.map(|design| design.elevation));
    length(line, opening.depth);
    length(line, opening.protection_height);
    let force = opening.at_design_level.as_ref();
    fixed(
        line,
        force.map(|load| in_newtons_per_metre(load.force)),
        NEWTONS,
    );
    code(line, Some(opening.verdict.word()));
    reasons(line, assessment, opening);
    cautions(line, &assessment.cautions, &opening.opening.id);
    let estimate = assessment.site.threshold.is_estimate();
    code(line, Some(if estimate { "above-ground" } else { "stated" }));
    fixed(line, chance_at_sill(opening), CHANCES);
    if shape.sill {
        height(line, opening.sill);
    }
    if shape.barrier {
        barrier(line, opening);
    }
    line.pop();
    line.push(b'\n');
}

/// The yearly chance of water at the sill, where it is known.
pub(super) fn chance_at_sill(opening: &OpeningAssessment<'_>) -> Option<f64> {
    match opening.water_at_sill?.annual {
        ChanceAtLevel::Known { chance, .. } => Some(chance.probability()),
        ChanceAtLevel::Beyond(_) => None,
    }
}

fn barrier(line: &mut Vec<u8>, opening: &OpeningAssessment<'_>) {
    length(line, opening.opening.width);
    let design = opening.barrier.as_ref().map(|barrier| &barrier.design);
    let planks = design.and(opening.planks);
    length(line, planks.map(|planks| planks.height));
    whole(line, planks.map(|planks| planks.count));
    whole(line, design.map(BarrierDesign::spans));
    whole(
        line,
        design.map(|design| design.count(Upright::Intermediate)),
    );
}

fn reasons(line: &mut Vec<u8>, assessment: &Assessment<'_>, opening: &OpeningAssessment<'_>) {
    let mut sentences = String::with_capacity(REASONS_BYTES);
    for (position, reason) in opening.reasons.iter().enumerate() {
        if position > 0 {
            sentences.push_str("; ");
        }
        reason.push_text(&mut sentences, assessment.method.units);
    }
    csv_text(line, &sentences);
    line.push(b',');
}

/// Bytes that the reasons of an opening mostly do not exceed.
const REASONS_BYTES: usize = 400;

/// The codes of the cautions about an opening and the site, which `sillmark catalog cautions`
/// spells out.
fn cautions(line: &mut Vec<u8>, cautions: &[Caution], opening: &str) {
    let about = cautions.iter().filter(|caution| {
        let openings = caution.openings();
        openings.is_empty() || openings.iter().any(|name| name == opening)
    });
    for (position, code) in caution_codes(about).iter().enumerate() {
        if position > 0 {
            line.push(b' ');
        }
        line.extend_from_slice(code.as_bytes());
    }
    line.push(b',');
}

/// The codes of cautions, each once.
pub(crate) fn caution_codes<'a>(
    cautions: impl IntoIterator<Item = &'a Caution>,
) -> smallvec::SmallVec<[&'static str; 12]> {
    let mut codes = smallvec::SmallVec::new();
    for code in cautions.into_iter().map(Caution::code) {
        if !codes.contains(&code) {
            codes.push(code);
        }
    }
    codes
}

fn datum(line: &mut Vec<u8>, assessment: &Assessment<'_>) {
    // A datum's code has nothing to quote, and a vector takes everything.
    let _ = write!(line, "{},", assessment.site.threshold.datum());
}

/// A word of a map.
fn text(line: &mut Vec<u8>, text: Option<&str>) {
    csv_label(line, text.unwrap_or_default());
    line.push(b',');
}

/// One of our own words, which need no quotes.
fn code(line: &mut Vec<u8>, code: Option<&'static str>) {
    line.extend_from_slice(code.unwrap_or_default().as_bytes());
    line.push(b',');
}

fn height(line: &mut Vec<u8>, elevation: Option<Elevation>) {
    length(line, elevation.map(Elevation::height));
}

fn length(line: &mut Vec<u8>, length: Option<Length>) {
    fixed(line, length.map(|length| length.get::<meter>()), METRES);
}

fn fixed(line: &mut Vec<u8>, number: Option<f64>, decimals: usize) {
    if let Some(number) = number {
        push_fixed(line, number, decimals);
    }
    line.push(b',');
}

fn whole(line: &mut Vec<u8>, number: Option<u32>) {
    if let Some(number) = number {
        line.extend_from_slice(itoa::Buffer::new().format(number).as_bytes());
    }
    line.push(b',');
}
