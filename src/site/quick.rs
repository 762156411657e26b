//! A site stated in a few options of the command line.

use std::sync::Arc;

use super::file::{threshold_elevation, width};
use super::{Conditions, Location, Opening, Site, StatedUncertainty, SurveyedGrade, Threshold};
use crate::quantity::UnitSystem;
use crate::statement::{Place, Stated, StatementError};

/// The texts of `--at`, `--threshold`, `--opening` and `--occupancy`.
#[derive(Clone, Copy, Debug)]
pub struct QuickForm<'text> {
    /// `LON,LAT`.
    pub at: &'text str,
    /// A height with unit and datum.
    pub threshold: &'text str,
    /// `ID=WIDTH`, one for each opening.
    pub openings: &'text [String],
    /// The use of the building.
    pub occupancy: Option<&'text str>,
}

impl QuickForm<'_> {
    /// Reads the texts.
    ///
    /// # Errors
    /// [`StatementError`] naming the option, its value and what would be accepted.
    ///
    /// ```
    /// use sillmark::site::QuickForm;
    /// let openings = ["front door=36 in".to_owned()];
    /// let form = QuickForm { at: "-74.0335,40.74", threshold: "8.1 ft NAVD88", openings: &openings, occupancy: None };
    /// assert_eq!(form.site()?.location.latitude(), 40.74);
    /// # Ok::<(), sillmark::statement::StatementError>(())
    /// ```
    pub fn site(self) -> Result<Site, StatementError> {
        let threshold = option("--threshold", "threshold", self.threshold);
        let mut openings: Vec<Opening> = Vec::new();
        for text in self.openings {
            let opening = opening(text)?;
            if openings.iter().any(|other| other.id == opening.id) {
                let stated = option("--opening", "opening", text);
                return Err(stated.refuse(
                    "another opening has the same id",
                    "a different id for each opening",
                ));
            }
            openings.push(opening);
        }
        if openings.is_empty() {
            return Err(StatementError {
                place: Place::Option("option --opening".into()),
                field: "opening".to_owned(),
                value: None,
                problem: "it is missing".to_owned(),
                accepted: OPENING.to_owned(),
            });
        }
        Ok(Site {
            name: format!("Site at {}", self.at.trim()),
            location: place_of_option(self.at)?,
            threshold: Threshold::Stated(threshold_elevation(&threshold)?),
            units: UnitSystem::of_text(threshold.text()),
            threshold_place: threshold.place().clone(),
            occupancy: self
                .occupancy
                .map(|text| option("--occupancy", "occupancy", text).choose())
                .transpose()?,
            footprint: None,
            grade: SurveyedGrade::default(),
            conditions: Conditions::default(),
            flood_levels: Vec::new(),
            uncertainty: StatedUncertainty::default(),
            datum_offsets: Vec::new(),
            rule: None,
            openings,
        })
    }
}

const OPENING: &str = "a name and a width, such as --opening \"front door=36 in\"";

fn option<'text>(name: &str, field: &'static str, text: &'text str) -> Stated<'text> {
    Stated::new(
        field,
        text,
        Place::Option(Arc::from(format!("option {name}"))),
    )
}

/// The place of `--at`.
///
/// # Errors
/// [`StatementError`] naming the option, its value and what would be accepted.
pub fn place_of_option(text: &str) -> Result<Location, StatementError> {
    let stated = option("--at", "location", text);
    let accepted = "longitude and latitude in degrees, such as --at -74.0335,40.7400";
    let numbers: Option<(f64, f64)> = text
        .split_once(',')
        .and_then(|(east, north)| Some((east.trim().parse().ok()?, north.trim().parse().ok()?)));
    let (longitude, latitude) = numbers
        .ok_or_else(|| stated.refuse("it is not two numbers with a comma between", accepted))?;
    Location::from_degrees(longitude, latitude)
        .map_err(|error| stated.refuse(error.to_string(), accepted))
}

fn opening(text: &str) -> Result<Opening, StatementError> {
    let stated = option("--opening", "opening", text);
    let (id, size) = text
        .rsplit_once('=')
        .ok_or_else(|| stated.refuse("it has no = between name and width", OPENING))?;
    let name = Stated::new("opening name", id, stated.place().clone());
    let size = Stated::new("opening width", size.trim(), stated.place().clone());
    Ok(Opening {
        width: Some(width(&size)?),
        ..Opening::named(name.name()?)
    })
}
