//! GeoServices REST (the specification of 2010, and what services add to it): layers behind
//! `FeatureServer` and `MapServer`.

mod answer;
mod by_ids;
mod by_offset;
mod choice;
mod dates;
mod ids;
mod inner_position;
mod layer;
mod page;
mod query;
mod rings;
mod service;
mod shape;
mod target;

use futures_util::{StreamExt as _, TryStreamExt as _, stream};
use reqwest::Url;

use self::ids::Met;
use self::layer::Layer;
use self::page::Asking;
use self::target::Target;
use super::gathered::{self, Gathered};
use super::inquiry::Inquiry;
use super::needed::Needed;
use super::{DegreeBox, LayerAddress, ServedLayer};
use crate::service::secret::shown;
use crate::service::{Connection, ServiceError};

/// Whether an address is one of GeoServices REST.
pub(super) fn is_meant(url: &Url) -> bool {
    Target::is_meant(url)
}

/// The features of a layer that meet the boxes, in degrees.
pub(super) async fn features(
    connection: &Connection,
    layer: &LayerAddress,
    boxes: &[DegreeBox],
    needed: Needed<'_>,
) -> Result<ServedLayer, ServiceError> {
    let inquiry = Inquiry::new(connection, &layer.address);
    let target = Target::read(layer.address.url())?;
    let layer = service::find(&inquiry, &target, layer.layer.as_deref(), needed).await?;
    if let Some(stored) = layer.stored.filter(|stored| *stored != 4326) {
        inquiry.remark(format!(
            "the layer is kept in the coordinate reference system {stored}; the service converts \
             it to longitude and latitude on WGS 84 itself"
        ));
    }
    let gathered = gather(&Asking::new(&inquiry, &layer), boxes).await?;
    let features = gathered
        .within(boxes, &inquiry)
        .map_err(|problem| not_whole(&layer, problem))?;
    let (fetched, remarks) = inquiry.ended();
    Ok(ServedLayer {
        address: shown(&layer.url),
        fetched,
        crs: "OGC:CRS84".to_owned(),
        fields: gathered::fields(layer.names(), &features, &shown(&layer.url))?,
        name: layer.name,
        licence: layer.licence,
        features,
        remarks,
    })
}

async fn gather(asking: &Asking<'_>, boxes: &[DegreeBox]) -> Result<Gathered, ServiceError> {
    let (inquiry, layer) = (asking.inquiry, asking.layer);
    let limits = inquiry.limits();
    let most = layer.most.map_or(limits.page, |most| most.min(limits.page));
    let met: Vec<Met> = stream::iter(boxes)
        .map(|part| ids::within(inquiry, layer, *part))
        .buffered(limits.at_once.max(1))
        .try_collect()
        .await?;
    let listed = met.iter().filter_map(|met| met.ids.as_deref());
    let mut ids: Vec<i64> = listed.flatten().copied().collect();
    ids.sort_unstable();
    ids.dedup();
    let mut all = by_ids::features(asking, &ids, most).await?;
    for (part, met) in boxes.iter().zip(&met) {
        if met.ids.is_none() {
            all.extend(by_offset::features(asking, *part, met.count, most).await?);
        }
    }
    let mut gathered = Gathered::default();
    for feature in all {
        gathered
            .add(feature)
            .map_err(|problem| not_whole(layer, problem))?;
    }
    gathered
        .check_shapes()
        .map_err(|problem| not_whole(layer, problem))?;
    Ok(gathered)
}

fn not_whole(layer: &Layer, problem: String) -> ServiceError {
    ServiceError::NotWhole {
        address: shown(&layer.url),
        layer: layer.name.clone(),
        problem,
    }
}
