"""Zones and ground at random points of Hudson County, by other libraries.

Zones by shapely's predicates over every polygon, ground by a bilinear sum over the array:
no spatial index, no interpolation of GDAL's, no code of this project. Prints one line a
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
import rasterio
import shapely


def ground(array, transform, x, y):
    """Bilinear between the four nearest cell centres, the edge cell in the outer half cell."""
    column, row = ~transform * (x, y)
    rows, columns = array.shape
    if not (0 <= column <= columns and 0 <= row <= rows):
        return "outside"
    column = min(max(column - 0.5, 0.0), columns - 1.0)
    row = min(max(row - 0.5, 0.0), rows - 1.0)
    left, top = int(min(column, columns - 2)), int(min(row, rows - 2))
    right_share, lower_share = column - left, row - top
    shares = numpy.array(
        [
            [(1 - lower_share) * (1 - right_share), (1 - lower_share) * right_share],
            [lower_share * (1 - right_share), lower_share * right_share],
        ]
    )
    cells = array[top : top + 2, left : left + 2]
    if numpy.isnan(cells[shares > 1e-7]).any():
        return "void"
    return f"{numpy.nansum(cells * shares):.7f}"


def main():
    folder, count, seed = pathlib.Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    zones = pyogrio.read_dataframe(folder / "S_FLD_HAZ_AR.shp", fid_as_index=True)
    with rasterio.open(folder / "jerseycity_dem.tif") as dem:
        array = dem.read(1).astype("float64")
        array[array == dem.nodata] = numpy.nan
        transform, bounds, crs = dem.transform, dem.bounds, dem.crs
    to_zones = pyproj.Transformer.from_crs("EPSG:4326", zones.crs, always_xy=True)
    to_dem = pyproj.Transformer.from_crs("EPSG:4326", crs.to_wkt(), always_xy=True)
    polygons = zones.geometry.values
    edges = shapely.boundary(polygons)
    generator = numpy.random.default_rng(seed)
    # A little beyond the raster, so that its rim and the outside occur.
    margin = 0.02 * (bounds.right - bounds.left)
    for _ in range(count):
        longitude = generator.uniform(bounds.left - margin, bounds.right + margin)
        latitude = generator.uniform(bounds.bottom - margin, bounds.top + margin)
        point = shapely.Point(to_zones.transform(longitude, latitude))
        covering = [str(zones.index[i]) for i in numpy.flatnonzero(shapely.covers(polygons, point))]
        # Degrees of latitude are the longer ones here, so this is never too large by more
        # than a third.
        edge = shapely.distance(edges, point).min() * 111_000 * math.cos(math.radians(latitude))
        height = ground(array, transform, *to_dem.transform(longitude, latitude))
        print(f"{longitude!r};{latitude!r};{','.join(covering)};{edge:.6f};{height}")


main()
