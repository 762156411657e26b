//! How well things are measured: the catalogue of standard deviations.

use crate::quantity::{Length, parse_length};
use crate::site::{GivenDeviation, GivenValue};
use crate::statement::{Choice, Citation, Confidence, Document, StatementError, Table};

const UNCERTAINTY: &str = include_str!("../../data/uncertainty.toml");

/// What a deviation is the deviation of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measured {
    /// The ground in a terrain model.
    Terrain,
    /// The threshold or a sill.
    Sill,
    /// A flood level.
    Level,
    /// A depth over the ground.
    Depth,
}

impl Choice for Measured {
    const CHOICES: &'static [(&'static str, Self)] = &[
        ("terrain", Self::Terrain),
        ("sill", Self::Sill),
        ("level", Self::Level),
        ("depth", Self::Depth),
    ];
}

/// The standard deviation of one way of measuring, with its source.
#[derive(Clone, Debug, PartialEq)]
pub struct Deviation {
    /// Name in files and options.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// What it is the deviation of.
    pub of: Measured,
    /// The standard deviation.
    pub sd: Length,
    /// What it covers, and what it does not.
    pub covers: String,
    /// Where it stands, and how sure that is.
    pub citation: Citation,
}

/// All rows of `data/uncertainty.toml`, in its order.
///
/// # Errors
/// [`StatementError`] if our own data file is broken; a test reads it.
///
/// ```
/// use sillmark::quantity::unit::meter;
/// let known = sillmark::risk::deviations()?;
/// let lidar = known.iter().find(|deviation| deviation.id == "QL2").unwrap();
/// assert_eq!(lidar.sd.get::<meter>(), 0.10);
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
pub fn deviations() -> Result<Vec<Deviation>, StatementError> {
    let document = Document::parse("data/uncertainty.toml", UNCERTAINTY)?;
    document.root().allow(&["deviation"])?;
    let tables = document.root().tables("deviation")?;
    tables.iter().map(Deviation::read).collect()
}

impl Deviation {
    fn read(table: &Table<'_, '_>) -> Result<Self, StatementError> {
        table.allow(&[
            "id",
            "name",
            "of",
            "standard_deviation",
            "within",
            "covers",
            "source",
            "confidence",
        ])?;
        let sd = match table.optional("within")? {
            // Equally likely anywhere within ± a: standard deviation a / √3.
            Some(within) => within.read(parse_length)? / 3.0_f64.sqrt(),
            None => table
                .required("standard_deviation", "a length, or `within` one")?
                .read(parse_length)?,
        };
        Ok(Self {
            id: table.required("id", "a short name")?.name()?,
            name: table.required("name", "a name for people")?.name()?,
            of: table.required("of", "what it is of")?.choose()?,
            sd,
            covers: table.required("covers", "what it covers")?.name()?,
            citation: Citation::read(table)?,
        })
    }

    /// The row of the catalogue with an id; upper and lower case do not matter.
    ///
    /// # Errors
    /// As [`deviations`].
    pub fn known(id: &str) -> Result<Option<Self>, StatementError> {
        let id = id.trim();
        let mut known = deviations()?.into_iter();
        Ok(known.find(|deviation| deviation.id.eq_ignore_ascii_case(id)))
    }

    /// The row of the catalogue that our own code counts on.
    ///
    /// # Errors
    /// As [`deviations`]; a row that is missing is an error too.
    pub fn shipped(id: &str) -> Result<Self, StatementError> {
        if let Some(known) = Self::known(id)? {
            return Ok(known);
        }
        let document = Document::parse("data/uncertainty.toml", UNCERTAINTY)?;
        Err(document.root().missing("deviation", id))
    }

    /// What the user gave for something measured: a length of their own, or a row of the
    /// catalogue by its id.
    ///
    /// # Errors
    /// [`StatementError`] at the place where it was written, listing the ids that fit.
    ///
    /// ```
    /// use sillmark::risk::{Deviation, Measured};
    /// use sillmark::site::GivenDeviation;
    /// use sillmark::statement::{Place, Stated};
    /// let given = |text| GivenDeviation::read(&Stated::new("terrain", text, Place::Option("option --dem-sd".into())));
    /// let own = Deviation::of_given(&given("0.15 m")?, Measured::Terrain)?;
    /// assert_eq!(own.citation.to_string(), "stated in option --dem-sd");
    /// let error = Deviation::of_given(&given("QL7")?, Measured::Terrain).unwrap_err();
    /// assert!(error.to_string().starts_with("option --dem-sd: terrain \"QL7\": "), "{error}");
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn of_given(given: &GivenDeviation, of: Measured) -> Result<Self, StatementError> {
        let id = match &given.value {
            GivenValue::Length(sd) => return Ok(Self::stated(given, *sd, of)),
            GivenValue::Named(id) => id,
        };
        if let Some(known) = Self::known(id)?.filter(|known| known.of == of) {
            return Ok(known);
        }
        let fitting = deviations()?.into_iter().filter(|known| known.of == of);
        let ids: Vec<_> = fitting.map(|known| known.id).collect();
        Err(given.stated.refuse(
            format!(
                "it is neither a length nor a known uncertainty of the {}",
                of.word()
            ),
            format!(
                "a standard deviation such as \"0.15 m\", or one of: {}",
                ids.join(", ")
            ),
        ))
    }

    fn stated(given: &GivenDeviation, sd: Length, of: Measured) -> Self {
        Self {
            id: "stated".to_owned(),
            name: of.word().to_owned(),
            of,
            sd,
            covers: "what the user means it to cover".to_owned(),
            citation: Citation {
                source: format!("stated in {}", given.stated.place()),
                confidence: Confidence::Stated,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_has_a_deviation_and_an_id_of_its_own() {
        let known = deviations().unwrap();
        for (position, deviation) in known.iter().enumerate() {
            assert!(
                deviation.sd.value > 0.0 && deviation.sd.value < 5.0,
                "{}",
                deviation.id
            );
            let others = &known[..position];
            let taken = others
                .iter()
                .any(|other| other.id.eq_ignore_ascii_case(&deviation.id));
            assert!(!taken, "{}", deviation.id);
        }
        for (_, of) in Measured::CHOICES {
            assert!(known.iter().any(|deviation| deviation.of == *of), "{of:?}");
        }
    }
}
