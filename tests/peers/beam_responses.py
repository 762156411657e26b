"""Reactions, shears, moments and deflections of random members, by finite elements.

Planks and posts of aluminium under triangular, trapezoidal, uniform and partial loads and point
loads, with each of four supports in turn, each in elements of at most a twelfth of its length.
Prints one JSON object a member, in metres and newtons: the member as it was made; the greatest
magnitudes; and values at stations. Loads and deflections are positive in the direction of the
water, forces and moments of supports against it, moments positive with the dry side in tension.

usage: beam_responses.py COUNT SEED
"""

import json
import sys

import numpy
from Pynite import FEModel3D

MODULUS = 69e9  # Pa, aluminium; only its product with the second moment matters
ELEMENTS = 12
STATIONS = 23
FINE = 401  # places of each element where the greatest deflection is looked for
SUPPORTS = ("simple", "cantilever", "propped", "pinned and propped")


def place(generator, length, lowest=0.0, highest=1.0):
    """A place on the member, to the millimetre."""
    return min(round(float(generator.uniform(lowest, highest)) * length, 3), length)


def linear_loads(generator, length):
    """One to three loads, N/m; one in ten presses against the water."""
    made = []
    for _ in range(generator.integers(1, 4)):
        value, other = (float(generator.uniform(50, 30_000)) for _ in range(2))
        if generator.random() < 0.1:
            value = -value
        kind = generator.choice(["triangle", "uniform", "trapezoid", "partial"])
        if kind == "triangle":  # still water up to a level, on a post
            made.append([0.0, place(generator, length, 0.2), value, 0.0])
        elif kind == "uniform":
            made.append([0.0, length, value, value])
        elif kind == "trapezoid":
            made.append([0.0, length, value, other])
        else:
            begin = place(generator, length, 0.0, 0.8)
            end = max(place(generator, length, begin / length), begin + 0.01)
            made.append([begin, min(end, length), value, other])
    return made


def member(generator, supports):
    """A member as the lines print it."""
    plank = supports == "simple"
    length = round(float(generator.uniform(0.6, 4.0) if plank else generator.uniform(0.3, 3.5)), 3)
    second_moment = 10 ** float(generator.uniform(-8, -4.5))
    points = [
        [place(generator, length), float(generator.uniform(-500, 5000))]
        for _ in range(generator.integers(0, 3))
    ]
    return {
        "supports": supports,
        "length": length,
        "rigidity": MODULUS * second_moment,
        "prop": place(generator, length, 0.25) if "propped" in supports else length,
        "loads": linear_loads(generator, length),
        "points": points,
    }


def model(given):
    """The member in finite elements along X, the water pressing along Y; and its elements.

    Each element is a member of the library and is given its own part of every load: version
    3.2.0 divides a sloping load wrongly over the nodes of one long member.
    """
    made, length = FEModel3D(), given["length"]
    made.add_material("aluminium", MODULUS, MODULUS / 2.6, 0.3, 0.0)
    second_moment = given["rigidity"] / MODULUS
    made.add_section("section", 0.01, second_moment, second_moment, second_moment)
    # Not beside the prop: elements of very different lengths spoil the solution.
    grid = (float(x) for x in numpy.linspace(0, length, ELEMENTS + 1)[1:-1])
    grid = [x for x in grid if abs(x - given["prop"]) > length / 50]
    nodes = sorted({0.0, length, given["prop"], *grid})
    for x in nodes:
        made.add_node(f"at {x!r}", x, 0, 0)
    elements = []
    for left, right in zip(nodes, nodes[1:]):
        name = made.add_member(f"from {left!r}", f"at {left!r}", f"at {right!r}", "aluminium", "section")
        elements.append((left, right, made.members[name]))
        for begin, finish, first, last in given["loads"]:
            low, high = max(begin, left), min(finish, right)
            if low < high:
                values = numpy.interp([low, high], [begin, finish], [first, last])
                made.add_member_dist_load(name, "FY", *map(float, values), low - left, high - left)
        for x, force in given["points"]:
            if left <= x < right or x == right == length:
                made.add_member_pt_load(name, "FY", force, x - left)
    fixed = given["supports"] in ("cantilever", "propped")
    made.def_support(f"at {0.0!r}", True, True, True, True, True, fixed)
    if given["supports"] != "cantilever":
        made.def_support(f"at {given['prop']!r}", support_DY=True)
    made.analyze_linear()
    return made, elements


def solve(given):
    """The member's response beside what it was made of."""
    made, elements = model(given)
    start, other = made.nodes[f"at {0.0!r}"], made.nodes[f"at {given['prop']!r}"]
    members = [element for _, _, element in elements]
    swing = max(abs(member.deflection_array("dy", FINE)[1]).max() for member in members)
    stations = []
    for index in range(STATIONS):
        x = given["length"] * (index + 0.5) / STATIONS
        # Where the shear jumps the two libraries may stand on different sides.
        if any(abs(x - jump) < 1e-6 for jump in [given["prop"], *(x for x, _ in given["points"])]):
            continue
        left, member = next((left, e) for left, right, e in elements if left <= x < right)
        within = x - left
        read = -member.shear("Fy", within), member.moment("Mz", within), member.deflection("dy", within)
        stations.append([x, *read])
    return {
        **given,
        "start_force": -start.RxnFY["Combo 1"],
        "start_moment": -start.RxnMZ["Combo 1"],
        "other": 0.0 if given["supports"] == "cantilever" else -other.RxnFY["Combo 1"],
        "greatest_shear": max(max(m.max_shear("Fy"), -m.min_shear("Fy")) for m in members),
        "greatest_moment": max(max(m.max_moment("Mz"), -m.min_moment("Mz")) for m in members),
        "greatest_deflection": swing,
        "stations": stations,
    }


generator = numpy.random.default_rng(int(sys.argv[2]))
for index in range(int(sys.argv[1])):
    print(json.dumps(solve(member(generator, SUPPORTS[index % len(SUPPORTS)])), default=float))
