"""Heights at random places on another vertical datum, by another build of PROJ.

Four conversions in turn: NGVD29 to NAVD88 (VERTCON), and heights above the ellipsoid to ODN
(OSGM15), NAP and NGF-IGN69. Prints one line a place: conversion, longitude, latitude, height,
new height ("refused" where there is none), all in metres, and for VERTCON the height by a
bilinear sum over the grid without PROJ (else "-").

usage: datum_points.py FOLDER COUNT SEED
"""

import math
import pathlib
import sys
import warnings

import numpy
import pyproj

from bilinear import Ground

folder, count, seed = pathlib.Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
pyproj.datadir.append_data_dir(str(folder))
warnings.simplefilter("ignore")
# Boxes a little beyond the grids' areas.
CONVERSIONS = {
    "NGVD29-NAVD88": ("EPSG:4269+7968", "EPSG:4269+5703", (-126, 24, -66, 50)),
    "ELLIPSOID-ODN": ("EPSG:4937", "EPSG:4258+5701", (-8, 49.5, 3, 60)),
    "ELLIPSOID-NAP": ("EPSG:4937", "EPSG:4258+5709", (3, 50.5, 7.5, 54)),
    "ELLIPSOID-NGF": ("EPSG:9781", "EPSG:9782+5720", (-5, 42, 9, 51.5)),
}
transformers = {
    name: pyproj.Transformer.from_crs(source, target, always_xy=True, allow_ballpark=False)
    for name, (source, target, _) in CONVERSIONS.items()
}


class AsGiven:
    """The grid's nodes taken as they are, as the dataset's method 9658 does."""

    def transform(self, longitude, latitude):
        return longitude, latitude


# Where the areas of VERTCON's grids meet (EPSG 7969 to 7971).
VERTCON = [("w", -124.79, -107.0), ("c", -107.0, -89.0), ("e", -89.0, -66.91)]
grids = [(Ground(folder / f"us_noaa_vertcon{part}.tif"), west, east) for part, west, east in VERTCON]
for ground, _, _ in grids:
    ground.to_dem = AsGiven()
generator = numpy.random.default_rng(seed)
for index in range(count):
    name = list(CONVERSIONS)[index % len(CONVERSIONS)]
    west, south, east, north = CONVERSIONS[name][2]
    longitude, latitude = generator.uniform(west, east), generator.uniform(south, north)
    height = generator.uniform(-5, 300)
    _, _, out = transformers[name].transform(longitude, latitude, height)
    bilinear = "-"
    if name == "NGVD29-NAVD88":
        for ground, left, right in grids:
            if left <= longitude < right:
                shift = ground.at(longitude, latitude)
                bilinear = shift if shift in ("void", "outside") else f"{height + float(shift):.7f}"
    area = transformers[name].area_of_use
    if area and not (area.west <= longitude <= area.east and area.south <= latitude <= area.north):
        out = math.inf  # pyproj does not look where it has one operation only
    out = f"{out:.7f}" if math.isfinite(out) else "refused"
    print(f"{name};{longitude!r};{latitude!r};{height!r};{out};{bilinear}")
