//! An offset between two datums that the user states.

use crate::quantity::unit::{Length, foot, meter};
use crate::quantity::{VerticalDatum, parse_length, parse_signed_length};
use crate::statement::{Stated, StatementError, Table, Unreadable};

/// A shift between two datums with its source, such as a flood study's table of county
/// offsets.
///
/// It holds where the user says it holds: no place is looked at. Published offsets vary
/// within a county (Lewis County, Washington: +3.3 ft at Vader to +3.7 ft at Ashford), so
/// that it is an estimate where a grid is a measurement; but a flood study that used one has
/// its levels right only with that one.
#[derive(Clone, Debug, PartialEq)]
pub struct StatedOffset {
    /// Datum that the offset starts from.
    pub from: VerticalDatum,
    /// Datum that it leads to.
    pub to: VerticalDatum,
    /// Height on `to` less height on `from`.
    pub shift: Length,
    /// Where it was published.
    pub source: String,
    /// Standard deviation, where the user states one.
    pub standard_deviation: Option<Length>,
}

/// The greatest offset between two vertical datums of the EPSG Dataset: 156.68 m, Vienna
/// height to GHA height (EPSG 9371). A larger one is a slip of the unit.
const LARGEST_METRES: f64 = 156.68;

/// How far an offset that holds for a whole county strays within it: 3.3 ft to 3.7 ft in
/// Lewis County, Washington (maps.lewiscountywa.gov).
const SPREAD_WITHIN_A_COUNTY_FEET: f64 = 0.4;

const ACCEPTED: &str = "two datums and the length to add, such as \"NGVD29 -> NAVD88 = -1.1 ft\"";

impl StatedOffset {
    /// Reads `NGVD29 -> NAVD88 = -1.1 ft`: height on NAVD88 = height on NGVD29 − 1.1 ft.
    ///
    /// # Errors
    /// [`StatementError`] with the place of what is not understood.
    ///
    /// ```
    /// use sillmark::site::StatedOffset;
    /// use sillmark::statement::{Place, Stated};
    /// use sillmark::quantity::{VerticalDatum, unit::foot};
    ///
    /// let option = |text| Stated::new("offset", text, Place::Option("--datum-offset".into()));
    /// let offset = StatedOffset::new(
    ///     &option("NGVD29 -> NAVD88 = +2.75 ft"),
    ///     &option("Redwood City memo, April 2008"),
    ///     None,
    /// )?;
    /// assert_eq!(offset.to, VerticalDatum::Navd88);
    /// assert_eq!(offset.shift.get::<foot>(), 2.75);
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn new(
        offset: &Stated<'_>,
        source: &Stated<'_>,
        standard_deviation: Option<&Stated<'_>>,
    ) -> Result<Self, StatementError> {
        let (from, to, shift) = offset.read(parse)?;
        Ok(Self {
            from,
            to,
            shift,
            source: source.name()?,
            standard_deviation: standard_deviation
                .map(|stated| stated.read(parse_length))
                .transpose()?,
        })
    }

    /// Reads one `[[datum_offset]]`: `offset`, `source`, and `standard_deviation` where it is
    /// known.
    ///
    /// # Errors
    /// As [`new`](Self::new); a missing source is an error too.
    pub fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&["offset", "source", "standard_deviation"])?;
        Self::new(
            &table.required("offset", ACCEPTED)?,
            &table.required("source", "where the offset was published")?,
            table.optional("standard_deviation")?.as_ref(),
        )
    }

    /// Reads every `[[datum_offset]]` of a document; none where there is none.
    ///
    /// # Errors
    /// As [`read`](Self::read).
    ///
    /// ```
    /// use sillmark::{site::StatedOffset, statement::Document};
    /// let text = r#"
    /// [[datum_offset]]
    /// offset = "NGVD29 -> NAVD88 = 2.75 ft"
    /// source = "Redwood City memo, April 2008"
    /// "#;
    /// let document = Document::parse("site.toml", text)?;
    /// assert_eq!(StatedOffset::read_all(&document.root())?.len(), 1);
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn read_all(root: &Table<'_, '_>) -> Result<Vec<Self>, StatementError> {
        root.tables("datum_offset")?
            .iter()
            .map(Self::read)
            .collect()
    }

    /// The shift between two datums in the direction asked for; `None` where the offset is
    /// between others.
    #[must_use]
    pub fn between(&self, from: VerticalDatum, to: VerticalDatum) -> Option<Length> {
        if (self.from, self.to) == (from, to) {
            Some(self.shift)
        } else if (self.from, self.to) == (to, from) {
            Some(-self.shift)
        } else {
            None
        }
    }

    /// The stated standard deviation; for NGVD29 and NAVD88, where none is stated, that of a
    /// uniform spread over what an offset strays within one county; else none.
    #[must_use]
    pub fn uncertainty(&self) -> Option<Length> {
        let datums = [self.from, self.to];
        let us = datums.contains(&VerticalDatum::Ngvd29) && datums.contains(&VerticalDatum::Navd88);
        let spread = SPREAD_WITHIN_A_COUNTY_FEET / 12_f64.sqrt();
        self.standard_deviation
            .or_else(|| us.then(|| Length::new::<foot>(spread)))
    }
}

fn parse(text: &str) -> Result<(VerticalDatum, VerticalDatum, Length), Unreadable> {
    let refuse = |problem: String| Unreadable {
        problem,
        accepted: ACCEPTED.to_owned(),
    };
    let plain = text.replace('\u{2192}', "->").replace('\u{2212}', "-");
    let (datums, shift) = plain
        .split_once('=')
        .ok_or_else(|| refuse("it has no \"=\"".to_owned()))?;
    let (from, to) = datums
        .split_once("->")
        .ok_or_else(|| refuse("it has no \"->\" between two datums".to_owned()))?;
    let datum = |text: &str| {
        let text = text.trim();
        text.parse::<VerticalDatum>().map_err(|_| Unreadable {
            problem: format!("{text:?} is not a known vertical datum"),
            accepted: VerticalDatum::ACCEPTED.to_owned(),
        })
    };
    let (from, to) = (datum(from)?, datum(to)?);
    if from == to {
        return Err(refuse(format!("it leads from {from} to itself")));
    }
    let shift = parse_signed_length(shift.trim())
        .map_err(|error| refuse(format!("{:?}: {}", error.text(), error.problem())))?;
    if shift.get::<meter>().abs() > LARGEST_METRES {
        return Err(refuse(format!(
            "no two datums lie more than {LARGEST_METRES} m apart"
        )));
    }
    Ok((from, to, shift))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::statement::{Document, Place};

    fn offset(text: &str) -> Result<StatedOffset, String> {
        let place = Place::Option("--datum-offset".into());
        let stated = Stated::new("offset", text, place.clone());
        let source = Stated::new("source", "a study", place);
        StatedOffset::new(&stated, &source, None).map_err(|error| error.to_string())
    }

    #[test]
    fn it_is_applied_both_ways() {
        use VerticalDatum::{Navd88, Ngvd29, Odn};
        let offset = offset("NGVD 29 \u{2192} NAVD88 = \u{2212}1.1 ft").unwrap();
        assert_eq!(
            offset.between(Ngvd29, Navd88),
            Some(Length::new::<foot>(-1.1))
        );
        assert_eq!(
            offset.between(Navd88, Ngvd29),
            Some(Length::new::<foot>(1.1))
        );
        assert_eq!(offset.between(Ngvd29, Odn), None);
    }

    #[test]
    fn what_is_not_understood_is_quoted() {
        for (text, part) in [
            ("NGVD29 -> NAVD88 -1.1 ft", "it has no \"=\""),
            ("NGVD29 = -1.1 ft", "\"->\" between two datums"),
            (
                "NGVD30 -> NAVD88 = 1 ft",
                "\"NGVD30\" is not a known vertical datum",
            ),
            ("NGVD29 -> NAVD88 = 1", "it has no unit"),
            ("NGVD29 -> NAVD 88 = 900 ft", "156.68 m apart"),
            ("EPSG:5702 -> NGVD29 = 1 ft", "from NGVD29 to itself"),
        ] {
            let error = offset(text).unwrap_err();
            assert!(error.contains(part), "{error}");
            assert!(
                error.starts_with(&format!("--datum-offset: offset {text:?}: ")),
                "{error}"
            );
        }
    }

    #[test]
    fn a_table_without_a_source_is_refused_at_its_line() {
        let text = "name = \"x\"\n\n[[datum_offset]]\noffset = \"MSL -> NAVD88 = 0.3 ft\"\n";
        let document = Document::parse("site.toml", text).unwrap();
        assert_eq!(
            StatedOffset::read_all(&document.root())
                .unwrap_err()
                .to_string(),
            "site.toml, line 3: datum_offset.source: it is missing; accepted: where the offset was published"
        );
    }

    #[test]
    fn a_county_s_offset_is_uncertain_by_what_it_strays() {
        let feet = |length: Option<Length>| length.map(|length| length.get::<foot>());
        let county = offset("NGVD29 -> NAVD88 = -1.1 ft").unwrap();
        assert!((feet(county.uncertainty()).unwrap() - 0.115).abs() < 5e-4);
        assert_eq!(
            offset("MLLW -> NAVD88 = -2 ft").unwrap().uncertainty(),
            None
        );
    }
}
