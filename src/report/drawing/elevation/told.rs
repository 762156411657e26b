//! The drawing for a reader who does not see it.

use super::front::Front;
use super::levels::heights;
use super::remarks::barrier;
use super::subject::{Level, Subject};

pub(super) fn title(subject: &Subject<'_>) -> String {
    format!(
        "Elevation of {} from the water side, to scale",
        subject.name
    )
}

pub(super) fn told(subject: &Subject<'_>, front: &Front) -> String {
    let units = subject.units;
    let mut told = Vec::new();
    if front.legs.len() > 1 {
        told.push(format!("Legs of {}.", subject.legs_in_words()));
    } else if let Some(width) = subject.width {
        told.push(format!("The opening is {} wide.", units.dimension(width)));
    }
    for mark in &subject.marks {
        let far = units.height(mark.height.abs());
        let from_sill = match mark.level {
            Level::Sill => String::new(),
            _ if mark.height.value < 0.0 => format!(", {far} below the sill"),
            _ => format!(", {far} over the sill"),
        };
        told.push(format!(
            "{} at {}{from_sill}.",
            capital(&mark.name),
            mark.value
        ));
    }
    for (name, height) in heights(subject) {
        let name = match name {
            "barrier" => "Height of the barrier",
            "protect" => "Height to protect",
            "water" => "Depth of the water",
            _ => "Height of the opening",
        };
        told.push(format!("{name}: {}.", units.height(height)));
    }
    told.extend(barrier(subject, front));
    told.extend(super::barrier::braces_in_words(subject));
    told.extend(subject.unknown.iter().cloned());
    told.join(" ")
}

fn capital(text: &str) -> String {
    let mut characters = text.chars();
    characters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(characters).collect()
    })
}
