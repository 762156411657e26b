"""Prints what another library reads of a site's layers: site_layers.py FILE LONGITUDE LATITUDE

A line a layer: name, system, kinds of geometry, features, whether all are valid, how many hold
the place, and the columns.
"""

import sys

import geopandas
import shapely


def main(path, longitude, latitude):
    place = shapely.Point(float(longitude), float(latitude))
    for layer in ("points", "zones", "lines"):
        frame = geopandas.read_file(path, layer=layer, engine="pyogrio", use_arrow=False)
        shapes = frame.geometry
        print(
            layer,
            ":".join(frame.crs.to_authority()),
            ",".join(sorted(set(shapes.geom_type))),
            len(frame),
            bool(shapes.is_valid.all()),
            int(shapes.intersects(place).sum()),
            ",".join(name for name in frame.columns if name != shapes.name),
            sep="|",
        )


main(*sys.argv[1:])
