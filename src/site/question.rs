//! A barrier without a building, stated in a few options of the command line.

use std::sync::Arc;

use super::file::{clear_height, width};
use super::{Conditions, Opening, Waves};
use crate::load::{SoilGroup, WaveLevel};
use crate::quantity::{Length, UnitSystem, parse_length, parse_signed_length, parse_velocity};
use crate::statement::{Choice, Place, Stated, StatementError};

/// One barrier for water that the user states.
#[derive(Clone, Debug, PartialEq)]
pub struct BarrierQuestion {
    /// The opening.
    pub opening: Opening,
    /// Clear width of the opening, or the length of the run.
    pub width: Length,
    /// Height over the sill that the barrier has to reach.
    pub height: Length,
    /// Depth of the water over the sill at the design level.
    pub depth: Length,
    /// Height of the sill over the ground before it, negative below; `None` where it is not
    /// stated.
    pub sill_above_ground: Option<Length>,
    /// What the depth is the depth of where waves break.
    pub wave_level: Option<WaveLevel>,
    /// Water, loads, anchors, the rooms behind and the people.
    pub conditions: Conditions,
    /// The units that the depth is written in.
    pub units: UnitSystem,
}

/// The texts of the options of `sillmark barrier`.
#[derive(Clone, Copy, Debug, Default)]
pub struct BarrierForm<'text> {
    /// `--width`: clear width of the opening.
    pub width: Option<&'text str>,
    /// `--run`: legs of a barrier that stands out from the wall, with commas between.
    pub run: Option<&'text str>,
    /// `--height`: what the barrier has to reach; the depth where it is not given.
    pub height: Option<&'text str>,
    /// `--depth`: depth of the water.
    pub depth: Option<&'text str>,
    /// `--opening-height`: clear height of the opening.
    pub opening_height: Option<&'text str>,
    /// `--reveal`: depth of the reveal.
    pub reveal: Option<&'text str>,
    /// `--face`: flat wall at each side.
    pub face: Option<&'text str>,
    /// `--mount`: `inside` or `outside`.
    pub mount: Option<&'text str>,
    /// `--brace`: `dry side` or `water side`.
    pub brace: Option<&'text str>,
    /// `--wall`: the wall around the opening.
    pub wall: Option<&'text str>,
    /// `--sill-above-ground`: negative below it.
    pub sill_above_ground: Option<&'text str>,
    /// `--soil`: soil against an opening below the ground.
    pub soil: Option<&'text str>,
    /// `--velocity`: speed of the water.
    pub velocity: Option<&'text str>,
    /// `--salinity`: `fresh` or `salt`.
    pub salinity: Option<&'text str>,
    /// `--waves`: `none`, `non-breaking` or `breaking`.
    pub waves: Option<&'text str>,
    /// `--wave-level`: what the depth is the depth of, `stillwater` or `crest`.
    pub wave_level: Option<&'text str>,
}

const DEPTH: &str = "the depth of water over the sill, such as --depth \"2 ft\"";
const WIDTH: &str = "the clear width, such as --width \"36 in\", or --run \"4 ft, 9 ft, 4 ft\"";
const LENGTH: &str = "a length with its unit, such as \"36 in\"";

/// A micrometre of water or barrier is none: no plank is put up for it.
const LEAST_METRES: f64 = 1e-6;

/// Higher than any barrier of planks was ever built, and than any sill lies over its ground
/// (common practice, no source).
const GREATEST_METRES: f64 = 30.0;

impl BarrierForm<'_> {
    /// Reads the texts; an option wins over what the conditions file says of the water.
    ///
    /// # Errors
    /// [`StatementError`] naming the option, its value and what would be accepted.
    pub fn question(self, conditions: Conditions) -> Result<BarrierQuestion, StatementError> {
        let depth = option("--depth", self.depth).ok_or_else(|| missing("--depth", DEPTH))?;
        let units = UnitSystem::of_text(depth.text());
        let depth = positive(&depth)?;
        let height = match option("--height", self.height) {
            Some(stated) => positive(&stated)?,
            None => depth,
        };
        let mut conditions = conditions;
        let water = &mut conditions.water;
        if let Some(stated) = option("--velocity", self.velocity) {
            water.velocity = Some(stated.read(parse_velocity)?);
        }
        water.salinity = choice("--salinity", self.salinity)?.or(water.salinity);
        water.waves = choice::<Waves>("--waves", self.waves)?.or(water.waves);
        let waves = water.waves;
        let width = self.width()?;
        Ok(BarrierQuestion {
            opening: self.opening(width)?,
            width,
            height,
            depth,
            sill_above_ground: self.sill_above_ground()?,
            wave_level: self.wave_level(waves)?,
            conditions,
            units,
        })
    }

    fn sill_above_ground(&self) -> Result<Option<Length>, StatementError> {
        let Some(stated) = option("--sill-above-ground", self.sill_above_ground) else {
            let Some(soil) = option("--soil", self.soil) else {
                return Ok(None);
            };
            return Err(soil.refuse(
                "nobody says how far the sill lies below the ground, so that it presses nowhere",
                "--soil with --sill-above-ground, such as --sill-above-ground \"-2 ft\"",
            ));
        };
        let length = stated.read(parse_signed_length)?;
        if length.value.abs() > GREATEST_METRES {
            return Err(stated.refuse(
                "no sill lies farther than 30 m (98 ft) from the ground before it",
                "a length with its unit, negative for below, such as \"-2 in\"",
            ));
        }
        Ok(Some(length))
    }

    /// Only breaking waves ask for it.
    fn wave_level(&self, waves: Option<Waves>) -> Result<Option<WaveLevel>, StatementError> {
        let Some(stated) = option("--wave-level", self.wave_level) else {
            return Ok(None);
        };
        let level = stated.choose()?;
        if waves == Some(Waves::Breaking) {
            return Ok(Some(level));
        }
        Err(stated.refuse(
            "no breaking waves are stated that it could be the level of",
            "--wave-level with --waves breaking",
        ))
    }

    fn width(&self) -> Result<Length, StatementError> {
        let run = self.legs()?;
        match (option("--width", self.width), run.is_empty()) {
            (Some(stated), _) => width(&stated),
            (None, false) => Ok(run.into_iter().sum()),
            (None, true) => Err(missing("--width", WIDTH)),
        }
    }

    fn opening(&self, width: Length) -> Result<Opening, StatementError> {
        let run = self.legs()?;
        let length = |name, text| {
            option(name, text)
                .map(|stated| stated.read(parse_length))
                .transpose()
        };
        Ok(Opening {
            width: Some(width),
            height: option("--opening-height", self.opening_height)
                .map(|stated| clear_height(&stated))
                .transpose()?,
            run,
            reveal: length("--reveal", self.reveal)?,
            face: length("--face", self.face)?,
            mount: choice("--mount", self.mount)?,
            brace: choice("--brace", self.brace)?,
            soil: choice::<SoilGroup>("--soil", self.soil)?,
            wall: choice("--wall", self.wall)?,
            ..Opening::named("barrier".to_owned())
        })
    }

    fn legs(&self) -> Result<Vec<Length>, StatementError> {
        let Some(stated) = option("--run", self.run) else {
            return Ok(Vec::new());
        };
        let legs: Vec<&str> = stated.text().split(',').map(str::trim).collect();
        if legs.len() < 2 {
            return Err(stated.refuse(
                "one leg is no run",
                "two legs or more with right angles between, such as \"4 ft, 9 ft, 4 ft\"",
            ));
        }
        legs.into_iter()
            .map(|leg| width(&Stated::new("run", leg, stated.place().clone())))
            .collect()
    }
}

fn option<'text>(name: &str, text: Option<&'text str>) -> Option<Stated<'text>> {
    let field = name.trim_start_matches('-').replace('-', " ");
    text.map(|text| Stated::new(field, text, place(name)))
}

fn place(name: &str) -> Place {
    Place::Option(Arc::from(format!("option {name}")))
}

fn choice<Picked: Choice>(
    name: &str,
    text: Option<&str>,
) -> Result<Option<Picked>, StatementError> {
    option(name, text).map(|stated| stated.choose()).transpose()
}

fn positive(stated: &Stated<'_>) -> Result<Length, StatementError> {
    let length = stated.read(parse_length)?;
    if length.value <= LEAST_METRES {
        return Err(stated.refuse("it is not more than nothing", LENGTH));
    }
    if length.value > GREATEST_METRES {
        return Err(stated.refuse("no barrier of planks is higher than 30 m (98 ft)", LENGTH));
    }
    Ok(length)
}

fn missing(name: &str, accepted: &str) -> StatementError {
    StatementError {
        place: place(name),
        field: name.trim_start_matches('-').to_owned(),
        value: None,
        problem: "it is missing".to_owned(),
        accepted: accepted.to_owned(),
    }
}
