"""Zones and ground at random points of Hudson County, by other libraries.

Zones by shapely's predicates over every polygon, without a spatial index. Prints one line a
point: longitude, latitude, the numbers of the features that cover it, the distance to the
nearest edge of any feature in metres, the ground in metres ("void", "outside").

usage: hudson_points.py FOLDER COUNT SEED
"""

import math
import pathlib
import sys

import numpy
import pyogrio
import pyproj
import shapely

from bilinear import Ground

folder, count, seed = pathlib.Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
zones = pyogrio.read_dataframe(folder / "S_FLD_HAZ_AR.shp", fid_as_index=True)
to_zones = pyproj.Transformer.from_crs("EPSG:4326", zones.crs, always_xy=True)
ground = Ground(folder / "jerseycity_dem.tif")
polygons = zones.geometry.values
edges = shapely.boundary(polygons)
generator = numpy.random.default_rng(seed)
bounds = ground.bounds
# A little beyond the raster, so that its rim and the outside occur.
margin = 0.02 * (bounds.right - bounds.left)
for _ in range(count):
    longitude = float(generator.uniform(bounds.left - margin, bounds.right + margin))
    latitude = float(generator.uniform(bounds.bottom - margin, bounds.top + margin))
    point = shapely.Point(to_zones.transform(longitude, latitude))
    covering = [str(zones.index[i]) for i in numpy.flatnonzero(shapely.covers(polygons, point))]
    # A degree taken as short as one of longitude: never too large, so that no point is left
    # out of the comparison that should not be, by more than a third.
    edge = shapely.distance(edges, point).min() * 111_000 * math.cos(math.radians(latitude))
    height = ground.at(longitude, latitude)
    print(f"{longitude!r};{latitude!r};{','.join(covering)};{edge:.6f};{height}")
