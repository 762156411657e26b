//! Kits that lack parts, and kits of other materials.

use super::{design, feet, inches, kit, on_face, opening, rules, rules_of};
use sillmark::barrier::{DesignError, Kit, Posts, Shortfall, design_barrier, materials};

/// The kit in aluminium of EN 1999.
pub(super) fn european() -> Kit {
    let known = materials().unwrap();
    let alloy = known
        .iter()
        .find(|material| material.id == "EN AW-6063 T6 up to 25 mm")
        .unwrap();
    let mut european = kit();
    european.plank.material = alloy.clone();
    let posts = &mut european.posts;
    for post in [
        &mut posts.inside,
        &mut posts.outside,
        &mut posts.intermediate,
        &mut posts.corner,
    ] {
        post.as_mut().unwrap().material = alloy.clone();
    }
    european
}

fn lacks(found: &sillmark::barrier::BarrierDesign, wanted: &str) -> bool {
    found
        .shortfalls
        .iter()
        .any(|shortfall| matches!(shortfall, Shortfall::KitLacks { part, .. } if *part == wanted))
}

#[test]
fn no_post_between() {
    let bare = Kit {
        posts: Posts {
            intermediate: None,
            ..kit().posts
        },
        ..kit()
    };
    let found = design(&opening(feet(14.0), feet(2.5)), &bare);
    assert!(lacks(&found, "intermediate post"));
    assert_eq!(found.spans(), 1);
    assert!(
        found
            .shortfalls
            .iter()
            .any(|shortfall| matches!(shortfall, Shortfall::Fails(_)))
    );
    let found = design(&opening(feet(22.0), feet(0.5)), &bare);
    assert!(
        found
            .shortfalls
            .iter()
            .any(|shortfall| matches!(shortfall, Shortfall::TooLong { .. }))
    );
    assert!(!lacks(
        &design(&opening(inches(36.0), feet(2.5)), &bare),
        "intermediate post"
    ));
}

/// Planks could span it, practice asks for a post, and there is none.
#[test]
fn no_post_where_practice_asks_for_one() {
    let mut bare = Kit {
        posts: Posts {
            intermediate: None,
            ..kit().posts
        },
        ..kit()
    };
    bare.plank.section.second_moment *= 100.0;
    let found = design(&opening(feet(10.5), feet(4.5)), &bare);
    assert!(
        found.legs[0]
            .checks
            .iter()
            .all(sillmark::barrier::Check::holds)
    );
    assert!(lacks(&found, "intermediate post"));
}

#[test]
fn no_outside_post() {
    let bare = Kit {
        posts: Posts {
            outside: None,
            ..kit().posts
        },
        ..kit()
    };
    let found = design(&on_face(opening(inches(36.0), feet(2.5))), &bare);
    assert!(found.shortfalls.iter().any(
        |shortfall| matches!(shortfall, Shortfall::NoMount { too_small } if too_small.is_empty())
    ));
    assert!(found.end_post.is_none());
}

/// Factors of EN 1990 (1.5, no allowable strength) on aluminium of EN 1999 hold; on the
/// material of the ADM, and the other way round, nothing is worked out.
#[test]
fn factors_and_material_of_one_family() {
    let task = opening(feet(14.0), feet(2.5));
    let found = design_barrier(&task, &european(), &rules_of("en1990"), None, None);
    let found = found.unwrap().unwrap();
    assert!(found.checks().all(sillmark::barrier::Check::holds));
    for (kit, rules) in [(kit(), rules_of("en1990")), (european(), rules())] {
        let error = design_barrier(&task, &kit, &rules, None, None).unwrap_err();
        assert!(
            matches!(error, DesignError::OtherResistance { .. }),
            "{error}"
        );
    }
}

/// A post of another family counts where it is used, and nowhere else.
#[test]
fn an_unused_post_of_another_family_does_not_matter() {
    let mixed = Kit {
        posts: Posts {
            intermediate: european().posts.intermediate,
            ..kit().posts
        },
        ..kit()
    };
    let door = opening(inches(36.0), feet(2.5));
    assert!(design_barrier(&door, &mixed, &rules(), None, None).is_ok());
    let garage = opening(feet(14.0), feet(2.5));
    assert!(design_barrier(&garage, &mixed, &rules(), None, None).is_err());
}
