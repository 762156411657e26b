//! Step 2: the ground at a place and around it.

use super::place::{GroundAnswer, LowestGround};
use super::study::{Spot, Study};
use super::{AssessError, Value};
use crate::terrain::Ground;
use crate::verdict::GroundSource;

impl Study<'_> {
    pub(super) fn ground(&mut self, spot: Spot<'_>) -> Result<GroundAnswer, AssessError> {
        let quantity = format!("ground{}", spot.whose);
        let terrain = &self.sources.terrain;
        if terrain.dems().is_empty() {
            self.trail
                .add(quantity, Value::Unknown, "no terrain model was given", "");
            return Ok(GroundAnswer::NotAsked);
        }
        match terrain.ground_at(spot.location)? {
            Ok(ground) => {
                let what = format!("the terrain {}", ground.source);
                let elevation = self.on_threshold_datum(ground.elevation, spot, &what)?;
                self.trail.add(
                    quantity,
                    Value::Elevation(elevation),
                    "bilinear between the four nearest cell centres of the terrain",
                    ground.source.clone(),
                );
                Ok(GroundAnswer::Known(Ground {
                    elevation,
                    ..ground
                }))
            }
            Err(gap) => {
                self.trail
                    .add(quantity, Value::Unknown, gap.to_string(), "");
                Ok(GroundAnswer::Gap(gap))
            }
        }
    }

    pub(super) fn lowest_ground(
        &mut self,
        spot: Spot<'_>,
    ) -> Result<Option<LowestGround>, AssessError> {
        let quantity = match spot.whose {
            "" => "lowest ground near the building".to_owned(),
            whose => format!("lowest ground near the building,{whose}"),
        };
        // The surveyed grade is that of the building; an opening elsewhere has its own ground.
        if let Some(elevation) = self.site.grade.lowest.filter(|_| self.is_at_site(spot)) {
            let how = "lowest adjacent grade as stated";
            self.trail
                .add(quantity, Value::Elevation(elevation), how, "site file");
            return Ok(Some(LowestGround {
                elevation,
                source: GroundSource::Surveyed,
            }));
        }
        let terrain = &self.sources.terrain;
        if terrain.dems().is_empty() {
            return Ok(None);
        }
        let Ok(grade) = terrain.grade_around(spot.location, self.method.grade_radius)? else {
            return Ok(None);
        };
        let what = format!("the terrain {}", grade.source);
        let elevation = self.on_threshold_datum(grade.lowest, spot, &what)?;
        self.trail.add(
            quantity,
            Value::Elevation(elevation),
            format!(
                "lowest of {} points of the terrain within {}{}",
                grade.samples,
                self.method.units.distance(self.method.grade_radius),
                match grade.without_value {
                    0 => String::new(),
                    count => format!("; {count} of them have no value"),
                }
            ),
            grade.source,
        );
        Ok(Some(LowestGround {
            elevation,
            source: GroundSource::Terrain,
        }))
    }
}
