//! How likely things are, and how well they are known.

mod deviation;
mod hazard_rating;
mod normal;
mod over_top;
mod over_years;
mod stage_chance;
mod uncertainty;

pub use deviation::{Deviation, Measured, deviations};
pub use hazard_rating::{Debris, HazardClass, HazardEdition, HazardRating, LandUse, hazard_rating};
pub(crate) use normal::deviate;
pub use over_top::{chance_of_passing, chance_over_top};
pub use over_years::{chance_between, chance_over_years, mean_years_between};
pub use stage_chance::{
    Beyond, ChanceAtLevel, ChanceLevel, INTERPOLATION, LevelAtChance, ReadFrom, StageChance,
    StageChanceError,
};
pub use uncertainty::root_sum_square;
