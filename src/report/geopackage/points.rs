//! The site and its openings, with the columns of a portfolio's result.

use super::Value;
use crate::assess::{Assessment, OpeningAssessment};
use crate::gis::{FieldKind, GisError, LayerDraft};
use crate::portfolio::{answer_columns, caution_codes, push_opening};
use crate::quantity::unit::meter;
use crate::quantity::{Elevation, Length};
use crate::report::csv::SHAPE;
use crate::site::Location;
use crate::statement::Choice;
use crate::table::ColumnKind;

/// What tells the site from its openings.
const KIND: &str = "kind";

/// A point with its attributes.
pub(super) struct Row {
    location: Location,
    values: Vec<(&'static str, Value)>,
    /// What stands in the columns of a portfolio's result from the zone on, as its line of CSV
    /// has it.
    told: Vec<(String, Value)>,
}

/// The attributes with their kinds.
pub(super) fn fields() -> Vec<(String, FieldKind)> {
    let columns = answer_columns(SHAPE).into_iter();
    let columns = columns.map(|column| (column.name, kind(column.kind)));
    std::iter::once((KIND.to_owned(), FieldKind::Text))
        .chain(columns)
        .collect()
}

const fn kind(kind: ColumnKind) -> FieldKind {
    match kind {
        ColumnKind::Text => FieldKind::Text,
        ColumnKind::Number => FieldKind::Number,
        ColumnKind::Whole => FieldKind::Whole,
    }
}

/// The site, then its openings in their order.
pub(super) fn rows(assessment: &Assessment<'_>) -> Vec<Row> {
    let openings = assessment.openings.iter();
    let openings = openings.map(|opening| of_opening(assessment, opening));
    std::iter::once(of_site(assessment))
        .chain(openings)
        .collect()
}

impl Row {
    fn at(location: Location, kind: &str, id: &str) -> Self {
        let text = |text: &str| Value::Text(text.to_owned());
        Self {
            location,
            values: vec![
                (KIND, text(kind)),
                ("id", text(id)),
                ("longitude", Value::Number(location.longitude())),
                ("latitude", Value::Number(location.latitude())),
            ],
            told: Vec::new(),
        }
    }

    pub(super) fn write(
        &self,
        draft: &mut LayerDraft<'_>,
        fields: &[(&str, FieldKind)],
    ) -> Result<(), GisError> {
        let own = self.values.iter().map(|(name, value)| (*name, value));
        let told = self.told.iter().map(|(name, value)| (name.as_str(), value));
        for (name, value) in own.chain(told) {
            if let Some(field) = fields.iter().position(|(field, _)| *field == name) {
                value.set(draft, field)?;
            }
        }
        draft.point(self.location.longitude(), self.location.latitude())?;
        draft.end_feature()
    }
}

/// What is known at the site, and the worst of its openings.
fn of_site(assessment: &Assessment<'_>) -> Row {
    let place = &assessment.place;
    let mut row = Row::at(place.location, "site", &assessment.site.name);
    let mut text = |name, text: Option<&str>| {
        let value = text.map(|text| (name, Value::Text(text.to_owned())));
        row.values.extend(value);
    };
    let zone = place.zone.as_ref().map(|here| here.worst);
    let level = place.flood_level.as_ref().map(|level| &level.decided);
    let design = place.design_level.as_ref();
    let cautions = caution_codes(&assessment.cautions);
    text("zone", zone.map(|zone| zone.code.as_str()));
    text(
        "zone_subtype",
        zone.and_then(|zone| zone.subtype.as_deref()),
    );
    text("level_source", level.map(|level| level.source.code()));
    let datum = assessment.site.threshold.datum().to_string();
    text("vertical_datum", Some(&datum));
    text("verdict", Some(assessment.verdict.word()));
    text("cautions", Some(&cautions.join(" ")));
    let mut metres = |name, length: Option<Length>| {
        let value = length.map(|length| (name, Value::Number(rounded(length))));
        row.values.extend(value);
    };
    metres("flood_level_m", level.map(|level| level.elevation.height()));
    metres("flood_level_sd_m", level.and_then(|level| level.sd));
    metres("ground_m", place.ground.elevation().map(Elevation::height));
    metres("threshold_m", assessment.threshold.map(Elevation::height));
    metres("freeboard_m", design.and_then(|design| design.freeboard));
    metres(
        "design_level_m",
        design.map(|design| design.elevation.height()),
    );
    row
}

/// To a tenth of a millimetre, as in the columns of a portfolio.
fn rounded(length: Length) -> f64 {
    (length.get::<meter>() * 1e4).round() / 1e4
}

/// An opening's line of a portfolio's result, taken apart again.
fn of_opening(assessment: &Assessment<'_>, opening: &OpeningAssessment<'_>) -> Row {
    let place = opening.place.as_deref().unwrap_or(&assessment.place);
    let mut row = Row::at(place.location, "opening", &assessment.site.name);
    let name = Value::Text(opening.opening.id.clone());
    row.values.push(("opening", name));
    let mut line = Vec::new();
    push_opening(&mut line, assessment, opening, SHAPE);
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(line.as_slice());
    let record = reader.records().next().and_then(Result::ok);
    let columns = answer_columns(SHAPE).into_iter();
    let columns = columns.skip_while(|column| column.name != "zone");
    for (column, text) in columns.zip(record.iter().flatten()) {
        let value = match column.kind {
            _ if text.is_empty() => None,
            ColumnKind::Text => Some(Value::Text(text.to_owned())),
            ColumnKind::Number => text.parse().ok().map(Value::Number),
            ColumnKind::Whole => text.parse().ok().map(Value::Whole),
        };
        row.told.extend(value.map(|value| (column.name, value)));
    }
    row
}
