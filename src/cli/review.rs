//! `sillmark review`: somebody's proposal held against an assessment.

use std::path::PathBuf;

use sillmark::assess::Assessment;
use sillmark::crs::Datums;
use sillmark::proposal::Proposal;
use sillmark::quantity::{Elevation, Length, UnitSystem, VerticalDatum};
use sillmark::report::review::{json, page, text};
use sillmark::review::{KnownShift, Shifts, UnknownShift, review};

use super::arguments::{ReviewFormat, ReviewOptions};
use super::assessing::{Assessing, Drawn, site_of_file};
use super::failure::Failure;
use super::inputs;
use super::output::Target;
use super::site::COLUMNS;

pub(super) fn run(options: &ReviewOptions) -> Result<(), Failure> {
    let target = Target::open(options.output.output.as_deref(), &files(options))?;
    let proposal = proposal(options)?;
    let site = site_of_file(&options.site)?;
    let units = options.output.units.map_or(site.units, UnitSystem::from);
    let assessing = Assessing::of(&site, &options.maps, &options.method, units, Drawn::No)?;
    let assessment = assessing.assess(&site)?;
    let shifts = shifts(&assessing.sources.datums, &assessment, &proposal);
    let review = review(&assessment, &proposal, &shifts);
    let result = match options.format {
        ReviewFormat::Text => text(&review, COLUMNS),
        ReviewFormat::Json => json(&review).map_err(Failure::other)?,
        ReviewFormat::Html => page(&review).map_err(Failure::other)?,
    };
    target.write(&result)
}

fn proposal(options: &ReviewOptions) -> Result<Proposal, Failure> {
    let path = &options.proposal;
    let text = inputs::text_file(path, "a proposal file (TOML in UTF-8)")?;
    Proposal::from_toml(&path.display().to_string(), &text).map_err(Failure::input)
}

/// The shifts from every datum that may have to do with the proposal onto that of the answer:
/// those of its own elevations, and those that levels at such a place are published on.
fn shifts(datums: &Datums, assessment: &Assessment<'_>, proposal: &Proposal) -> Shifts {
    let site = assessment.site;
    let to = site.threshold.datum();
    // A shift does not depend on the height; ours is at hand.
    let height = assessment
        .threshold
        .map_or(Length::default(), Elevation::height);
    let mut shifts = Shifts::default();
    for from in candidates(to, proposal, site) {
        match datums.convert(Elevation::new(height, from), to, site.location) {
            Ok(conversion) => shifts.known.push(KnownShift {
                from,
                to,
                shift: conversion.shift,
                sd: conversion.standard_deviation,
                source: conversion.reference,
            }),
            Err(error) => shifts.unknown.push(UnknownShift {
                from,
                why: error.to_string(),
            }),
        }
    }
    shifts
}

/// The two datums of levels in the United States, which are mixed up most.
const PUBLISHED: [VerticalDatum; 2] = [VerticalDatum::Ngvd29, VerticalDatum::Navd88];

fn candidates(
    to: VerticalDatum,
    proposal: &Proposal,
    site: &sillmark::site::Site,
) -> Vec<VerticalDatum> {
    let stated = proposal.flood_level.iter().chain(&proposal.design_level);
    let of_openings = proposal.openings.iter();
    let of_openings = of_openings.flat_map(|opening| opening.sill.iter().chain(&opening.ground));
    let stated = stated
        .chain(of_openings)
        .map(|written| written.value.datum());
    let offsets = site.datum_offsets.iter();
    let offsets = offsets.flat_map(|offset| [offset.from, offset.to]);
    let published = PUBLISHED.into_iter().filter(|_| PUBLISHED.contains(&to));
    let mut found: Vec<VerticalDatum> = Vec::new();
    for datum in stated.chain(offsets).chain(published) {
        if datum != to && !found.contains(&datum) {
            found.push(datum);
        }
    }
    found
}

/// The files that the run reads.
fn files(options: &ReviewOptions) -> Vec<PathBuf> {
    let own = [options.proposal.clone(), options.site.clone()];
    let kit = options.method.kit.iter().cloned();
    own.into_iter()
        .chain(kit)
        .chain(inputs::files(&options.maps))
        .collect()
}
