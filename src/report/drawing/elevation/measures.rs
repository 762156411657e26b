//! Dimensions: heights to the left, lengths below.

use super::frame::{Frame, LEFT, TOP};
use super::front::Front;
use super::key::Key;
use super::levels::heights_in_words;
use super::subject::Subject;
use crate::quantity::unit::{Length, meter};
use crate::report::drawing::beside::Column;
use crate::report::drawing::lettering::width;
use crate::report::drawing::sheet::Sheet;

/// Height of one row of dimensions below the drawing.
const ROW: f64 = 26.0;
/// Height of the row with scale bar and key.
const LAST: f64 = 40.0;

/// Heights over the sill, measured along one line.
pub(super) fn heights(sheet: &mut Sheet, subject: &Subject<'_>, frame: &Frame) {
    let heights = super::levels::heights(subject);
    let Some((_, highest)) = heights.first() else {
        return;
    };
    let x = LEFT - 6.0;
    let top = frame.up(highest.value).max(TOP);
    sheet.line("measure", (x, frame.up(0.0)), (x, top));
    let ticks = heights.iter().map(|(_, height)| height.value);
    for height in ticks.chain([0.0]).filter(|height| *height <= frame.high) {
        let at = frame.up(height);
        sheet.line("measure", (x - 4.0, at), (x + 4.0, at));
    }
    let column = Column {
        edge: x - 4.0,
        text: LEFT - 18.0,
        room: LEFT - 20.0,
        between: (TOP, frame.bottom()),
    };
    column.draw(sheet, &heights_in_words(subject, frame));
}

/// Dimensions below the drawing.
pub(super) struct Rows {
    measures: Vec<Vec<Measure>>,
    key: Key,
}

/// A dimension between two places on the sheet; no text where there is no room for one.
struct Measure {
    from: f64,
    to: f64,
    text: Option<String>,
}

impl Rows {
    pub(super) fn of(subject: &Subject<'_>, front: &Front, frame: &Frame) -> Self {
        let mut rows = vec![clear_widths(subject, front, frame)];
        if front.legs.len() > 1 {
            rows.push(legs(subject, front, frame));
        }
        rows.push(whole(subject, front, frame));
        rows.retain(|row| !row.is_empty());
        Self {
            measures: rows,
            key: Key::of(subject.units, front),
        }
    }

    #[allow(clippy::cast_precision_loss)] // three rows
    pub(super) fn height(&self) -> f64 {
        self.measures.len() as f64 * ROW + LAST
    }

    pub(super) fn draw(&self, sheet: &mut Sheet, frame: &Frame) {
        let mut y = frame.bottom() + ROW - 4.0;
        for row in &self.measures {
            for measure in row {
                let text = measure.text.as_deref();
                sheet.dimension_across((measure.from, y), measure.to, text.unwrap_or_default());
            }
            y += ROW;
        }
        self.key.draw(sheet, frame, y);
    }
}

/// The clear width of each span, or once for a leg where there is no room.
fn clear_widths(subject: &Subject<'_>, front: &Front, frame: &Frame) -> Vec<Measure> {
    let Some(design) = subject.design else {
        return Vec::new();
    };
    let mut row = Vec::new();
    for (number, planned) in design.legs.iter().enumerate() {
        let spans: Vec<(f64, f64)> = front
            .spans
            .iter()
            .filter(|(leg, _)| *leg == number)
            .map(|(_, (from, to))| (frame.across(*from), frame.across(*to)))
            .collect();
        let (Some(first), Some(clear)) = (spans.first(), planned.leg.spans.first()) else {
            continue;
        };
        let each = subject.units.dimension(clear.clear);
        let text = if spans.len() == 1 {
            format!("{each} clear")
        } else {
            each.clone()
        };
        let fits = spans.len() == 1 && design.legs.len() == 1
            || (frame.left_out.is_none() && width(&text, 12.0) + 6.0 < first.1 - first.0);
        if fits {
            row.extend(spans.iter().map(|(from, to)| Measure {
                from: *from,
                to: *to,
                text: Some(text.clone()),
            }));
            continue;
        }
        let shown = front
            .spans
            .iter()
            .filter(|(leg, (from, to))| *leg == number && (frame.shows(*from) || frame.shows(*to)));
        row.extend(shown.map(|(_, (from, to))| Measure {
            from: frame.across(*from),
            to: frame.across(*to),
            text: None,
        }));
    }
    row
}

fn legs(subject: &Subject<'_>, front: &Front, frame: &Frame) -> Vec<Measure> {
    let legs = front.legs.iter().zip(subject.legs).enumerate();
    legs.map(|(number, ((from, to), length))| {
        let (from, to) = (frame.across(*from), frame.across(*to));
        let length = subject.units.dimension(*length);
        let long = format!("leg {}: {length}", number + 1);
        let fits = |text: &String| width(text, 12.0) + 6.0 < to - from;
        Measure {
            from,
            to,
            text: Some(long).filter(fits).or(Some(length).filter(fits)),
        }
    })
    .collect()
}

fn whole(subject: &Subject<'_>, front: &Front, frame: &Frame) -> Vec<Measure> {
    if !front.is_stated {
        return Vec::new();
    }
    let length = Length::new::<meter>(front.length);
    let what = if front.legs.len() > 1 {
        "all legs"
    } else {
        "opening"
    };
    vec![Measure {
        from: frame.across(0.0),
        to: frame.across(front.length),
        text: Some(format!("{what} {}", subject.units.dimension(length))),
    }]
}
