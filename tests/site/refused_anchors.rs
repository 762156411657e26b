//! What is refused of `[floor]` and `[jamb]`.

use super::refused_conditions::refused;

#[test]
fn concrete_that_cannot_be() {
    let cases: Vec<(String, &str)> = [
        ("strength = 4000", "line 3: floor.strength \"4000\": it has no unit; accepted: a stress with its unit, such as \"4000 psi\", \"25 ksi\" or \"170 MPa\""),
        ("strength = \"25 psi\"", "line 3: floor.strength \"25 psi\": no concrete is that weak or that strong; accepted: the specified compressive strength, from 1000 psi (6.9 MPa) to 20000 psi (137.9 MPa), such as \"4000 psi\" or \"25 MPa\""),
        ("strength = \"4000 MPa\"", "line 3: floor.strength \"4000 MPa\": no concrete is that weak or that strong; accepted: the specified compressive strength, from 1000 psi (6.9 MPa) to 20000 psi (137.9 MPa), such as \"4000 psi\" or \"25 MPa\""),
        ("thickness = \"8 mm\"", "line 3: floor.thickness \"8 mm\": no member is that thin or that thick; accepted: the thickness of the concrete along the anchors, from 0.8 in (20 mm) to 32 ft (10 m), such as \"8 in\""),
        ("lambda = 0.5", "line 3: floor.lambda \"0.5\": it is out of range; accepted: a number from 0.75 for lightweight to 1 for normal-weight concrete"),
        ("lambda = \"light\"", "line 3: floor.lambda \"light\": it is not a number; accepted: a number from 0.75 for lightweight to 1 for normal-weight concrete"),
        ("cracking = \"no\"", "line 3: floor.cracking \"no\": it is not one of the choices; accepted: cracked, uncracked"),
        ("edge_reinforcement = \"bar\"", "line 3: floor.edge_reinforcement \"bar\": it is not one of the choices; accepted: none, no. 4 bar or greater, no. 4 bar or greater in stirrups"),
        ("supplementary = true", "line 3: floor.supplementary \"true\": it is not one of the choices; accepted: absent, present"),
        ("thickness = \"6 in\"\nembedment = \"6 in\"", "line 4: floor.embedment \"6 in\": the concrete is no thicker than that; accepted: an embedment that is less than thickness"),
    ]
    .map(|(line, expected)| (format!("material = \"concrete\"\n{line}"), expected))
    .into();
    let cases: Vec<(&str, &str)> = cases
        .iter()
        .map(|(line, expected)| (&**line, *expected))
        .collect();
    refused("[floor]", &cases);
}

#[test]
fn values_of_concrete_in_another_material() {
    refused(
        "[jamb]",
        &[
            (
                "material = \"brick\"",
                "line 2: jamb.material \"brick\": it is not one of the choices; accepted: concrete, masonry",
            ),
            (
                "material = \"masonry\"\nstrength = \"10 MPa\"",
                "line 3: jamb.strength \"10 MPa\": masonry has no such value here: no capacity in it is calculated; accepted: strength with material = \"concrete\"",
            ),
            (
                "material = \"masonry\"\nthickness = \"8 in\"",
                "line 3: jamb.thickness \"8 in\": masonry has no such value here: no capacity in it is calculated; accepted: thickness with material = \"concrete\"",
            ),
            (
                "material = \"masonry\"\nlambda = 1",
                "line 3: jamb.lambda \"1\": masonry has no such value here: no capacity in it is calculated; accepted: lambda with material = \"concrete\"",
            ),
            (
                "material = \"masonry\"\ncracking = \"cracked\"",
                "line 3: jamb.cracking \"cracked\": masonry has no such value here: no capacity in it is calculated; accepted: cracking with material = \"concrete\"",
            ),
            (
                "material = \"masonry\"\nedge_reinforcement = \"none\"",
                "line 3: jamb.edge_reinforcement \"none\": masonry has no such value here: no capacity in it is calculated; accepted: edge_reinforcement with material = \"concrete\"",
            ),
            (
                "material = \"masonry\"\nsupplementary = \"absent\"",
                "line 3: jamb.supplementary \"absent\": masonry has no such value here: no capacity in it is calculated; accepted: supplementary with material = \"concrete\"",
            ),
            (
                "strength = \"4000 psi\"",
                "line 2: jamb.strength \"4000 psi\": it is of concrete, and the material is not stated; accepted: strength with material = \"concrete\"",
            ),
        ],
    );
}

#[test]
fn values_of_another_kind_of_anchor() {
    refused(
        "[floor]",
        &[
            (
                "anchors = \"hooked bolt\"",
                "line 2: floor.anchors \"hooked bolt\": it is not one of the choices; accepted: headed stud, headed bolt, torque-controlled, displacement-controlled, screw, undercut, adhesive, drop-in sleeve",
            ),
            (
                "anchors = \"headed stud\"\ncategory = 1",
                "line 3: floor.category \"1\": no such value belongs to anchors = \"headed stud\"; accepted: with these anchors head_bearing",
            ),
            (
                "anchors = \"headed bolt\"\npullout = \"12 kN\"",
                "line 3: floor.pullout \"12 kN\": no such value belongs to anchors = \"headed bolt\"; accepted: with these anchors head_bearing",
            ),
            (
                "anchors = \"screw\"\nhead_bearing = \"0.3 in2\"",
                "line 3: floor.head_bearing \"0.3 in2\": no such value belongs to anchors = \"screw\"; accepted: with these anchors category, coefficient_cracked, coefficient_uncracked, critical_edge, pullout",
            ),
            (
                "anchors = \"undercut\"\nbond = \"12 kN\"",
                "line 3: floor.bond \"12 kN\": no such value belongs to anchors = \"undercut\"; accepted: with these anchors category, coefficient_cracked, coefficient_uncracked, critical_edge, pullout",
            ),
            (
                "anchors = \"torque-controlled\"\nsleeve_shear = \"9 kN\"",
                "line 3: floor.sleeve_shear \"9 kN\": no such value belongs to anchors = \"torque-controlled\"; accepted: with these anchors category, coefficient_cracked, coefficient_uncracked, critical_edge, pullout",
            ),
            (
                "anchors = \"adhesive\"\npullout = \"does not govern\"",
                "line 3: floor.pullout \"does not govern\": no such value belongs to anchors = \"adhesive\"; accepted: with these anchors category, coefficient_cracked, coefficient_uncracked, critical_edge, bond",
            ),
            (
                "anchors = \"drop-in sleeve\"\nbond = \"12 kN\"",
                "line 3: floor.bond \"12 kN\": no such value belongs to anchors = \"drop-in sleeve\"; accepted: with these anchors category, coefficient_cracked, coefficient_uncracked, critical_edge, pullout, sleeve_tension, sleeve_shear",
            ),
            (
                "bond = \"12 kN\"",
                "line 2: floor.bond \"12 kN\": it belongs to some kinds of anchor, and anchors is not stated; accepted: bond with anchors = \"adhesive\"",
            ),
            (
                "sleeve_tension = \"12 kN\"",
                "line 2: floor.sleeve_tension \"12 kN\": it belongs to some kinds of anchor, and anchors is not stated; accepted: sleeve_tension with anchors = \"drop-in sleeve\"",
            ),
            (
                "head_bearing = \"0.3 in2\"",
                "line 2: floor.head_bearing \"0.3 in2\": it belongs to some kinds of anchor, and anchors is not stated; accepted: head_bearing with anchors = \"headed stud\", \"headed bolt\"",
            ),
        ],
    );
}

#[test]
fn approvals_that_cannot_be() {
    let cases: Vec<(String, &str)> = [
        ("category = 4", "line 3: floor.category \"4\": it is not one of the choices; accepted: 1, 2, 3"),
        ("coefficient_cracked = 7.2", "line 3: floor.coefficient_cracked \"7.2\": it is out of range for a coefficient in inch-pound units; accepted: the approval's coefficient for cracked concrete in inch-pound units, from 14 to 24 (2.41 times the one in SI units)"),
        ("coefficient_cracked = 25", "line 3: floor.coefficient_cracked \"25\": it is out of range for a coefficient in inch-pound units; accepted: the approval's coefficient for cracked concrete in inch-pound units, from 14 to 24 (2.41 times the one in SI units)"),
        ("coefficient_uncracked = 35", "line 3: floor.coefficient_uncracked \"35\": it is out of range for a coefficient in inch-pound units; accepted: the approval's coefficient for uncracked concrete in inch-pound units, from 14 to 34 (2.41 times the one in SI units)"),
        ("coefficient_cracked = 24\ncoefficient_uncracked = 17", "line 4: floor.coefficient_uncracked \"17\": it is less than coefficient_cracked: cracks make no concrete hold more; accepted: the two as the approval has them"),
        ("critical_edge = \"0 in\"", "line 3: floor.critical_edge \"0 in\": no edge distance is that small or that large; accepted: the approval's critical edge distance, from 0.4 in (10 mm) to 32 ft (10 m), such as \"8 in\""),
        ("pullout = \"governs\"", "line 3: floor.pullout \"governs\": it does not begin with a number; accepted: the approval's pullout strength of one anchor, such as \"3200 lb\" or \"12 kN\", or \"does not govern\""),
        ("pullout = \"0 kN\"", "line 3: floor.pullout \"0 kN\": no anchor is that weak or that strong; accepted: the approval's pullout strength of one anchor, such as \"3200 lb\" or \"12 kN\", or \"does not govern\""),
        ("sleeve_tension = \"12 kg\"", "line 3: floor.sleeve_tension \"12 kg\": \"kg\" is not a unit of force (those are lb, kip, N, kN); accepted: a force with its unit, such as \"1200 lb\", \"500 N\" or \"5 kN\""),
        ("sleeve_shear = \"0 lb\"", "line 3: floor.sleeve_shear \"0 lb\": no anchor is that weak or that strong; accepted: the approval's nominal strength, from 23 lb (0.1 kN) to 2200 kip (10 MN), such as \"3200 lb\" or \"12 kN\""),
    ]
    .map(|(line, expected)| (format!("anchors = \"drop-in sleeve\"\n{line}"), expected))
    .into();
    let cases: Vec<(&str, &str)> = cases
        .iter()
        .map(|(line, expected)| (&**line, *expected))
        .collect();
    refused("[floor]", &cases);
    refused(
        "[jamb]",
        &[(
            "anchors = \"adhesive\"\nbond = \"0 kN\"",
            "line 3: jamb.bond \"0 kN\": no anchor is that weak or that strong; accepted: the approval's nominal strength, from 23 lb (0.1 kN) to 2200 kip (10 MN), such as \"3200 lb\" or \"12 kN\"",
        )],
    );
}

#[test]
fn heads_steel_bedding_and_embedment_that_cannot_be() {
    refused(
        "[floor]",
        &[
            (
                "anchors = \"headed bolt\"\nhead_bearing = \"0.3 in\"",
                "line 3: floor.head_bearing \"0.3 in\": \"in\" is not a unit of area (those are in2, ft2, mm2, cm2, m2); accepted: an area with its unit, such as \"2.16 in2\", \"1400 mm2\" or \"600 ft2\"",
            ),
            (
                "anchors = \"headed bolt\"\nhead_bearing = \"0 mm2\"",
                "line 3: floor.head_bearing \"0 mm2\": no anchor's head bears on that little or that much; accepted: the net bearing area of the head, from 5 mm2 (0.008 in2) to 100 cm2 (15.5 in2), such as \"0.291 in2\"",
            ),
            (
                "embedment = \"5 mm\"",
                "line 2: floor.embedment \"5 mm\": no anchor is set that shallow or that deep; accepted: the effective embedment, from 0.4 in (10 mm) to 6.5 ft (2 m), such as \"5 in\"",
            ),
            (
                "steel_area = \"84.3 m2\"",
                "line 2: floor.steel_area \"84.3 m2\": no anchor is that thin or that thick; accepted: the effective area of one anchor, from 5 mm2 (0.008 in2) to 100 cm2 (15.5 in2), such as \"0.142 in2\"",
            ),
            (
                "steel_ultimate = \"58 psi\"",
                "line 2: floor.steel_ultimate \"58 psi\": no steel is that weak or that strong; accepted: the specified strength of the steel, from 14.6 ksi (100 MPa) to 290 ksi (2000 MPa), such as \"58 ksi\" or \"400 MPa\"",
            ),
            (
                "steel_ultimate = \"36 ksi\"\nsteel_yield = \"58 ksi\"",
                "line 3: floor.steel_yield \"58 ksi\": it is more than steel_ultimate: no steel yields after it has broken; accepted: a yield strength no greater than steel_ultimate",
            ),
            (
                "steel = \"mild\"",
                "line 2: floor.steel \"mild\": it is not one of the choices; accepted: ductile, brittle",
            ),
            (
                "bedding = \"grout\"",
                "line 2: floor.bedding \"grout\": it is not one of the choices; accepted: direct, grout pad",
            ),
        ],
    );
}

#[test]
fn edges_that_cannot_be() {
    refused(
        "[jamb]",
        &[
            (
                "edge_dry = 8",
                "line 2: jamb.edge_dry \"8\": it has no unit; accepted: the distance from the centre of the outermost anchors to the edge, at least 0.2 in (5 mm), such as \"8 in\", or \"far\" where the edge takes no part",
            ),
            (
                "edge_water = \"near\"",
                "line 2: jamb.edge_water \"near\": it does not begin with a number; accepted: the distance from the centre of the outermost anchors to the edge, at least 0.2 in (5 mm), such as \"8 in\", or \"far\" where the edge takes no part",
            ),
            (
                "edge_below = \"0 in\"",
                "line 2: jamb.edge_below \"0 in\": no anchor stands that near to an edge; accepted: the distance from the centre of the outermost anchors to the edge, at least 0.2 in (5 mm), such as \"8 in\", or \"far\" where the edge takes no part",
            ),
            (
                "edge_above = \"-8 in\"",
                "line 2: jamb.edge_above \"-8 in\": it is negative; accepted: the distance from the centre of the outermost anchors to the edge, at least 0.2 in (5 mm), such as \"8 in\", or \"far\" where the edge takes no part",
            ),
            (
                "edge_up = \"8 in\"",
                "line 2: jamb.edge_up: there is no such field here; accepted: material, anchors, embedment, bedding, steel_area, steel_ultimate, steel_yield, steel, strength, thickness, lambda, cracking, edge_reinforcement, supplementary, head_bearing, category, coefficient_cracked, coefficient_uncracked, critical_edge, pullout, bond, sleeve_tension, sleeve_shear, edge_below, edge_above, edge_water, edge_dry",
            ),
        ],
    );
}
