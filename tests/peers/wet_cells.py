"""Water at random points in wet cells of a raster.

Prints one line a point: longitude, latitude, the value between the four nearest cell centres in
the raster's unit, or "void" where one of them is dry; then that of the cell itself.

usage: wet_cells.py RASTER COUNT SEED
"""

import sys

import numpy

from bilinear import Ground

water = Ground(sys.argv[1])
rows, columns = numpy.nonzero(~numpy.isnan(water.array))
generator = numpy.random.default_rng(int(sys.argv[3]))
for index in generator.choice(len(rows), size=int(sys.argv[2]), replace=False):
    row, column = int(rows[index]), int(columns[index])
    # Not at the very edge, where rounding decides which cell it is.
    right, down = generator.uniform(0.001, 0.999, size=2)
    x, y = water.transform * (column + right, row + down)
    longitude, latitude = map(float, water.degrees(x, y))
    print(f"{longitude!r};{latitude!r};{water.at(longitude, latitude)};{water.array[row, column]:.7f}")
