//! A service that is asked through proxies, and what it should answer.

use std::sync::Arc;
use std::time::Duration;

use geo::orient::{Direction, Orient as _};
use geo::{Geometry, Rect};
use sillmark::service::{
    Answers, Connection, DegreeBox, Limits, ServedLayer, ServiceError, features_blocking,
};

use crate::service::features::layer;
use crate::service::proxy::{Proxy, Schedule, Upstream};
use crate::service::server::Server;

/// Bounds for a run among faults: short, and pages so small that there are several.
pub(super) const DISTURBED: Limits = Limits {
    connect: Duration::from_secs(2),
    silence: Duration::from_millis(150),
    answer: Duration::from_millis(400),
    bytes: 1 << 22,
    retries: 3,
    pause: Duration::from_millis(1),
    longest_pause: Duration::from_millis(4),
    redirects: 3,
    requests: 500,
    all_bytes: 1 << 26,
    whole: Duration::from_secs(8),
    at_once: 4,
    page: 3,
};

/// Bounds for a run without faults, however busy the machine.
pub(super) const CALM: Limits = Limits {
    silence: Duration::from_secs(20),
    answer: Duration::from_secs(30),
    whole: Duration::from_mins(1),
    ..DISTURBED
};

pub(super) struct Asked {
    pub(super) upstream: Arc<Upstream>,
    layer: &'static str,
    /// How many features are asked for at a time.
    page: usize,
    questions: Vec<Question>,
}

/// Which boxes are asked for, and what is in them.
pub(super) struct Question {
    pub(super) boxes: Vec<DegreeBox>,
    pub(super) right: ServedLayer,
}

impl Asked {
    /// A server with the 49 areas of `../shared/servers`.
    pub(super) fn real(address: &str, layer: &'static str) -> Self {
        Self::new(address, layer, (49, 12), [-123.25, 45.84, -123.15, 45.88])
    }

    /// A server with ten squares in a row.
    pub(super) fn double(server: &Server, layer: &'static str) -> Self {
        Self::new(&server.at(""), layer, (10, 3), [0.0, 0.0, 19.0, 1.0])
    }

    /// One box is asked for, and two that share a part; all features are in them.
    fn new(
        address: &str,
        layer: &'static str,
        (count, page): (usize, usize),
        all: [f64; 4],
    ) -> Self {
        let [left, low, right, high] = all;
        let third = (right - left) / 3.0;
        let mut asked = Self {
            upstream: Arc::new(Upstream::at(address)),
            layer,
            page,
            questions: Vec::new(),
        };
        let proxy = Proxy::start(&asked.upstream, Schedule::NONE);
        let parts = vec![
            degrees([left, low, right - third, high]),
            degrees([left + third, low, right, high]),
        ];
        for boxes in [vec![degrees(all)], parts] {
            let right = asked
                .features(&proxy, &boxes, Answers::Fetched, CALM)
                .unwrap();
            assert_eq!(right.features.len(), count);
            asked.questions.push(Question { boxes, right });
        }
        asked
    }

    pub(super) fn question(&self, seed: u64) -> &Question {
        &self.questions[seed as usize % self.questions.len()]
    }

    /// The layer through a proxy.
    pub(super) fn features(
        &self,
        proxy: &Proxy,
        boxes: &[DegreeBox],
        answers: Answers,
        limits: Limits,
    ) -> Result<ServedLayer, ServiceError> {
        let address = format!("{}{}", proxy.address(), self.layer);
        let limits = Limits {
            page: self.page,
            ..limits
        };
        features(&address, boxes, answers, limits).map(comparable)
    }
}

/// A layer without what may change from run to run: port and date, the order in which features
/// and names came, and which way round rings run (it differs between the forms in which a
/// service gives them).
fn comparable(mut layer: ServedLayer) -> ServedLayer {
    layer.address.clear();
    layer.fetched.clear();
    layer.remarks.clear();
    layer.fields.sort();
    layer.features.sort_by(|one, other| one.id.cmp(&other.id));
    for feature in &mut layer.features {
        feature.geometry = match feature.geometry.take() {
            Some(Geometry::Polygon(polygon)) => Some(polygon.orient(Direction::Default).into()),
            Some(Geometry::MultiPolygon(all)) => Some(all.orient(Direction::Default).into()),
            other => other,
        };
    }
    layer
}

/// A box from its lower left to its upper right corner.
fn degrees([left, low, right, high]: [f64; 4]) -> DegreeBox {
    DegreeBox(Rect::new((left, low), (right, high)))
}

pub(super) fn features(
    address: &str,
    boxes: &[DegreeBox],
    answers: Answers,
    limits: Limits,
) -> Result<ServedLayer, ServiceError> {
    let layer = layer(address);
    let connection = Connection::open(&layer.address, answers, limits)?;
    features_blocking(&connection, &layer, boxes, &[])
}
