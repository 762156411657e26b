//! The contradictions within a plank and within a post.

use super::{Fault, both};
use crate::barrier::Material;
use crate::barrier::kit::{AnchorPattern, BasePlate, Plank, Post, Section};
use crate::quantity::Length;
use crate::quantity::unit::LinearMassDensity;

/// Mass over that of the bare metal: not less, but for rounding, and not more than gaskets,
/// inserts and fittings make of it (common practice, no source).
const LIGHTEST: f64 = 0.95;
const HEAVIEST: f64 = 3.0;

/// A plank's profile may reach beyond its cover where it laps the next one, but not to twice
/// that (common practice, no source).
const LAP: f64 = 2.0;

/// Refuses a plank that cannot be.
pub(in crate::barrier::kit) fn plank(plank: &Plank) -> Result<(), Fault> {
    solid(&plank.section, plank.thickness, plank.cover * LAP)?;
    mass(&plank.section, &plank.material, plank.mass_per_length)?;
    if plank.longest < plank.cover {
        return Fault::of(
            "longest",
            "the longest plank is shorter than it is high",
            format!("more than cover_height, {}", length(plank.cover)),
        );
    }
    Ok(())
}

/// Refuses a post that cannot be, or cannot hold planks of a thickness.
pub(in crate::barrier::kit) fn post(post: &Post, plank_thickness: Length) -> Result<(), Fault> {
    solid(&post.section, post.depth, post.width)?;
    mass(&post.section, &post.material, post.mass_per_length)?;
    if post.depth <= plank_thickness {
        return Fault::of(
            "depth",
            "a plank does not fit into the post",
            format!("more than plank.thickness, {}", length(plank_thickness)),
        );
    }
    if post.pocket > post.width {
        return Fault::of(
            "pocket",
            "it reaches through the post",
            format!("at most width, {}", length(post.width)),
        );
    }
    if post.clearance >= post.pocket {
        return Fault::of(
            "clearance",
            "no plank reaches into a pocket that leaves so much",
            format!("less than pocket, {}", length(post.pocket)),
        );
    }
    let Some(plate) = &post.base_plate else {
        return match post.anchors {
            None => Ok(()),
            Some(_) => Fault::of(
                "anchors",
                "there is no plate for them",
                "base_plate with along, across and thickness, or no anchors",
            ),
        };
    };
    base_plate(post, plate)?;
    post.anchors
        .as_ref()
        .map_or(Ok(()), |anchors| pattern(plate, anchors))
}

fn base_plate(post: &Post, plate: &BasePlate) -> Result<(), Fault> {
    if plate.along < post.width || plate.across < post.depth {
        return Fault::of(
            "base_plate",
            "it is smaller than the post",
            format!(
                "along at least width, {}, and across at least depth, {}",
                length(post.width),
                length(post.depth)
            ),
        );
    }
    Ok(())
}

fn pattern(plate: &BasePlate, anchors: &AnchorPattern) -> Result<(), Fault> {
    for (name, extent, room) in [
        ("along", anchors.along(), plate.along),
        ("across", anchors.across(), plate.across),
    ] {
        if extent + anchors.diameter > room {
            return Fault::of(
                "anchors",
                format!("the pattern reaches beyond the plate {name}"),
                format!(
                    "rows and spacings that fit, with the diameter, in {}",
                    length(room)
                ),
            );
        }
    }
    Ok(())
}

/// No more metal than a solid bar of the part's extents has.
fn solid(section: &Section, depth: Length, breadth: Length) -> Result<(), Fault> {
    let most = depth * breadth;
    if section.area > most {
        return Fault::of(
            "area",
            "it is more than that of a solid bar of the part's size",
            format!("at most {}", both(|units| units.section_area(most))),
        );
    }
    Ok(())
}

fn mass(section: &Section, material: &Material, mass: LinearMassDensity) -> Result<(), Fault> {
    let metal: LinearMassDensity = section.area * material.density;
    if !(LIGHTEST..=HEAVIEST).contains(&(mass / metal).value) {
        return Fault::of(
            "mass_per_length",
            "it does not go with area and the density of the material",
            format!(
                "the metal weighs {}; as much to {HEAVIEST} times that",
                both(|units| units.mass_per_length(metal))
            ),
        );
    }
    Ok(())
}

fn length(length: Length) -> String {
    both(|units| units.dimension(length))
}
