"""Prints the rows of a table as another library reads them: table_rows.py FILE

First the names of the columns, then a line a row: values by their Python form, and the point.
"""

import sys

import geopandas
import pyarrow.parquet


def main(path):
    if path.endswith(".parquet"):
        frame = geopandas.read_parquet(path)
        # The reader of the format itself, beside the one of its geometry.
        assert pyarrow.parquet.read_table(path).num_rows == len(frame)
    else:
        frame = geopandas.read_file(path, layer="openings", engine="pyogrio", use_arrow=False)
    columns = [name for name in frame.columns if name != frame.geometry.name]
    print("|".join(columns), frame.crs.to_authority()[1], sep="|")
    for _, row in frame.iterrows():
        values = [None if row[name] != row[name] else row[name] for name in columns]
        values = [float(value) if name in ("x", "y", "depth_m") and value is not None else value
                  for name, value in zip(columns, values)]
        point = row[frame.geometry.name]
        place = None if point is None or point.is_empty else (point.x, point.y)
        print("|".join(repr(value) for value in values), place, sep="|")


main(sys.argv[1])
