"""A flood zone made from a raster of water, and the water at random wet cells.

The zone is the outline of the wet cells, one approximate zone ("A") a connected part, written
as a GeoPackage. Prints one line a wet cell: longitude, latitude of its centre, the level in the
raster's unit: the cell of a surface; the depth plus the ground (bilinear) of depths.

usage: flooded_zone.py WATER GROUND|- COUNT SEED ZONES
"""

import sys

import numpy
import pyogrio
import rasterio
import rasterio.features
import shapely
import shapely.geometry

from bilinear import Ground

water = Ground(sys.argv[1])
ground = None if sys.argv[2] == "-" else Ground(sys.argv[2])
count, seed, zones = int(sys.argv[3]), int(sys.argv[4]), sys.argv[5]

wet = ~numpy.isnan(water.array)
parts = rasterio.features.shapes(wet.astype("uint8"), mask=wet, transform=water.transform)
areas = [shapely.geometry.shape(part) for part, _ in parts]
with rasterio.open(sys.argv[1]) as raster:
    crs = raster.crs
pyogrio.raw.write(
    zones,
    geometry=numpy.array([shapely.to_wkb(area) for area in areas], dtype=object),
    field_data=[numpy.array(["A"] * len(areas), dtype=object)],
    fields=["FLD_ZONE"],
    geometry_type="Polygon",
    crs=crs.to_wkt(),
    driver="GPKG",
    layer="zones",
)

rows, columns = numpy.nonzero(wet)
generator = numpy.random.default_rng(seed)
for index in generator.choice(len(rows), size=min(count, len(rows)), replace=False):
    row, column = int(rows[index]), int(columns[index])
    longitude, latitude = map(float, water.degrees(*(water.transform * (column + 0.5, row + 0.5))))
    level = float(water.array[row, column])
    if ground is not None:
        height = ground.at(longitude, latitude)
        if height in ("void", "outside"):
            continue
        level += float(height)
    print(f"{longitude!r};{latitude!r};{level:.6f}")
