//! Which openings of a building need a removable flood barrier, how high, and what the water
//! does to it.
//!
//! Data flows through rooms; each imports only from those named before it:
//!
//! - [`mod@quantity`]: lengths, pressures and forces with exact units; [`quantity::Elevation`], a
//!   height that cannot be parted from its vertical datum;
//! - [`statement`]: what somebody wrote, with file and line, and the one form of an input error;
//! - [`beam`], [`load`], [`inflow`], [`anchor`], [`design`], [`site`], [`proposal`], [`barrier`],
//!   [`risk`], [`verdict`]: the engineering, pure computation without files;
//! - [`service`]: layers that public services serve over HTTP, with bounds, kept on the disk;
//! - [`gis`], [`crs`], [`table`], [`terrain`], [`hazard`], [`level`]: the maps and tables;
//! - [`collect`]: what services hold, brought onto the disk as files that are read like any other;
//! - [`assess`]: the spine, where the two meet: one building in, one assessment out;
//! - [`surroundings`]: what lies around an assessed site, to be drawn;
//! - [`mod@review`]: an assessment held against somebody's proposal;
//! - [`portfolio`]: many buildings, and what is counted of them;
//! - [`report`]: the assessment, the review or the summary of a portfolio, for its readers.
//!
//! No number is without its source, datum, unit and, where one is known, uncertainty; what is
//! missing or refused makes an answer unresolved with the reason, never a dry building.
//!
//! ```
//! use sillmark::assess::{Detail, Method, Sources, Uncertainty, assess};
//! use sillmark::barrier::{DesignRules, Kit};
//! use sillmark::crs::{DatumSettings, Datums};
//! use sillmark::design::rules;
//! use sillmark::hazard::{ZoneStatement, read_zones};
//! use sillmark::level::LevelMaps;
//! use sillmark::load::LoadZone;
//! use sillmark::quantity::unit::{Length, foot, meter};
//! use sillmark::quantity::{AnnualChance, UnitSystem};
//! use sillmark::site::Site;
//! use sillmark::terrain::{Dem, DemStatement, Terrain};
//! use sillmark::verdict::{Limits, Verdict};
//!
//! let folder = std::path::Path::new("examples/alder-lock");
//! let site = Site::from_toml("site.toml", &std::fs::read_to_string(folder.join("site.toml"))?)?;
//! let zones = read_zones(&folder.join("zones.geojson"), None, &ZoneStatement::default(), None)?;
//! let dem = Dem::open(&folder.join("terrain.tif"), &DemStatement::default())?;
//! let sources = Sources {
//!     zones: vec![zones],
//!     levels: LevelMaps::default(),
//!     terrain: Terrain::new(vec![dem]),
//!     datums: Datums::new(DatumSettings::default())?,
//! };
//! let kit = Kit::demonstration()?;
//! let method = Method {
//!     rule: rules()?.into_iter().find(|rule| rule.id == "us-nfip-floodproofing").unwrap(),
//!     rules: DesignRules::of(&kit, &site.conditions.loads, LoadZone::Other)?,
//!     kit,
//!     limits: Limits::shipped()?,
//!     event: AnnualChance::ONE_PERCENT,
//!     grade_radius: Length::new::<meter>(10.0),
//!     uncertainty: Uncertainty::of(&site.uncertainty, None)?,
//!     years: 30,
//!     units: UnitSystem::Us,
//!     detail: Detail::Full,
//! };
//! let answer = assess(&site, &sources, &method)?;
//! let door = &answer.openings[0];
//! assert_eq!(door.verdict, Verdict::Protect);
//! assert!((door.protection_height.unwrap().get::<foot>() - 2.1).abs() < 1e-9);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

// `uom::unit!` calls further macros of its crate by their bare names.
#[macro_use]
extern crate uom;

pub mod anchor;
pub mod barrier;
pub mod beam;
pub mod design;
pub mod inflow;
pub mod load;
pub mod proposal;
pub mod quantity;
pub mod risk;
pub mod site;
pub mod statement;
pub mod verdict;

pub mod assess;
pub mod collect;
pub mod crs;
pub mod gis;
pub mod hazard;
pub mod level;
pub mod portfolio;
pub mod report;
pub mod review;
pub mod service;
pub mod surroundings;
pub mod table;
pub mod terrain;
