//! One zone of a layer.

use std::sync::{Arc, OnceLock};

use super::{ZoneClass, ZoneRemark};
use crate::gis::Fetched;
use crate::quantity::{AnnualChance, Elevation, Length, LengthUnit, Velocity};
use crate::statement::printable;

/// A flood zone as its layer states it, with what could be made of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// The code as the layer writes it, such as `AE`; empty where it has none.
    pub code: String,
    /// The subtype as the layer writes it, such as `FLOODWAY`.
    pub subtype: Option<String>,
    /// The layer's name.
    pub layer: String,
    /// The feature's own identifier where the layer has one, else its number in the file.
    pub feature: String,
    /// What the zone means.
    pub class: ZoneClass,
    /// Whether zones of this code have a level, here or in another layer of the same map.
    pub level_expected: bool,
    /// Water-surface elevation of the mapped event, where it is the same all over the zone.
    pub level: Option<Elevation>,
    /// The unit that the level is written in; it was rounded in this unit.
    pub level_unit: Option<LengthUnit>,
    /// Depth of water above the ground.
    pub depth: Option<Length>,
    /// Whether the record has a depth at all: one that could not be used is in `remarks`.
    pub depth_is_stated: bool,
    /// Speed of the water.
    pub velocity: Option<Velocity>,
    /// Annual chance of the flood that the zone is the extent of, and that level and depth
    /// belong to. For a zone outside every mapped flood, that of the map's main one.
    pub annual_chance: AnnualChance,
    /// How the publisher came by the area, such as `modelled`, where the layer says.
    pub origin: Option<String>,
    /// The day from which the area holds, where the record states one: its text, a date as GDAL
    /// prints it (`2006/08/16`).
    pub date: Option<String>,
    /// The service that the zone was fetched from; `None` where it was none.
    pub fetched: Option<Arc<Fetched>>,
    /// What was odd about the feature, or refused.
    pub remarks: Vec<ZoneRemark>,
    pub(super) words: Words,
}

/// What is said of a zone again and again, made when it is first asked for. It follows from
/// the other fields: it makes no difference to equality, and a copy, which may be changed,
/// makes its own.
#[derive(Default)]
pub(super) struct Words {
    title: OnceLock<Arc<str>>,
    record: OnceLock<Arc<str>>,
}

impl Clone for Words {
    fn clone(&self) -> Self {
        Self::default()
    }
}

impl PartialEq for Words {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl std::fmt::Debug for Words {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        formatter.write_str("Words")
    }
}

impl Zone {
    /// The zone in words: its code, and its subtype where it has one. A bare extent has neither.
    ///
    /// Made once: a field that is changed afterwards does not change it.
    pub fn title(&self) -> &Arc<str> {
        self.words.title.get_or_init(|| {
            let title = match &self.subtype {
                Some(subtype) => format!("{} ({subtype})", self.code),
                None if self.code.is_empty() => "without a code".to_owned(),
                None => self.code.clone(),
            };
            printable(&title).into()
        })
    }

    /// Where the zone stands in few words: layer and feature.
    #[must_use]
    pub fn standing(&self) -> String {
        printable(&format!("{}, feature {}", self.layer, self.feature))
    }

    /// Where the zone stands, for the trail: layer and feature, how the publisher came by its
    /// area where the layer says, and the service that it was fetched from.
    ///
    /// Made once, as [`title`](Self::title).
    pub fn record(&self) -> &Arc<str> {
        self.words.record.get_or_init(|| {
            let mut record = self.standing();
            if let Some(origin) = &self.origin {
                record = format!("{record} ({origin})");
            }
            if let Some(fetched) = &self.fetched {
                record = format!("{record}, of {fetched}");
            }
            printable(&record).into()
        })
    }
}
