//! The legend: every mark that the map has, and what it means.

use std::collections::BTreeMap;

use super::{INSET, LEGEND, MAP, WIDTH, building, lines, zones};
use crate::assess::Assessment;
use crate::report::drawing::lettering::{BOLD, fitted};
use crate::report::drawing::sheet::{Anchor, Point, Sheet};
use crate::report::drawing::texture::Texture;
use crate::surroundings::{LineUse, Surroundings, ZoneShape};

/// From one row to the next, pixels.
const ROW: f64 = 21.0;
/// The size of a sample.
const SAMPLE: (f64, f64) = (28.0, 14.0);
/// Where the words begin.
const WORDS: f64 = LEGEND + SAMPLE.0 + 8.0;
const FONT: f64 = 12.0;
/// Rows that fit beside the map and the scale.
const BESIDE: usize = 21;
/// More openings than this are not told one by one: the table has them.
const OPENINGS: usize = 40;

pub(super) struct Legend {
    rows: Vec<Row>,
    textures: Vec<Texture>,
}

struct Row {
    sample: Sample,
    text: String,
    strong: bool,
}

enum Sample {
    Zone {
        edge: &'static str,
        inside: bool,
        texture: Option<Texture>,
    },
    Line(&'static str),
    Void,
    Outline,
    Site,
    Number(usize),
    Nothing,
}

impl Legend {
    pub(super) fn of(assessment: &Assessment<'_>, surroundings: &Surroundings) -> Self {
        let mut rows = Vec::new();
        let mut add = |sample, text: String, strong| {
            rows.push(Row {
                sample,
                text,
                strong,
            });
        };
        let here = assessment.openings.len() - surroundings.openings.len();
        let site = match (surroundings.openings.len(), here) {
            (0, _) => "the site".to_owned(),
            (_, 1) => "the site, 1 opening".to_owned(),
            (_, here) => format!("the site, {here} openings"),
        };
        add(Sample::Site, site, true);
        if !surroundings.outline.is_empty() {
            add(Sample::Outline, "the building".to_owned(), false);
        }
        if surroundings.section.is_some() {
            add(Sample::Line("cut"), "section A–A′".to_owned(), false);
        }
        for zone in kinds(&surroundings.zones) {
            let sample = Sample::Zone {
                edge: zones::edge(zone),
                inside: zone.class.is_inside(),
                texture: zones::texture(zone.class),
            };
            let text = format!("{}: {}", zones::name(zone), zones::meaning(zone.class));
            add(sample, text, zone.decides);
        }
        if surroundings.zones.is_empty() {
            let text = if surroundings.zones_were_given() {
                "no zones here"
            } else {
                "no zones were given"
            };
            add(Sample::Nothing, text.to_owned(), false);
        }
        let drawn = surroundings
            .lines
            .iter()
            .filter(|line| !line.shape.0.is_empty());
        let by_use: BTreeMap<bool, &str> = drawn
            .map(|line| (line.used == LineUse::None, lines::class(line)))
            .collect();
        for (unused, class) in by_use {
            let text = if unused {
                "level, not used"
            } else {
                "level that was used"
            };
            add(Sample::Line(class), text.to_owned(), false);
        }
        match &surroundings.ground {
            None => {
                let text = if surroundings.rasters.is_empty() {
                    "no terrain was given"
                } else {
                    "no terrain here"
                };
                add(Sample::Nothing, text.to_owned(), false);
            }
            Some(grid) if grid.void_count() > 0 => {
                add(Sample::Void, "no height known".to_owned(), false);
            }
            Some(_) => {}
        }
        for opening in surroundings.openings.iter().take(OPENINGS) {
            add(
                Sample::Number(opening.number + 1),
                opening.id.clone(),
                false,
            );
        }
        if let Some(more) = surroundings
            .openings
            .len()
            .checked_sub(OPENINGS)
            .filter(|more| *more > 0)
        {
            add(Sample::Nothing, format!("and {more} more"), false);
        }
        let mut textures: Vec<Texture> =
            rows.iter().filter_map(|row| row.sample.texture()).collect();
        textures.sort_unstable();
        textures.dedup();
        Self { rows, textures }
    }

    /// The textures that the map and the legend need.
    pub(super) fn textures(&self) -> Vec<Texture> {
        self.textures.clone()
    }

    /// The height of the sheet that has room for it.
    #[allow(clippy::cast_precision_loss)] // some dozens
    pub(super) fn height(&self) -> f64 {
        let columns = if self.rows.len() > BESIDE { 3 } else { 1 };
        let below = self.rows.len().saturating_sub(BESIDE).div_ceil(columns);
        if below == 0 {
            return 0.0;
        }
        below_map() + ROW * below as f64
    }

    /// Beside the map from above; what has no room there in three columns below it.
    #[allow(clippy::cast_precision_loss)] // some dozens
    pub(super) fn draw(&self, sheet: &mut Sheet) {
        let rest = self.rows.len().saturating_sub(BESIDE);
        let deep = rest.div_ceil(3).max(1);
        for (number, row) in self.rows.iter().enumerate() {
            let (left, top) = match number.checked_sub(BESIDE) {
                None => (LEGEND, INSET + ROW * number as f64),
                Some(below) => {
                    let wide = (WIDTH - INSET) / 3.0;
                    (
                        INSET + wide * (below / deep) as f64,
                        below_map() + ROW * (below % deep) as f64,
                    )
                }
            };
            row.draw(sheet, (left, top));
        }
    }
}

fn below_map() -> f64 {
    INSET + MAP + 40.0
}

/// One zone for each code and class, the worst first; the one that decides stands for its kind.
fn kinds(zones: &[ZoneShape]) -> Vec<&ZoneShape> {
    let mut kinds: Vec<&ZoneShape> = zones.iter().collect();
    kinds.sort_by(|one, other| {
        let by_class = other.class.cmp(&one.class);
        let by_code = one.code.cmp(&other.code);
        by_class.then(by_code).then(other.decides.cmp(&one.decides))
    });
    kinds.dedup_by(|one, other| one.class == other.class && one.code == other.code);
    kinds
}

impl Row {
    fn draw(&self, sheet: &mut Sheet, (left, top): Point) {
        self.sample.draw(sheet, (left, top));
        let words = left + (WORDS - LEGEND);
        let room = WIDTH - WORDS - 4.0;
        let (class, size) = if self.strong {
            ("small strong", FONT * BOLD)
        } else {
            ("small", FONT)
        };
        let text = fitted(&self.text, size, room);
        sheet.text(class, (words, top + 11.5), Anchor::Start, &text);
    }
}

impl Sample {
    fn texture(&self) -> Option<Texture> {
        match self {
            Self::Zone { texture, .. } => *texture,
            Self::Void => Some(Texture::Void),
            _ => None,
        }
    }

    fn draw(&self, sheet: &mut Sheet, (left, top): Point) {
        let (wide, high) = SAMPLE;
        let (right, bottom) = (left + wide, top + high);
        let middle = (left + wide / 2.0, top + high / 2.0);
        let corners = [(left, top), (right, top), (right, bottom), (left, bottom)];
        match self {
            Self::Zone {
                edge,
                inside,
                texture,
            } => {
                if *inside {
                    sheet.polygon("zone-tint", &corners);
                }
                if let Some(texture) = texture {
                    sheet.textured("zone-texture", *texture, &[(&corners, true)]);
                }
                sheet.polygon(edge, &corners);
            }
            Self::Line(class) => sheet.line(class, (left, middle.1), (right, middle.1)),
            Self::Void => {
                sheet.textured("zone-texture", Texture::Void, &[(&corners, true)]);
                sheet.polygon("rim", &corners);
            }
            Self::Outline => sheet.polygon("outline", &corners),
            Self::Site => building::mark(sheet, middle),
            Self::Number(number) => {
                let text = number.to_string();
                building::plate(sheet, middle, &text, building::plate_size(&text));
            }
            Self::Nothing => {}
        }
    }
}
