//! Carrying and fitting: how heavy the pieces are, how many people lift them.

use crate::quantity::unit::{Length, Mass, kilogram};
use crate::quantity::{Impossible, not_negative, positive};
use crate::statement::{Citation, Confidence};

/// Pieces of one kind that are carried to the opening.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is, for people: "plank 1.2 m".
    pub name: String,
    /// Its length.
    pub length: Length,
    /// Mass of one of them, where it is stated.
    pub mass: Option<Mass>,
    /// How many.
    pub count: u32,
}

/// What one person may lift.
#[derive(Clone, Debug, PartialEq)]
pub struct LiftLimit {
    /// Greatest mass for one person.
    pub mass: Mass,
    /// Who says so.
    pub citation: Citation,
}

impl LiftLimit {
    /// The load constant of the revised NIOSH lifting equation, 23 kg (about 51 lb): the
    /// most under ideal conditions (close to the body, waist high, no twisting, good grips,
    /// now and then), safe for 75 % of women and 90 % of men. Long planks, wet hands and
    /// steps are not ideal: less is safe then, and the user states it.
    ///
    /// ```
    /// use sillmark::barrier::LiftLimit;
    /// use sillmark::quantity::unit::kilogram;
    /// assert_eq!(LiftLimit::niosh_load_constant().mass.get::<kilogram>(), 23.0);
    /// ```
    #[must_use]
    pub fn niosh_load_constant() -> Self {
        Self {
            mass: Mass::new::<kilogram>(23.0),
            citation: Citation {
                source: "revised NIOSH lifting equation, load constant 23 kg (about 51 lb) under ideal conditions, as given at ccohs.ca/oshanswers/ergonomics/niosh/assessing.html".into(),
                confidence: Confidence::Seen,
            },
        }
    }
}

/// How the pieces are carried.
#[derive(Clone, Debug, PartialEq)]
pub struct Handling {
    /// How many pieces.
    pub pieces: u64,
    /// Mass of all pieces whose mass is stated.
    pub total_mass: Mass,
    /// The heaviest piece whose mass is stated.
    pub heaviest: Option<Piece>,
    /// How many people lift it, each no more than the limit.
    pub people_for_heaviest: Option<u64>,
    /// The limit for one person.
    pub limit: LiftLimit,
    /// Names of the pieces whose mass is not stated: masses and people are "at least".
    pub mass_not_stated: Vec<String>,
}

/// A piece that weighs the limit but for rounding needs no further person.
const ROUNDING: f64 = 1e-9;

/// The masses of the pieces, and how many people lift the heaviest one. The mass is shared
/// evenly between the people. Kinds of which there are none do not count.
///
/// # Errors
/// [`Impossible`] for a length, mass or limit that cannot be.
///
/// ```
/// use sillmark::barrier::{LiftLimit, Piece, handling};
/// use sillmark::quantity::unit::{Length, Mass, kilogram, meter};
/// let planks = Piece {
///     name: "plank 2.4 m".into(),
///     length: Length::new::<meter>(2.4),
///     mass: Some(Mass::new::<kilogram>(24.0)),
///     count: 6,
/// };
/// let found = handling(&[planks], &LiftLimit::niosh_load_constant())?;
/// assert_eq!(found.people_for_heaviest, Some(2));
/// assert_eq!(found.total_mass.get::<kilogram>(), 144.0);
/// # Ok::<(), sillmark::quantity::Impossible>(())
/// ```
pub fn handling(pieces: &[Piece], limit: &LiftLimit) -> Result<Handling, Impossible> {
    positive("limit for one person", limit.mass.value, "kg")?;
    for piece in pieces {
        not_negative("length of a piece", piece.length.value, "m")?;
        if let Some(mass) = piece.mass {
            not_negative("mass of a piece", mass.value, "kg")?;
        }
    }
    let there = || pieces.iter().filter(|piece| piece.count > 0);
    let weighed = there().filter_map(|piece| Some((piece, piece.mass?)));
    let heaviest = weighed
        .clone()
        .max_by(|one, other| one.1.value.total_cmp(&other.1.value));
    let total_mass: Mass = weighed
        .map(|(piece, mass)| mass * f64::from(piece.count))
        .sum();
    not_negative("mass of all pieces", total_mass.value, "kg")?;
    Ok(Handling {
        pieces: there().map(|piece| u64::from(piece.count)).sum(),
        total_mass,
        people_for_heaviest: heaviest.map(|(_, mass)| people_for(mass, limit)),
        heaviest: heaviest.map(|(piece, _)| piece.clone()),
        limit: limit.clone(),
        mass_not_stated: there()
            .filter(|piece| piece.mass.is_none())
            .map(|piece| piece.name.clone())
            .collect(),
    })
}

fn people_for(mass: Mass, limit: &LiftLimit) -> u64 {
    let share = (mass / limit.mass).value;
    // Both are finite and not negative; a cast stops at the greatest number.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let people = (share * (1.0 - ROUNDING)).ceil() as u64;
    people.max(1)
}
