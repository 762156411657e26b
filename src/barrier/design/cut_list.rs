//! What has to be cut and carried.

use crate::barrier::{Kit, Leg, Piece, PlankStack, Post};
use crate::quantity::unit::millimeter;
use crate::quantity::{Length, UnitSystem};

/// Pieces that differ by less than this are cut alike.
const ALIKE_MILLIMETRES: f64 = 0.01;

/// A post to cut: its name, the kit's post and how many.
pub(super) struct PostPiece<'a> {
    pub(super) name: &'static str,
    pub(super) post: &'a Post,
    pub(super) count: u32,
}

/// The planks of all legs by their length, the longest first, and the posts, each as high as
/// the barrier. Plates, anchors, braces and covers are the maker's and not in it.
pub(super) fn cut_list(
    kit: &Kit,
    stack: PlankStack,
    legs: &[Leg],
    posts: &[PostPiece<'_>],
) -> Vec<Piece> {
    let mut lengths: Vec<(Length, u32)> = Vec::new();
    for span in legs.iter().flat_map(|leg| &leg.spans) {
        let alike = |(length, _): &&mut (Length, u32)| {
            (*length - span.cut).abs() < Length::new::<millimeter>(ALIKE_MILLIMETRES)
        };
        match lengths.iter_mut().find(alike) {
            Some((_, count)) => *count += stack.count,
            None => lengths.push((span.cut, stack.count)),
        }
    }
    lengths.sort_by(|one, other| other.0.value.total_cmp(&one.0.value));
    let planks = lengths.into_iter().map(|(length, count)| Piece {
        name: "plank".to_owned(),
        length,
        mass: Some(length * kit.plank.mass_per_length),
        count,
    });
    let posts = posts.iter().map(|piece| Piece {
        name: piece.name.to_owned(),
        length: stack.height,
        mass: Some(stack.height * piece.post.mass_per_length),
        count: piece.count,
    });
    planks
        .chain(posts)
        .filter(|piece| piece.count > 0)
        .collect()
}

impl Piece {
    /// In words: `5 planks of 35.0 in`.
    #[must_use]
    pub fn text(&self, units: UnitSystem) -> String {
        let plural = if self.count == 1 { "" } else { "s" };
        format!(
            "{} {}{plural} of {}",
            self.count,
            self.name,
            units.dimension(self.length)
        )
    }
}
