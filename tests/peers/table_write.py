"""Writes a table of points by other libraries: table_write.py FOLDER"""

import sys
from pathlib import Path

import geopandas
import numpy
import pandas
import pyarrow
import pyarrow.parquet


def main(folder):
    frame = pandas.DataFrame({
        "id": ["a", "Überweg, \"old\"", None],
        "depth_m": [0.1, 1e-7, numpy.nan],
        "planks": pandas.array([9007199254740993, None, -3], dtype="Int64"),
        "flooded": [True, False, True],
    })
    points = geopandas.points_from_xy([-74.0335, -74.1, -74.2], [40.74, 40.75, 40.5])
    table = geopandas.GeoDataFrame(frame, geometry=points, crs="EPSG:4326")
    table.to_file(folder / "out.gpkg", layer="openings", driver="GPKG")
    table.to_file(folder / "out.fgb", driver="FlatGeobuf", SPATIAL_INDEX="NO")
    table.to_file(folder / "out.geojson", driver="GeoJSON", RFC7946="YES", COORDINATE_PRECISION=15)
    table.to_parquet(folder / "wkb.parquet", compression="snappy", write_covering_bbox=True)
    table.to_parquet(folder / "point.parquet", compression=None, geometry_encoding="geoarrow",
                     schema_version="1.1.0")
    table.to_parquet(folder / "zstd.parquet", compression="zstd")
    pyarrow.parquet.write_table(
        pyarrow.table({
            "id": pyarrow.array(["a", "b"]).dictionary_encode(),
            "single": pyarrow.array([0.1, None], pyarrow.float32()),
            "day": pyarrow.array([19000, None], pyarrow.date32()),
            "time": pyarrow.array([1_700_000_000_123_000, None], pyarrow.timestamp("us", "UTC")),
            "cost": pyarrow.array(["12.50", None]).cast(pyarrow.decimal128(9, 2)),
            "parts": pyarrow.array([[1, 2], None]),
            "small": pyarrow.array([-7, 200], pyarrow.int16()),
        }),
        folder / "plain.parquet",
    )


main(Path(sys.argv[1]))
