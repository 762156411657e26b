//! What no check here covers, although it may decide: load factors that belong to other loads,
//! planks that float, plates, and the code's place of a breaking wave.

use super::barrier_design::BarrierDesign;
use super::frame::Framing;
use crate::barrier::{Basis, DesignError, Kit, LoadCase, Open};
use crate::load::{Salinity, standard_gravity};
use crate::quantity::unit::Force;

/// What the checks of a design do not cover.
pub(super) fn beyond_the_checks(
    design: &BarrierDesign,
    framing: &Framing<'_>,
) -> Result<Vec<Open>, DesignError> {
    let kit = framing.planks.kit;
    let mut open: Vec<Open> = small_factor(framing)?.into_iter().collect();
    if floats(kit, framing.task.water.salinity) {
        open.push(Open::KitDoesNotState {
            what: "how its planks, lighter than the water that they displace, are held down"
                .to_owned(),
        });
    }
    let not_checked = |part: &str, what: &str| Open::NotChecked {
        part: part.to_owned(),
        what: what.to_owned(),
    };
    if design.end_post.is_some() {
        open.push(not_checked(
            "end post",
            "bending between fixings and the lips of the pocket",
        ));
    }
    let load = design.load(LoadCase::DesignLevel);
    let breaks = load.is_some_and(|load| load.water.breaking_wave.is_some());
    for post in &design.uprights {
        let part = post.role.name();
        open.push(not_checked(
            part,
            "the base plate and its joint with the post, and the lips of the pocket",
        ));
        if breaks {
            open.push(not_checked(
                part,
                "the whole force of a breaking wave at the stillwater surface (ASCE 7 5.4.4.2 lets it act there; the pressures of its figure are used, whose resultant lies lower)",
            ));
        }
    }
    Ok(open)
}

/// A factor below 1 belongs to combinations with other loads; a barrier carries the water alone.
fn small_factor(framing: &Framing<'_>) -> Result<Option<Open>, DesignError> {
    let rules = framing.planks.rules;
    let plank = &framing.planks.kit.plank;
    let basis = Basis::of(
        &plank.material,
        &rules.combination,
        rules.zone,
        &rules.deflection,
    )?;
    let anchors = rules.combination.factors(rules.zone).strength;
    let least = basis.factor.min(anchors);
    Ok((least < 1.0).then(|| Open::SmallFactor {
        factor: least,
        set: rules.combination.id.clone(),
    }))
}

/// Whether a plank under water is lifted by more than its weight.
fn floats(kit: &Kit, salinity: Salinity) -> bool {
    let plank = &kit.plank;
    let displaced: Force =
        salinity.specific_weight() * plank.cover * plank.thickness * plank.longest;
    let weight: Force = plank.mass_per_length * plank.longest * standard_gravity();
    displaced > weight
}
