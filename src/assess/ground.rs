//! Step 2: the ground at a place and around it.

use super::place::{GroundAnswer, LowestGround};
use super::study::{Spot, Study};
use super::{AssessError, Value};
use crate::level::{GradeReach, HighestGrade};
use crate::terrain::{Gap, Grade, Ground};
use crate::verdict::GroundSource;

impl Study<'_> {
    pub(super) fn ground(
        &mut self,
        spot: Spot<'_>,
        read: Option<Result<Ground, Gap>>,
    ) -> Result<GroundAnswer, AssessError> {
        let quantity = || format!("ground{}", spot.whose);
        match read {
            None => {
                self.trail.note(|trail| {
                    trail.add(quantity(), Value::Unknown, "no terrain model was given", "");
                });
                Ok(GroundAnswer::NotAsked)
            }
            Some(Ok(ground)) => {
                let what = || format!("the terrain {}", ground.source);
                let elevation = self.on_threshold_datum(ground.elevation, spot, &what)?;
                self.trail.note(|trail| {
                    trail.add(
                        quantity(),
                        Value::Elevation(elevation),
                        "bilinear between the four nearest cell centres of the terrain",
                        ground.source.to_string(),
                    );
                });
                Ok(GroundAnswer::Known(Ground {
                    elevation,
                    ..ground
                }))
            }
            Some(Err(gap)) => {
                self.trail.note(|trail| {
                    trail.add(quantity(), Value::Unknown, gap.to_string(), "");
                });
                Ok(GroundAnswer::Gap(gap))
            }
        }
    }

    /// The lowest and the highest ground against the walls: as surveyed, else read from the
    /// terrain along the building's outline, else within the radius of the method.
    ///
    /// What is surveyed, and the outline, are those of the building; an opening elsewhere has
    /// its own ground.
    pub(super) fn grade(
        &mut self,
        spot: Spot<'_>,
        read: Option<(Grade, GradeReach)>,
        sheet_flow: bool,
    ) -> Result<AdjacentGrade, AssessError> {
        let at_site = self.is_at_site(spot);
        let surveyed = Some(self.site.grade)
            .filter(|_| at_site)
            .unwrap_or_default();
        let near = || match spot.whose {
            "" => "near the building".to_owned(),
            whose => format!("near the building,{whose}"),
        };
        let mut found = AdjacentGrade::default();
        if let Some(elevation) = surveyed.lowest {
            let how = "lowest adjacent grade as stated";
            self.trail.note(|trail| {
                trail.add(
                    format!("lowest ground {}", near()),
                    Value::Elevation(elevation),
                    how,
                    "site file",
                );
            });
            found.lowest = Some(LowestGround {
                elevation,
                source: GroundSource::Surveyed,
            });
        }
        if let Some(elevation) = surveyed.highest {
            let how = "highest adjacent grade as stated";
            self.trail.note(|trail| {
                trail.add(
                    format!("highest ground {}", near()),
                    Value::Elevation(elevation),
                    how,
                    "site file",
                );
            });
            found.highest = Some(HighestGrade::surveyed(
                elevation,
                Some(self.method.uncertainty.sill.sd),
            ));
        }
        if found.lowest.is_some() && found.highest.is_some() {
            return Ok(found);
        }
        let Some((mut grade, reach)) = read else {
            return Ok(found);
        };
        let source = grade.source.clone();
        let what = || format!("the terrain {source}");
        grade.lowest = self.on_threshold_datum(grade.lowest, spot, &what)?;
        grade.highest = self.on_threshold_datum(grade.highest, spot, &what)?;
        let how = |which| {
            let voids = match grade.without_value {
                0 => String::new(),
                count => format!("; {count} of them have no value"),
            };
            let place = match reach {
                GradeReach::Outline => "along the building's outline".to_owned(),
                GradeReach::Radius(radius) => {
                    format!("within {}", self.method.units.distance(radius))
                }
            };
            format!(
                "{which} of {} points of the terrain {place}{voids}",
                grade.samples
            )
        };
        if found.lowest.is_none() {
            self.trail.note(|trail| {
                trail.add(
                    format!("lowest ground {}", near()),
                    Value::Elevation(grade.lowest),
                    how("lowest"),
                    grade.source.to_string(),
                );
            });
            found.lowest = Some(LowestGround {
                elevation: grade.lowest,
                source: GroundSource::Terrain,
            });
        }
        if found.highest.is_none() {
            self.trail.note(|trail| {
                trail.add(
                    format!("highest ground {}", near()),
                    Value::Elevation(grade.highest),
                    how("highest"),
                    grade.source.to_string(),
                );
            });
            // Only a depth over the ground asks for it.
            found.highest = sheet_flow.then(|| {
                let sd = self.method.uncertainty.terrain_sd();
                HighestGrade::of_terrain(&grade, reach, sd, self.method.units)
            });
        }
        Ok(found)
    }
}

/// The ground against the walls.
#[derive(Default)]
pub(super) struct AdjacentGrade {
    pub(super) lowest: Option<LowestGround>,
    pub(super) highest: Option<HighestGrade>,
}
