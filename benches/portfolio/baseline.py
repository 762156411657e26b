#!/usr/bin/env python3
"""The same questions as an analyst answers them in a script: vectorised, with general-purpose
libraries.

    baseline.py FOLDER OUT.csv

Reads dem.tif, zones.gpkg and buildings.csv (degrees of EPSG:4269, thresholds in feet). For each
building: zone, ground, flood level (STATIC_BFE), protection height with 1 ft of freeboard, and
force of still water on a metre of width. It checks nothing, designs nothing, gives no reasons,
and holds everything in memory.
"""

import sys
from pathlib import Path

import geopandas
import numpy as np
import pandas as pd
import rasterio
import shapely
from pyproj import Transformer

FOOT = 0.3048
FREEBOARD = 1.0 * FOOT
# 62.4 lbf/ft3 of fresh water, newtons on a cubic metre.
WEIGHT = 62.4 * 4.4482216152605 / FOOT**3


def zone_numbers(points: np.ndarray, shapes: np.ndarray, levels: np.ndarray) -> np.ndarray:
    """The polygon that holds each point, of several the one with the highest level; or -1."""
    tree = shapely.STRtree(points)
    zone, point = tree.query(shapes, predicate="contains")
    order = np.argsort(np.nan_to_num(levels[zone], nan=-np.inf), kind="stable")
    found = np.full(len(points), -1)
    found[point[order]] = zone[order]
    return found


def bilinear(heights: np.ndarray, column: np.ndarray, row: np.ndarray) -> np.ndarray:
    """Between the four nearest centres of cells; none where one of them is missing."""
    left, top = np.floor(column).astype(int), np.floor(row).astype(int)
    inside = (left >= 0) & (top >= 0) & (left < heights.shape[1] - 1) & (top < heights.shape[0] - 1)
    left, top = left[inside], top[inside]
    x, y = (column[inside] - left), (row[inside] - top)
    upper = heights[top, left] * (1 - x) + heights[top, left + 1] * x
    lower = heights[top + 1, left] * (1 - x) + heights[top + 1, left + 1] * x
    ground = np.full(len(column), np.nan)
    ground[inside] = upper * (1 - y) + lower * y
    return ground


def main(folder: Path, out: Path) -> None:
    table = pd.read_csv(folder / "buildings.csv")
    layer = geopandas.read_file(folder / "zones.gpkg")
    points = shapely.points(table.longitude, table.latitude)
    levels = layer.STATIC_BFE.where(layer.STATIC_BFE > -8000).to_numpy() * FOOT
    number = zone_numbers(points, layer.geometry.to_numpy(), levels)

    with rasterio.open(folder / "dem.tif") as raster:
        heights = raster.read(1)
        heights[heights == raster.nodata] = np.nan
        to_plane = Transformer.from_crs("EPSG:4269", raster.crs, always_xy=True)
        x, y = to_plane.transform(table.longitude.to_numpy(), table.latitude.to_numpy())
        column, row = ~raster.transform * (x, y)
    held = number >= 0
    level = np.where(held, levels[number], np.nan)
    height = np.clip(level + FREEBOARD - table.threshold.to_numpy() * FOOT, 0.0, None)
    table["zone"] = layer.FLD_ZONE.where(layer.FLD_ZONE != "").to_numpy()[number]
    table.loc[~held, "zone"] = None
    table["ground_m"] = bilinear(heights, column - 0.5, row - 0.5)
    table["flood_level_m"] = level
    table["protection_m"] = height
    table["force_kn_per_m"] = 0.5 * WEIGHT * height**2 / 1000.0
    table.to_csv(out, index=False, float_format="%.4f")


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
