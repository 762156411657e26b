//! What is refused of `[floor]` and `[jamb]`.

use super::conditions::refused;

#[test]
fn concrete_that_cannot_be() {
    let cases: Vec<(String, &str)> = [
        ("strength = 4000", ""),
        ("strength = \"25 psi\"", ""),
        ("strength = \"4000 MPa\"", ""),
        ("thickness = \"8 mm\"", ""),
        ("lambda = 0.5", ""),
        ("lambda = \"light\"", ""),
        ("cracking = \"no\"", ""),
        ("edge_reinforcement = \"bar\"", ""),
        ("supplementary = true", ""),
        ("thickness = \"6 in\"\nembedment = \"6 in\"", ""),
    ]
    .map(|(line, expected)| (format!("material = \"concrete\"\n{line}"), expected))
    .into();
    let cases: Vec<(&str, &str)> = cases
        .iter()
        .map(|(line, expected)| (&**line, *expected))
        .collect();
    refused("floor", &cases);
}

#[test]
fn values_of_concrete_in_another_material() {
    refused(
        "jamb",
        &[
            ("material = \"brick\"", ""),
            ("material = \"masonry\"\nstrength = \"10 MPa\"", ""),
            ("material = \"masonry\"\nthickness = \"8 in\"", ""),
            ("material = \"masonry\"\nlambda = 1", ""),
            ("material = \"masonry\"\ncracking = \"cracked\"", ""),
            ("material = \"masonry\"\nedge_reinforcement = \"none\"", ""),
            ("material = \"masonry\"\nsupplementary = \"absent\"", ""),
            ("strength = \"4000 psi\"", ""),
        ],
    );
}

#[test]
fn values_of_another_kind_of_anchor() {
    refused(
        "floor",
        &[
            ("anchors = \"hooked bolt\"", ""),
            ("anchors = \"headed stud\"\ncategory = 1", ""),
            ("anchors = \"headed bolt\"\npullout = \"12 kN\"", ""),
            ("anchors = \"screw\"\nhead_bearing = \"0.3 in2\"", ""),
            ("anchors = \"undercut\"\nbond = \"12 kN\"", ""),
            (
                "anchors = \"torque-controlled\"\nsleeve_shear = \"9 kN\"",
                "",
            ),
            ("anchors = \"adhesive\"\npullout = \"does not govern\"", ""),
            ("anchors = \"drop-in sleeve\"\nbond = \"12 kN\"", ""),
            ("bond = \"12 kN\"", ""),
            ("sleeve_tension = \"12 kN\"", ""),
            ("head_bearing = \"0.3 in2\"", ""),
        ],
    );
}

#[test]
fn approvals_that_cannot_be() {
    let cases: Vec<(String, &str)> = [
        ("category = 4", ""),
        ("coefficient_cracked = 7.2", ""),
        ("coefficient_cracked = 25", ""),
        ("coefficient_uncracked = 35", ""),
        ("coefficient_cracked = 24\ncoefficient_uncracked = 17", ""),
        ("critical_edge = \"0 in\"", ""),
        ("pullout = \"governs\"", ""),
        ("pullout = \"0 kN\"", ""),
        ("sleeve_tension = \"12 kg\"", ""),
        ("sleeve_shear = \"0 lb\"", ""),
    ]
    .map(|(line, expected)| (format!("anchors = \"drop-in sleeve\"\n{line}"), expected))
    .into();
    let cases: Vec<(&str, &str)> = cases
        .iter()
        .map(|(line, expected)| (&**line, *expected))
        .collect();
    refused("floor", &cases);
    refused("jamb", &[("anchors = \"adhesive\"\nbond = \"0 kN\"", "")]);
}

#[test]
fn heads_steel_bedding_and_embedment_that_cannot_be() {
    refused(
        "floor",
        &[
            ("anchors = \"headed bolt\"\nhead_bearing = \"0.3 in\"", ""),
            ("anchors = \"headed bolt\"\nhead_bearing = \"0 mm2\"", ""),
            ("embedment = \"5 mm\"", ""),
            ("steel_area = \"84.3 m2\"", ""),
            ("steel_ultimate = \"58 psi\"", ""),
            ("steel_ultimate = \"36 ksi\"\nsteel_yield = \"58 ksi\"", ""),
            ("steel = \"mild\"", ""),
            ("bedding = \"grout\"", ""),
        ],
    );
}

#[test]
fn edges_that_cannot_be() {
    refused(
        "jamb",
        &[
            ("edge_dry = 8", ""),
            ("edge_water = \"near\"", ""),
            ("edge_left = \"0 in\"", ""),
            ("edge_right = \"-8 in\"", ""),
            ("edge_up = \"8 in\"", ""),
        ],
    );
}
