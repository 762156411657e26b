//! A kit that cannot be is refused, with the field, its value and what would be accepted.

use sillmark::barrier::Kit;

const KIT: &str = include_str!("../../data/kits/demonstration.toml");

/// What the reader says of the demonstration kit with the first `old` replaced; a file, line and
/// field always come first.
fn refusal(old: &str, new: &str) -> String {
    assert!(KIT.contains(old), "the kit has no {old:?}");
    let error = Kit::from_toml("kit.toml", &KIT.replacen(old, new, 1))
        .expect_err(new)
        .to_string();
    let behind = error.strip_prefix("kit.toml, line ").unwrap();
    behind.split_once(": ").unwrap().1.to_owned()
}

fn refuses(old: &str, new: &str, expected: &str) {
    let said = refusal(old, new);
    assert!(said.starts_with(expected), "{new}: {said}");
}

#[test]
fn what_is_missing() {
    refuses("[plank]", "[plan]", "plan: there is no such field here");
    refuses(
        "thickness = \"2 in\"\n",
        "",
        "plank.thickness: it is missing",
    );
    refuses("longest = \"20 ft\"\n", "", "plank.longest: it is missing");
    refuses("area = \"2.156 in2\"\n", "", "plank.area: it is missing");
    refuses(
        "shear_area = \"0.656 in2\"",
        "",
        "plank.shear_area: it is missing",
    );
    refuses(
        "bottom_seal = \"0.25 in\"\n",
        "",
        "plank.bottom_seal: it is missing",
    );
    refuses(
        "material = \"6063-T6 (ADM)\"\n",
        "",
        "plank.material: it is missing",
    );
    refuses(
        "welded = false",
        "",
        "intermediate_post.welded: it is missing",
    );
    refuses(
        "row_spacing = \"11 in\"\n",
        "",
        "anchors.row_spacing: it is missing",
    );
    refuses("foot = \"3 ft\"\n", "", "brace.foot: it is missing");
}

#[test]
fn a_kit_without_a_post_at_the_wall() {
    let from = KIT.find("# A channel in the reveal").unwrap();
    let to = KIT.find("# Stands free").unwrap();
    let text = format!("{}{}", &KIT[..from], &KIT[to..]);
    let error = Kit::from_toml("kit.toml", &text).unwrap_err().to_string();
    assert_eq!(
        error,
        "kit.toml, line 1: inside_post: it is missing; accepted: [inside_post] or [outside_post]: without either no plank can end at a wall"
    );
}

#[test]
fn dimensions_that_cannot_be() {
    refuses(
        "cover_height = \"6 in\"",
        "cover_height = \"0 in\"",
        "plank.cover_height \"0 in\": no plank is that high or that low",
    );
    refuses(
        "longest = \"20 ft\"",
        "longest = \"5 in\"",
        "plank.longest \"5 in\": the longest plank is shorter than it is high; accepted: more than cover_height, 6.0 in (0.152 m)",
    );
    refuses(
        "bottom_seal = \"0.25 in\"",
        "bottom_seal = \"-1 in\"",
        "plank.bottom_seal \"-1 in\": it is negative",
    );
    refuses(
        "greatest_height = \"4 ft\"",
        "greatest_height = \"5 in\"",
        "greatest_height \"5 in\": it is below one plank",
    );
    refuses(
        "clearance = \"0.25 in\"",
        "clearance = \"1.75 in\"",
        "inside_post.clearance \"1.75 in\": no plank reaches into a pocket that leaves so much",
    );
    refuses(
        "pocket = \"1.75 in\"",
        "pocket = \"2.5 in\"",
        "inside_post.pocket \"2.5 in\": it reaches through the post",
    );
    refuses(
        "depth = \"3 in\"\npocket = \"1.5 in\"",
        "depth = \"2.2 in\"\npocket = \"1.5 in\"",
        "intermediate_post.second_moment \"2.501 in4\": the area cannot lie that far",
    );
    refuses(
        "needs = \"3 in\"",
        "needs = \"0 in\"",
        "inside_post.needs \"0 in\": it has to be more than nothing",
    );
}

#[test]
fn a_post_that_is_thinner_than_the_plank() {
    let old = KIT.find("[plank]").unwrap();
    let (head, kit) = KIT.split_at(old);
    // A solid bar as a plank, as thick as the channel is deep.
    let plank = "[plank]\ncover_height = \"6 in\"\nthickness = \"3 in\"\nlongest = \"20 ft\"\nmaterial = \"6063-T6 (ADM)\"\narea = \"18 in2\"\nsecond_moment = \"13.5 in4\"\nelastic_modulus = \"9 in3\"\nshear_area = \"18 in2\"\nmass_per_length = \"22 lb/ft\"\nbottom_seal = \"0 in\"\n";
    let posts = &kit[kit.find("[inside_post]").unwrap()..];
    let error = Kit::from_toml("kit.toml", &format!("{head}{plank}{posts}")).unwrap_err();
    assert!(
        error.to_string().ends_with("inside_post.depth \"3 in\": a plank does not fit into the post; accepted: more than plank.thickness, 3.0 in (0.076 m)"),
        "{error}"
    );
}

#[test]
fn section_properties_that_contradict_each_other() {
    refuses(
        "area = \"2.156 in2\"",
        "area = \"0 in2\"",
        "plank.area \"0 in2\": it has to be more than nothing",
    );
    // Above area · depth² / 4.
    refuses(
        "second_moment = \"1.488 in4\"",
        "second_moment = \"2.3 in4\"",
        "plank.second_moment \"2.3 in4\": the area cannot lie that far from its axis within the depth of the part; accepted: at most area · depth² / 4, 2.156 in⁴",
    );
    // Above second moment / (depth / 2), and below second moment / depth.
    refuses(
        "elastic_modulus = \"1.488 in3\"",
        "elastic_modulus = \"1.6 in3\"",
        "plank.elastic_modulus \"1.6 in3\": it does not go with second_moment",
    );
    refuses(
        "elastic_modulus = \"1.488 in3\"",
        "elastic_modulus = \"0.7 in3\"",
        "plank.elastic_modulus \"0.7 in3\": it does not go with second_moment",
    );
    refuses(
        "plastic_modulus = \"1.693 in3\"",
        "plastic_modulus = \"1.4 in3\"",
        "plank.plastic_modulus \"1.4 in3\": no section has that ratio",
    );
    refuses(
        "plastic_modulus = \"1.693 in3\"",
        "plastic_modulus = \"3.6 in3\"",
        "plank.plastic_modulus \"3.6 in3\": no section has that ratio",
    );
    refuses(
        "shear_area = \"0.656 in2\"",
        "shear_area = \"2.2 in2\"",
        "plank.shear_area \"2.2 in2\": it is more than the whole area",
    );
    // More metal than a solid post of that width has.
    refuses(
        "width = \"4 in\"",
        "width = \"0.5 in\"",
        "intermediate_post.area \"1.688 in2\": it is more than that of a solid bar",
    );
}

#[test]
fn a_mass_that_is_not_that_of_the_metal() {
    refuses(
        "mass_per_length = \"2.7 lb/ft\"",
        "mass_per_length = \"2.0 lb/ft\"",
        "plank.mass_per_length \"2.0 lb/ft\": it does not go with area and the density of the material; accepted: the metal weighs 2.52 lb/ft (3.76 kg/m)",
    );
    refuses(
        "mass_per_length = \"2.7 lb/ft\"",
        "mass_per_length = \"27 lb/ft\"",
        "plank.mass_per_length \"27 lb/ft\": it does not go with",
    );
}

#[test]
fn materials() {
    refuses(
        "material = \"6063-T6 (ADM)\"",
        "material = \"6063-T6\"",
        "plank.material \"6063-T6\": it is no material of data/materials.toml or of the kit's own [[material]]; accepted: 6063-T5 up to 0.500 in (ADM); ",
    );
    refuses(
        "material = \"6063-T6 (ADM)\"",
        "material = \"6063-T5 up to 0.500 in (ADM)\"",
        "plank.wall_thickness: it is missing; accepted: the thickest wall of the section, within up to 0.500 in (12.7 mm)",
    );
    refuses(
        "material = \"6063-T6 (ADM)\"",
        "material = \"6063-T5 up to 0.500 in (ADM)\"\nwall_thickness = \"0.6 in\"",
        "plank.wall_thickness \"0.6 in\": the strengths of \"6063-T5 up to 0.500 in (ADM)\" do not hold for it",
    );
    refuses(
        "material = \"6063-T6 (ADM)\"",
        "material = \"6063-T6 (ADM)\"\nwelded = true",
        "plank.welded \"true\": the strength of \"6063-T6 (ADM)\" beside a weld is not known; accepted: welded = false, or a [[material]]",
    );
    refuses(
        "welded = false",
        "welded = \"perhaps\"",
        "intermediate_post.welded \"perhaps\": it is not one of the choices",
    );
}

#[test]
fn a_stated_strength_that_is_none() {
    let with = |line: &str| format!("thickness = \"2 in\"\n{line}");
    for (line, expected) in [
        (
            "section_class = 4",
            "plank.section_class \"4\": the effective section of a class 4 section is not computed here",
        ),
        (
            "section_class = 5",
            "plank.section_class \"5\": it is not one of the choices",
        ),
        (
            "buckling_stress = \"0 ksi\"",
            "plank.buckling_stress \"0 ksi\": it has to be more than nothing",
        ),
        (
            "allowable_moment = \"1500 lb\"",
            "plank.allowable_moment \"1500 lb\": \"lb\" is not a unit of moment",
        ),
    ] {
        refuses(
            "thickness = \"2 in\"\n",
            &with(&format!("{line}\n")),
            expected,
        );
    }
}

#[test]
fn plates_and_anchors_that_do_not_fit() {
    refuses(
        "along = \"10 in\"",
        "along = \"3 in\"",
        "intermediate_post.base_plate: it is smaller than the post; accepted: along at least width, 4.0 in (0.102 m), and across at least depth",
    );
    refuses(
        "across = \"14 in\"",
        "across = \"2.5 in\"",
        "intermediate_post.base_plate: it is smaller than the post",
    );
    refuses(
        "anchor_spacing = \"7 in\"",
        "anchor_spacing = \"9.5 in\"",
        "intermediate_post.anchors: the pattern reaches beyond the plate along",
    );
    refuses(
        "row_spacing = \"11 in\"",
        "row_spacing = \"13.5 in\"",
        "intermediate_post.anchors: the pattern reaches beyond the plate across; accepted: rows and spacings that fit, with the diameter, in 14.0 in (0.356 m)",
    );
    refuses(
        "rows = 2",
        "rows = 0",
        "anchors.rows \"0\": it is not such a number; accepted: a whole number from 1 to 20",
    );
    refuses(
        "rows = 2",
        "rows = 2.5",
        "anchors.rows \"2.5\": it is not such a number",
    );
    refuses(
        "rows = 2",
        "rows = 1",
        "anchors.row_spacing \"11 in\": there is only one, so there is no spacing",
    );
    refuses(
        "needs = \"3 in\"",
        "anchors = { diameter = \"0.5 in\", rows = 1, per_row = 1 }",
        "inside_post.anchors: there is no plate for them",
    );
}

#[test]
fn brace_and_seal() {
    refuses(
        "attachment = \"2/3\"",
        "attachment = \"3/2\"",
        "brace.attachment \"3/2\": it is not between 0 and 1",
    );
    refuses(
        "attachment = \"2/3\"",
        "attachment = \"0\"",
        "brace.attachment \"0\": it has to be more than nothing",
    );
    refuses(
        "capacity = \"3000 lb\"",
        "capacity = \"3000\"",
        "brace.capacity \"3000\": it has no unit",
    );
    refuses(
        "leakage = \"0.5 gal/h/ft\"",
        "leakage = \"-0.5 gal/h/ft\"",
        "seal.leakage \"-0.5 gal/h/ft\": it is negative",
    );
    refuses(
        "tested_depth = \"3 ft\"",
        "tested_depth = \"0 ft\"",
        "seal.tested_depth \"0 ft\": it has to be more than nothing",
    );
}

#[test]
fn profiles_that_disagree_with_the_stated_properties() {
    refuses(
        "area = \"2.156 in2\"",
        "area = \"2.21 in2\"",
        "plank.area \"2.21 in2\": the rectangles of the profile disagree; accepted: what the profile sums to, 2.156 in² (1391 mm²), to 2 %",
    );
    refuses(
        "second_moment = \"1.488 in4\"",
        "second_moment = \"1.53 in4\"",
        "plank.second_moment \"1.53 in4\": the rectangles of the profile disagree; accepted: what the profile sums to, 1.488 in⁴ (61.93 cm⁴), to 2 %",
    );
    refuses(
        "elastic_modulus = \"1.488 in3\"",
        "elastic_modulus = \"1.45 in3\"",
        "plank.elastic_modulus \"1.45 in3\": the rectangles of the profile disagree",
    );
    refuses(
        "plastic_modulus = \"1.693 in3\"",
        "plastic_modulus = \"1.73 in3\"",
        "plank.plastic_modulus \"1.73 in3\": the rectangles of the profile disagree",
    );
    // The upper hole reaches into the web, over the lower one.
    refuses(
        "y = \"3.0625 in\"",
        "y = \"2.9 in\"",
        "plank.profile: rectangles 2 and 3 overlap",
    );
    refuses(
        "y = \"3.0625 in\"",
        "y = \"3.4 in\"",
        "plank.profile: hole 3 is not wholly within the metal",
    );
    refuses(
        "x = \"0 in\", y = \"0 in\", width = \"2 in\"",
        "x = \"0 in\", y = \"0 in\", width = \"2.1 in\"",
        "plank.profile: it is 2.1 in deep in the direction of the water and the part 2.0 in",
    );
    refuses(
        "x = \"0 in\", y = \"0 in\", width = \"2 in\"",
        "x = \"0\", y = \"0 in\", width = \"2 in\"",
        "profile.x \"0\": it has no unit",
    );
}
