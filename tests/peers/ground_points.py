"""Ground at random points over any raster, and a little beyond.

Prints one line a point: longitude, latitude, the ground in the raster's unit ("void",
"outside").

usage: ground_points.py RASTER COUNT SEED
"""

import sys

import numpy

from bilinear import Ground

ground = Ground(sys.argv[1])
generator = numpy.random.default_rng(int(sys.argv[3]))
bounds = ground.bounds
margin = 0.02 * (bounds.right - bounds.left)
for _ in range(int(sys.argv[2])):
    x = generator.uniform(bounds.left - margin, bounds.right + margin)
    y = generator.uniform(bounds.bottom - margin, bounds.top + margin)
    longitude, latitude = map(float, ground.degrees(x, y))
    print(f"{longitude!r};{latitude!r};{ground.at(longitude, latitude)}")
