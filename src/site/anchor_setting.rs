//! What anchors are set in, and how, as far as somebody states it.

use crate::anchor::{BaseMaterial, Bedding, Edges, Fixing, Steel};
use crate::quantity::Length;

/// What the anchors under base plates (`[floor]`) or up the jambs (`[jamb]`) are set in.
///
/// Where the anchors stand relative to each other is the kit's; what they are set in, how they
/// are fixed and how far the edges are is the site's.
#[derive(Clone, Debug, PartialEq)]
pub struct AnchorSetting {
    /// Concrete, masonry, or not stated.
    pub base: BaseMaterial,
    /// How the anchors are fixed; `None` where it is not stated.
    pub fixing: Option<Fixing>,
    /// Effective embedment.
    pub embedment: Option<Length>,
    /// Steel of an anchor.
    pub steel: Steel,
    /// What lies between plate and base.
    pub bedding: Bedding,
    /// How far the edges are beyond the outermost anchors: x runs along the wall to the right
    /// as seen from the dry side, y from the water side to the dry side.
    pub edges: Edges,
}
