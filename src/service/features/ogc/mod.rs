//! OGC API - Features: part 1, core (OGC 17-069r4), and part 2, coordinate reference systems
//! (OGC 18-058r1).

mod choice;
mod collection;
mod crs;
mod fields;
mod items;
mod landing;
mod links;
mod page;
mod progress;

use futures_util::{StreamExt as _, TryStreamExt as _, stream};

use self::choice::Chosen;
use self::collection::Collection;
use self::crs::Crs;
use self::items::{Failed, Met};
use super::gathered::{self, Gathered};
use super::inquiry::{Inquiry, unfit};
use super::needed::Needed;
use super::{DegreeBox, LayerAddress, ServedFeature, ServedLayer};
use crate::service::secret::shown;
use crate::service::{Connection, ServiceError};

/// The features of a collection that meet the boxes.
pub(super) async fn features(
    connection: &Connection,
    layer: &LayerAddress,
    boxes: &[DegreeBox],
    needed: Needed<'_>,
) -> Result<ServedLayer, ServiceError> {
    let inquiry = Inquiry::new(connection, &layer.address);
    let named = layer.layer.as_deref();
    let Chosen { collection, fields } =
        landing::find(&inquiry, layer.address.url(), named, needed).await?;
    let name = collection.described.id.clone();
    let address = shown(&collection.items()?);
    let listed = match fields {
        Some(listed) => listed,
        None => fields::listed(&inquiry, &collection, needed).await?,
    };
    if !listed.is_empty() {
        needed.check(&listed, &address, &name)?;
    }
    let (crs, features) = in_one_system(&inquiry, &collection, boxes).await?;
    let features = if crs.is_crs84() {
        features
            .within(boxes, &inquiry)
            .map_err(|problem| not_whole(&collection, problem))?
    } else {
        features.all()
    };
    let fields = gathered::fields(listed, &features, &address)?;
    let (fetched, remarks) = inquiry.ended();
    Ok(ServedLayer {
        name,
        address,
        fetched,
        licence: collection.licence,
        crs: if crs.is_crs84() {
            Crs::crs84().code
        } else {
            crs.code
        },
        fields,
        features,
        remarks,
    })
}

/// The features in the system that they are kept in, or that the user's address asks for; in
/// CRS84 where the service does not give them in it.
async fn in_one_system(
    inquiry: &Inquiry<'_>,
    collection: &Collection,
    boxes: &[DegreeBox],
) -> Result<(Crs, Gathered), ServiceError> {
    let wished = match inquiry.own.value("crs") {
        Some(name) => Some(Crs::read(name).ok_or_else(|| {
            unfit(
                &collection.base,
                format!("the parameter crs is no code of an authority: {name:?}"),
            )
        })?),
        None => collection.stored(),
    };
    let wished = wished.unwrap_or_else(Crs::crs84);
    let told = match in_system(inquiry, collection, boxes, &wished).await {
        Ok(gathered) => return Ok((wished, gathered)),
        Err(Failed::Service(error)) => return Err(error),
        Err(Failed::OtherSystem(told)) => told,
    };
    inquiry.remark(format!(
        "asked for {}, the service {told}; it was asked for longitude and latitude again, which \
         it converts itself",
        wished.code
    ));
    let degrees = Crs::crs84();
    match in_system(inquiry, collection, boxes, &degrees).await {
        Ok(gathered) => Ok((degrees, gathered)),
        Err(Failed::Service(error)) => Err(error),
        Err(Failed::OtherSystem(told)) => Err(unfit(&collection.base, format!("it {told}"))),
    }
}

async fn in_system(
    inquiry: &Inquiry<'_>,
    collection: &Collection,
    boxes: &[DegreeBox],
    crs: &Crs,
) -> Result<Gathered, Failed> {
    let all: Vec<Met> = stream::iter(boxes)
        .map(|part| items::within(inquiry, collection, *part, crs))
        .buffered(inquiry.limits().at_once.max(1))
        .try_collect()
        .await?;
    let untold = all.iter().filter(|met| !met.is_told_whole);
    let untold = untold
        .map(|met| met.features.len())
        .reduce(|one, other| one + other);
    let mut gathered = Gathered::default();
    for feature in all.into_iter().flat_map(|met| met.features) {
        gathered
            .add(feature)
            .map_err(|problem| not_whole(collection, problem))?;
    }
    gathered
        .check_shapes()
        .map_err(|problem| not_whole(collection, problem))?;
    if !crs.is_crs84() && axes_are_swapped(gathered.features(), boxes) {
        let told = "answers with longitude first, where that system has latitude first";
        return Err(Failed::OtherSystem(told.to_owned()));
    }
    if let Some(came) = untold {
        inquiry.remark(format!(
            "the service says neither how many features there are nor that more follow: {came} \
             came"
        ));
    }
    Ok(gathered)
}

fn not_whole(collection: &Collection, problem: String) -> ServiceError {
    ServiceError::NotWhole {
        address: shown(&collection.base),
        layer: collection.described.id.clone(),
        problem,
    }
}

/// Whether features lie where they were asked for if their first number is a longitude, and
/// none does if it is a latitude. The systems of the `EPSG` that have degrees have latitudes
/// first; plane coordinates lie in the boxes either way or neither.
fn axes_are_swapped(features: &[ServedFeature], boxes: &[DegreeBox]) -> bool {
    let meets = |swapped: bool| {
        features
            .iter()
            .filter_map(|feature| feature.geometry.as_ref())
            .any(|geometry| boxes.iter().any(|part| part.meets(geometry, swapped)))
    };
    meets(false) && !meets(true)
}
