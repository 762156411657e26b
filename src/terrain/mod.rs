//! The ground: elevation rasters, read cell by cell and between cells.
//!
//! A raster hardly ever states its vertical datum, and often not its unit: what it does not
//! say the user does, in a [`DemStatement`]; nothing is assumed. A cell without a value is a
//! [`Gap`], a file that cannot be read is a [`TerrainError`], and neither is ever a height.
//!
//! ```no_run
//! use sillmark::quantity::{LengthUnit, VerticalDatum};
//! use sillmark::site::Location;
//! use sillmark::terrain::{Dem, DemStatement};
//!
//! let statement = DemStatement {
//!     unit: Some(LengthUnit::Metre),
//!     datum: Some(VerticalDatum::Navd88),
//!     crs: None,
//! };
//! let dem = Dem::open("hoboken_dem.tif".as_ref(), &statement)?;
//! match dem.ground_at(Location::from_degrees(-74.0335, 40.74)?)? {
//!     Ok(ground) => println!("{:?}", ground.elevation),
//!     Err(gap) => println!("no ground there: {gap}"),
//! }
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod about;
mod around;
mod cells;
mod deflated;
mod dem;
mod depths;
mod disk;
mod error;
mod grade;
mod grid;
mod ground;
mod list;
mod near;
mod no_data;
mod order;
mod outline;
mod patch;
mod plane;
mod plot;
mod predictor;
mod raster;
mod reader;
mod reading;
mod rim;
mod role;
mod statement;
mod tile;
mod tiles;
mod tiling;
mod values;
mod window;

pub use around::Around;
pub use dem::Dem;
pub use depths::DepthRaster;
pub use error::TerrainError;
pub use grade::Grade;
pub use ground::{Gap, Ground};
pub use list::Terrain;
pub use order::TileKey;
pub use plane::GroundPlane;
pub use plot::Spot;
pub use raster::Raster;
pub use reading::CellReading;
pub use role::RasterRole;
pub use statement::DemStatement;
