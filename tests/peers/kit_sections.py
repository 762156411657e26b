"""The section properties of a kit's parts, from the rectangles of their profiles.

Prints one line a part: its name; area, second moment, elastic and plastic modulus about the axis
that the water bends it about, in mm², mm⁴, mm³, mm³.

usage: kit_sections.py KIT
"""

import sys
import tomllib

import shapely
from sectionproperties.analysis import Section
from sectionproperties.pre import Geometry

MILLIMETRES = {"in": 25.4, "mm": 1.0}


def length(text):
    number, unit = text.split()
    return float(number) * MILLIMETRES[unit]


def box(rectangle):
    x, y, width, height = (length(rectangle[key]) for key in ("x", "y", "width", "height"))
    return shapely.box(x, y, x + width, y + height)


def shape(profile):
    metal = shapely.union_all([box(one) for one in profile if not one.get("hole", False)])
    holes = shapely.union_all([box(one) for one in profile if one.get("hole", False)])
    return metal.difference(holes)


with open(sys.argv[1], "rb") as file:
    kit = tomllib.load(file)
for name, part in kit.items():
    if not isinstance(part, dict) or "profile" not in part:
        continue
    geometry = Geometry(shape(part["profile"]))
    geometry.create_mesh(mesh_sizes=[0])
    section = Section(geometry)
    section.calculate_geometric_properties()
    section.calculate_plastic_properties()
    elastic = min(abs(modulus) for modulus in section.get_z()[2:])
    print(name, section.get_area(), section.get_ic()[1], elastic, section.get_s()[1], sep=";")
