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
FINE = 4001  # where the greatest deflection is looked for
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
    """The member in finite elements along X, the water pressing along Y."""
    made, length = FEModel3D(), given["length"]
    made.add_material("aluminium", MODULUS, MODULUS / 2.6, 0.3, 0.0)
    second_moment = given["rigidity"] / MODULUS
    made.add_section("section", 0.01, second_moment, second_moment, second_moment)
    # Not beside the prop: elements of very different lengths spoil the solution.
    grid = [x for x in numpy.linspace(0, length, ELEMENTS + 1) if abs(x - given["prop"]) > length / 50]
    for x in sorted({0.0, length, given["prop"], *map(float, grid)}):
        made.add_node(f"at {x!r}", x, 0, 0)
    start, end, prop = f"at {0.0!r}", f"at {length!r}", f"at {given['prop']!r}"
    made.add_member("member", start, end, "aluminium", "section")
    fixed = given["supports"] in ("cantilever", "propped")
    made.def_support(start, True, True, True, True, True, fixed)
    if given["supports"] != "cantilever":
        made.def_support(prop, support_DY=True)
    for begin, finish, first, last in given["loads"]:
        made.add_member_dist_load("member", "FY", first, last, begin, finish)
    for x, force in given["points"]:
        made.add_member_pt_load("member", "FY", force, x)
    made.analyze_linear()
    return made, start, prop


def solve(given):
    """The member's response beside what it was made of."""
    made, start, prop = model(given)
    whole, combination = made.members["member"], "Combo 1"
    reaction = made.nodes[start]
    other = 0.0 if given["supports"] == "cantilever" else -made.nodes[prop].RxnFY[combination]
    fine = whole.deflection_array("dy", FINE)[1]
    # Where the shear jumps the two libraries may stand on different sides.
    jumps = [given["prop"], *(x for x, _ in given["points"])]
    steps = (given["length"] * (i + 0.5) / STATIONS for i in range(STATIONS))
    return {
        **given,
        "start_force": -reaction.RxnFY[combination],
        "start_moment": -reaction.RxnMZ[combination],
        "other": other,
        "greatest_shear": max(whole.max_shear("Fy"), -whole.min_shear("Fy")),
        "greatest_moment": max(whole.max_moment("Mz"), -whole.min_moment("Mz")),
        "greatest_deflection": max(fine.max(), -fine.min()),
        "stations": [
            [x, -whole.shear("Fy", x), whole.moment("Mz", x), whole.deflection("dy", x)]
            for x in steps
            if all(abs(x - jump) > 1e-6 for jump in jumps)
        ],
    }


generator = numpy.random.default_rng(int(sys.argv[2]))
for index in range(int(sys.argv[1])):
    print(json.dumps(solve(member(generator, SUPPORTS[index % len(SUPPORTS)])), default=float))
