//! Where in the input each role stands.

use super::Role;
use crate::quantity::{LengthUnit, VerticalDatum};
use crate::statement::{Place, Stated, StatementError};

/// Columns that are called otherwise than their roles: `--map ours=theirs`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Mapping(Vec<(Role, String)>);

/// What holds for every row, where the table has no column for it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StatedForAll {
    /// Unit of thresholds.
    pub unit: Option<LengthUnit>,
    /// Vertical datum of thresholds.
    pub datum: Option<VerticalDatum>,
}

/// Where the coordinates of a row stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coordinates {
    /// In two columns, east first.
    Columns(usize, usize),
    /// In the point of the feature.
    Point,
}

/// The columns of a table by their roles.
#[derive(Clone, Debug, PartialEq)]
pub struct Columns {
    at: [Option<usize>; Role::ALL.len()],
    /// Where the coordinates stand.
    pub coordinates: Coordinates,
    /// Whether the coordinates are longitude and latitude, and not x and y. For points it is
    /// their system that decides.
    pub degrees: bool,
    /// What holds for every row.
    pub for_all: StatedForAll,
}

impl Mapping {
    /// Reads the texts of `--map`.
    ///
    /// # Errors
    /// [`StatementError`] for a text without `=`, a role that does not exist or stands twice.
    ///
    /// ```
    /// use sillmark::portfolio::Mapping;
    /// assert!(Mapping::read(&["threshold=ffe".to_owned()]).is_ok());
    /// let error = Mapping::read(&["ffe=threshold".to_owned()]).unwrap_err();
    /// assert!(error.to_string().contains("\"ffe\" is not a column that is looked for"));
    /// ```
    pub fn read(texts: &[String]) -> Result<Self, StatementError> {
        let mut pairs: Vec<(Role, String)> = Vec::with_capacity(texts.len());
        for text in texts {
            let stated = Stated::new("map", text.as_str(), Place::Option("option --map".into()));
            let names = || Role::ALL.map(Role::name).join(", ");
            let (ours, theirs) = text.split_once('=').ok_or_else(|| {
                stated.refuse(
                    "it has no = between our column and yours",
                    "OURS=THEIRS, such as threshold=first_floor",
                )
            })?;
            let (ours, theirs) = (ours.trim(), theirs.trim());
            let role = Role::from_name(ours).ok_or_else(|| {
                let problem = format!("{ours:?} is not a column that is looked for");
                stated.refuse(problem, format!("one of {} before the =", names()))
            })?;
            if theirs.is_empty() {
                return Err(stated.refuse("no column stands behind the =", "a column of yours"));
            }
            if pairs.iter().any(|(known, _)| *known == role) {
                let problem = format!("{ours} is mapped twice");
                return Err(stated.refuse(problem, "one column for each role"));
            }
            pairs.push((role, theirs.to_owned()));
        }
        Ok(Self(pairs))
    }

    fn of(&self, role: Role) -> Option<&str> {
        let mut pairs = self.0.iter();
        pairs.find_map(|(known, theirs)| (*known == role).then_some(theirs.as_str()))
    }
}

impl Columns {
    /// Finds the columns; `table` is the name that messages use, `has_points` whether rows
    /// have a point geometry.
    ///
    /// # Errors
    /// [`StatementError`] naming what is missing and the columns that exist.
    pub fn find(
        table: &str,
        present: &[String],
        mapping: &Mapping,
        has_points: bool,
        for_all: StatedForAll,
    ) -> Result<Self, StatementError> {
        let finder = Finder {
            table,
            present,
            mapping,
        };
        let missing = |what: &str| Err(finder.missing(what));
        if finder.position(Role::Id)?.is_none() {
            return missing("id");
        }
        let columns = Self {
            for_all,
            ..Self::find_places(table, present, mapping, has_points)?
        };
        let has = |role: Role| columns.at(role).is_some();
        let measured = has(Role::Threshold);
        if !measured && !has(Role::ThresholdAboveGround) {
            return missing("threshold (or threshold_above_ground, an estimate)");
        }
        if !has(Role::ThresholdUnit) && for_all.unit.is_none() {
            return missing("threshold_unit (or option --threshold-unit)");
        }
        if measured && !has(Role::VerticalDatum) && for_all.datum.is_none() {
            return missing("vertical_datum (or option --threshold-datum)");
        }
        Ok(columns)
    }

    /// As [`find`](Self::find), of a table that is asked for nothing but where its rows stand.
    ///
    /// # Errors
    /// As [`find`](Self::find).
    pub fn find_places(
        table: &str,
        present: &[String],
        mapping: &Mapping,
        has_points: bool,
    ) -> Result<Self, StatementError> {
        let finder = Finder {
            table,
            present,
            mapping,
        };
        let mut at = [None; Role::ALL.len()];
        for role in Role::ALL {
            if let Some(place) = at.get_mut(role.index()) {
                *place = finder.position(role)?;
            }
        }
        let has = |role: Role| at.get(role.index()).copied().flatten();
        let degrees = has(Role::Longitude).zip(has(Role::Latitude));
        let plane = has(Role::X).zip(has(Role::Y));
        let coordinates = match (degrees.or(plane), has_points) {
            (Some((east, north)), _) => Coordinates::Columns(east, north),
            (None, true) => Coordinates::Point,
            (None, false) => {
                return Err(finder.missing("longitude and latitude (or x and y with --crs)"));
            }
        };
        Ok(Self {
            at,
            coordinates,
            degrees: degrees.is_some() || (plane.is_none() && has_points),
            for_all: StatedForAll::default(),
        })
    }

    /// The position of a role's column, from 0.
    #[must_use]
    pub fn at(&self, role: Role) -> Option<usize> {
        self.at.get(role.index()).copied().flatten()
    }

    /// Takes columns x and y in place of longitude and latitude, where there are such.
    pub fn prefer_plane(&mut self) -> bool {
        let plane = self.at(Role::X).zip(self.at(Role::Y));
        if let Some((x, y)) = plane {
            self.coordinates = Coordinates::Columns(x, y);
            self.degrees = false;
        }
        plane.is_some()
    }

    /// Whether the rows tell of openings, so that barriers can be designed.
    #[must_use]
    pub fn has_widths(&self) -> bool {
        self.at(Role::Width).is_some()
    }
}

struct Finder<'a> {
    table: &'a str,
    present: &'a [String],
    mapping: &'a Mapping,
}

impl Finder<'_> {
    fn position(&self, role: Role) -> Result<Option<usize>, StatementError> {
        let mapped = self.mapping.of(role);
        let name = mapped.unwrap_or(role.name());
        let exact = self.present.iter().position(|column| column == name);
        let mut same = self
            .present
            .iter()
            .enumerate()
            .filter(|(_, column)| column.eq_ignore_ascii_case(name));
        let found = exact.or_else(|| match (same.next(), same.next()) {
            (Some((position, _)), None) => Some(position),
            _ => None,
        });
        if found.is_none() && mapped.is_some() {
            return Err(self.missing(name));
        }
        Ok(found)
    }

    fn missing(&self, what: &str) -> StatementError {
        StatementError {
            place: Place::Option(self.table.into()),
            field: "columns".to_owned(),
            value: None,
            problem: format!("there is no column {what}"),
            accepted: format!(
                "the columns that exist are {}; name one with --map OURS=THEIRS",
                self.present.join(", ")
            ),
        }
    }
}
