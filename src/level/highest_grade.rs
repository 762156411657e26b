//! The highest ground against the wall, with where it was read and how well.

use crate::quantity::{Elevation, Length, UnitSystem};
use crate::terrain::Grade;

/// The highest adjacent grade that a depth is counted from.
#[derive(Clone, Debug, PartialEq)]
pub struct HighestGrade {
    /// The ground.
    pub elevation: Elevation,
    /// Its standard deviation, where one is known.
    pub sd: Option<Length>,
    /// How it was read, in words: `surveyed highest adjacent grade`.
    pub how: String,
    /// Where it stands: the site file, the raster.
    pub reference: String,
    /// Points that had no ground: the highest may be among them.
    pub without_value: usize,
}

/// Which ground of the terrain counts as adjacent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GradeReach {
    /// That along the outline of the building.
    Outline,
    /// That within a radius of its place, where no outline is stated.
    Radius(Length),
}

impl HighestGrade {
    /// As surveyed and stated; `sd` is that of the survey.
    #[must_use]
    pub fn surveyed(elevation: Elevation, sd: Option<Length>) -> Self {
        Self {
            elevation,
            sd,
            how: "surveyed highest adjacent grade".to_owned(),
            reference: "site file".to_owned(),
            without_value: 0,
        }
    }

    /// As read from a terrain model: an estimate, because grade is measured against the wall.
    /// `sd` is that of the terrain at a point.
    #[must_use]
    pub fn of_terrain(
        grade: &Grade,
        reach: GradeReach,
        sd: Option<Length>,
        units: UnitSystem,
    ) -> Self {
        let place = match reach {
            GradeReach::Outline => "along the building's outline".to_owned(),
            GradeReach::Radius(radius) => format!("within {}", units.distance(radius)),
        };
        let voids = match grade.without_value {
            0 => String::new(),
            count => format!(" ({count} of them without a value)"),
        };
        Self {
            elevation: grade.highest,
            sd,
            how: format!(
                "highest adjacent grade estimated as the highest of {} points of the terrain {place}{voids}",
                grade.samples
            ),
            reference: grade.source.to_string(),
            without_value: grade.without_value,
        }
    }
}
