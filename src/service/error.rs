//! What goes wrong with a service.

use thiserror::Error;

/// What went wrong with a service; the address is shown without its keys.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum ServiceError {
    /// No connection, a broken one, or an answer that ends early.
    #[error("{address}: {problem} (tried {})", times(*tries))]
    Broken {
        /// The address.
        address: String,
        /// What happened the last time.
        problem: String,
        /// How often it was tried.
        tries: u32,
    },
    /// The server refuses.
    #[error("{address}: the server answers {status}{told}")]
    Refused {
        /// The address.
        address: String,
        /// Its status with its name.
        status: String,
        /// What it says of it, behind a colon.
        told: String,
    },
    /// The server is busy, and stays so.
    #[error("{address}: the server answers {status} (tried {})", times(*tries))]
    Busy {
        /// The address.
        address: String,
        /// Its status with its name.
        status: String,
        /// How often it was tried.
        tries: u32,
    },
    /// An answer is too large.
    #[error("{address}: the answer is larger than {}", size(*limit))]
    TooLarge {
        /// The address.
        address: String,
        /// The limit.
        limit: u64,
    },
    /// A bound of the whole run is reached.
    #[error("{address}: given up after {spent}, the most that one run may take")]
    Spent {
        /// The address that was asked for last.
        address: String,
        /// The bound.
        spent: String,
    },
    /// A redirect leads where it may not.
    #[error("{address}: {problem}")]
    Led {
        /// The address that was asked for.
        address: String,
        /// Where it leads, and why that is refused.
        problem: String,
    },
    /// Nothing is fetched, and nothing is kept.
    #[error(
        "{address}: no answer is kept: answers are kept for exactly the places that were asked for; fetch it once without --offline, or make a file that serves many places with sillmark collect"
    )]
    NotKept {
        /// The address.
        address: String,
    },
    /// An answer that cannot be kept.
    #[error("{address}: its answer cannot be kept: {problem}")]
    CannotKeep {
        /// The address.
        address: String,
        /// What the system says.
        problem: String,
    },
    /// An answer that is not what the service should give.
    #[error("{address}: {problem}")]
    Unfit {
        /// The address.
        address: String,
        /// What is wrong with it.
        problem: String,
    },
    /// A file of which the server gives no parts.
    #[error(
        "{address}: the server gives no parts of a file (it answers {status} to a range of bytes); accepted: a server that does, or the file itself: download it and name it by its path"
    )]
    NoParts {
        /// The address.
        address: String,
        /// What it answers instead.
        status: String,
    },
    /// A file that changes while it is read.
    #[error("{address}: the file changed while it was read; read it again")]
    Changed {
        /// The address.
        address: String,
    },
    /// Features that are missing, or that came twice.
    #[error("{address}: layer {layer:?} did not come whole: {problem}; none of it is used")]
    NotWhole {
        /// The address.
        address: String,
        /// The layer.
        layer: String,
        /// What came, and what should have.
        problem: String,
    },
    /// A service without a layer of features.
    #[error("{address}: has no layers of features")]
    NoLayers {
        /// The address.
        address: String,
    },
    /// A layer that is not there.
    #[error("{address}: has no layer {layer:?}; it has: {}", listed(layers))]
    NoLayer {
        /// The address.
        address: String,
        /// What the user names.
        layer: String,
        /// The layers that there are.
        layers: Vec<String>,
    },
    /// Several layers that could be meant.
    #[error(
        "{address}: which layer? name it behind a #, as in {address}#LAYER; it has: {}",
        listed(layers)
    )]
    WhichLayer {
        /// The address.
        address: String,
        /// The layers that there are.
        layers: Vec<String>,
    },
    /// A layer whose name others have too.
    #[error(
        "{address}: {} layers are called {layer:?}; name one by its number: {}",
        numeral(numbers.len()),
        listed(numbers)
    )]
    SameName {
        /// The address.
        address: String,
        /// What the user names.
        layer: String,
        /// The numbers of the layers, each behind a #.
        numbers: Vec<String>,
    },
    /// A group of layers in the place of one.
    #[error(
        "{address}: {layer:?} is a group of layers, with no features of its own; name one of its \
         layers: {}",
        listed(layers)
    )]
    Group {
        /// The address.
        address: String,
        /// The group.
        layer: String,
        /// Its layers, as far as the service says.
        layers: Vec<String>,
    },
    /// A layer without an attribute that it is read for.
    #[error(
        "{address}: layer {layer:?} has no attribute {needed:?}; it has: {}",
        listed(attributes)
    )]
    NoAttribute {
        /// The address.
        address: String,
        /// The layer.
        layer: String,
        /// The attribute, or those of which one would do.
        needed: String,
        /// The attributes that there are.
        attributes: Vec<String>,
    },
    /// The client cannot be made.
    #[error("no request can be made: {0}")]
    Client(String),
}

fn numeral(count: usize) -> String {
    match count {
        2 => "two".to_owned(),
        3 => "three".to_owned(),
        count => count.to_string(),
    }
}

fn times(tries: u32) -> String {
    match tries {
        1 => "once".to_owned(),
        more => format!("{more} times"),
    }
}

/// A number of bytes, in MiB or KiB where it is a whole one.
fn size(bytes: u64) -> String {
    match bytes {
        0 => "0 bytes".to_owned(),
        _ if bytes.is_multiple_of(1 << 20) => format!("{} MiB", bytes >> 20),
        _ if bytes.is_multiple_of(1 << 10) => format!("{} KiB", bytes >> 10),
        _ => format!("{bytes} bytes"),
    }
}

/// Names in a row; of very many the first. They come from elsewhere, and may not steer a
/// terminal.
fn listed(names: &[String]) -> String {
    const MOST: usize = 60;
    let shown = names[..names.len().min(MOST)].join(", ");
    let shown = shown.replace(char::is_control, " ");
    match names.len() {
        0 => "none".to_owned(),
        count if count > MOST => format!("{shown} and {} more", count - MOST),
        _ => shown,
    }
}
