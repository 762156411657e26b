//! What anchors are set in, and how, as far as somebody states it.

use crate::anchor::{BaseMaterial, Bedding, Edges, Fixing, Steel};
use crate::quantity::Length;

/// What the anchors under base plates (`[floor]`) or up the jambs (`[jamb]`) are set in.
///
/// Where the anchors stand relative to each other is the kit's; what they are set in, how they
/// are fixed and how far the edges are is the site's. The `[opening.floor]` and `[opening.jamb]`
/// of an opening stand in the place of the site's as a whole, not field by field.
///
/// ```
/// use sillmark::anchor::{BaseMaterial, Edge};
/// use sillmark::site::Conditions;
/// let text = r#"
/// [floor]
/// material = "concrete"
/// strength = "4000 psi"
/// anchors = "headed bolt"
/// embedment = "5 in"
/// edge_dry = "far"
/// "#;
/// let floor = Conditions::from_toml("yard.toml", text)?.floor.expect("it is stated");
/// assert!(matches!(floor.base, BaseMaterial::Concrete(_)));
/// assert_eq!((floor.edges.y_plus, floor.edges.y_minus), (Edge::Far, Edge::Unstated));
/// // A value of another kind of anchor is refused by name.
/// let error = Conditions::from_toml("yard.toml", &format!("{text}pullout = \"12 kN\"\n"));
/// assert_eq!(
///     error.unwrap_err().to_string(),
///     "yard.toml, line 8: floor.pullout \"12 kN\": no such value belongs to anchors = \
///      \"headed bolt\"; accepted: with these anchors head_bearing"
/// );
/// # Ok::<(), sillmark::statement::StatementError>(())
/// ```
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
    /// What lies between plate and base; a grout pad, which claims less, where nobody says.
    pub bedding: Bedding,
    /// How far the edges are beyond the outermost anchors: x runs along the wall to the right
    /// as seen from the dry side (`edge_left` is x-, `edge_right` x+), y from the water side to
    /// the dry side (`edge_water` is y-, `edge_dry` y+). An edge that nobody stated is unstated,
    /// never far.
    pub edges: Edges,
}
