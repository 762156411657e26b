//! Planks, posts and spans, the kit's own limits, the wall.

use sillmark::review::{Shifts, Topic};

use super::fixture::{SITE, of_door, reviewed};

#[test]
fn a_span_over_what_the_planks_pass() {
    let site = SITE
        .replace("36 in", "14 ft")
        .replace("reveal = \"6 in\"", "face = \"8 in\"");
    let bay = |fields: &str| {
        let text = format!("[[opening]]\nid = \"door\"\n{fields}");
        reviewed(&site, &text, &Shifts::default())
    };
    let wide = bay("span = \"14 ft\"");
    assert!(
        wide.outcome(Topic::Span).starts_with("falls short by "),
        "{}",
        wide.outcome(Topic::Span)
    );
    assert_eq!(bay("span = \"6 ft\"").outcome(Topic::Span), "holds");
    // Without a span it follows from the posts.
    assert!(
        bay("intermediate_posts = 0")
            .outcome(Topic::Span)
            .starts_with("falls short by ")
    );
    assert_eq!(bay("intermediate_posts = 1").outcome(Topic::Span), "holds");
    assert_eq!(
        bay("intermediate_posts = 0").outcome(Topic::IntermediatePosts),
        "falls short by 1"
    );
    assert_eq!(
        bay("intermediate_posts = 1").outcome(Topic::IntermediatePosts),
        "holds"
    );
    assert_eq!(bay("posts = 2").outcome(Topic::Posts), "falls short by 1");
    assert_eq!(bay("posts = 5").outcome(Topic::Posts), "exceeds by 2");
}

#[test]
fn a_height_over_the_kits_limit() {
    // The demonstration kit is built up to 4 ft.
    assert_eq!(
        of_door("barrier_height = \"4 ft\"").outcome(Topic::KitHeight),
        "holds"
    );
    assert_eq!(
        of_door("barrier_height = \"4 ft 6 in\"").outcome(Topic::KitHeight),
        "falls short by 0.50 ft"
    );
}

#[test]
fn planks_that_do_not_add_up() {
    let stack = |planks: u32| {
        of_door(&format!(
            "barrier_height = \"2.5 ft\"\nplanks = {planks}\nplank_height = \"6 in\""
        ))
    };
    assert_eq!(stack(5).outcome(Topic::PlankStack), "holds");
    assert_eq!(
        stack(4).outcome(Topic::PlankStack),
        "falls short by 0.50 ft"
    );
    assert_eq!(stack(6).outcome(Topic::PlankStack), "exceeds by 0.50 ft");
    assert_eq!(stack(5).outcome(Topic::PlankHeight), "holds");
    let tall = of_door("plank_height = \"8 in\"");
    assert_eq!(tall.outcome(Topic::PlankHeight), "falls short by 2.0 in");
}

#[test]
fn a_wall_over_its_limit() {
    // Unreinforced masonry takes 3 ft.
    assert_eq!(
        of_door("barrier_height = \"3 ft\"").outcome(Topic::WaterOnWall),
        "holds"
    );
    let high = of_door("barrier_height = \"3 ft 6 in\"");
    assert_eq!(high.outcome(Topic::WaterOnWall), "falls short by 0.50 ft");
    assert_eq!(high.codes(Topic::WaterOnWall), [""; 0]);
    // Where the proposal takes the wall for another, the site's counts.
    let other = of_door("barrier_height = \"2 ft\"\nwall = \"reinforced concrete\"");
    assert_eq!(other.codes(Topic::WaterOnWall), ["other-wall"]);
    let same = of_door("wall = \"unreinforced masonry\"");
    assert_eq!(same.codes(Topic::WaterOnWall), [""; 0]);
}

#[test]
fn a_wall_that_only_the_proposal_states() {
    let site = SITE.replace("wall = \"unreinforced masonry\"\n", "");
    let wall = |wall: &str| {
        let text =
            format!("[[opening]]\nid = \"door\"\nbarrier_height = \"2.5 ft\"\nwall = \"{wall}\"");
        reviewed(&site, &text, &Shifts::default())
    };
    assert_eq!(
        wall("unsupported panel").outcome(Topic::WaterOnWall),
        "falls short by 0.50 ft"
    );
    assert_eq!(
        wall("frame").outcome(Topic::WaterOnWall),
        "cannot be checked: what frame takes: a licensed engineer has to say"
    );
}

#[test]
fn a_barrier_that_is_measured_from_the_ground() {
    // The ground lies 2.1 ft below the sill: 4.6 ft over it are 2.5 ft over the sill.
    let ground = "measured_from = \"ground\"\nbarrier_height = \"4.6 ft\"";
    let barrier = of_door(ground);
    assert_eq!(barrier.outcome(Topic::KitHeight), "holds");
    let planks = "planks = 5\nplank_height = \"6 in\"";
    let levels = "sill = \"8.1 ft NAVD88\"\nground = \"6.0 ft NAVD88\"";
    let of = |planks: &str| of_door(&format!("{ground}\n{planks}\n{levels}"));
    assert_eq!(of(planks).outcome(Topic::PlankStack), "holds");
    let four = planks.replace('5', "4");
    assert_eq!(
        of(&four).outcome(Topic::PlankStack),
        "falls short by 0.50 ft"
    );
}
