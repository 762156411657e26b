"""Why two results differ, read from the maps: once for zones and levels, once for the ground."""

from pathlib import Path

import geopandas
import numpy as np
import pandas as pd
import rasterio
import shapely
from pyproj import Transformer
from rasterio.windows import Window

FOOT = 0.3048
METRES = 1e-3
# sillmark counts a point within 1 mm of an edge into both zones; a hair more,
# for the rounding of another computation.
EDGE = 1.05e-3
# Metres on the earth of a degree of latitude (a sphere of 6371 km) and, by its cosine, of
# longitude: right to 0.5 %, which for a millimetre is enough.
DEGREE = 6_371_000.0 * np.pi / 180.0


class ZoneCauses:
    """Zones near the places where zone or level differ."""

    def __init__(self, folder: Path, ours: pd.DataFrame, base: pd.DataFrame) -> None:
        self.ours, self.base = ours, base
        layer = geopandas.read_file(folder / "zones.gpkg")
        self.layer = layer
        place = base[["longitude", "latitude"]].to_numpy()
        if layer.crs.is_geographic:
            scale = DEGREE * np.array([np.cos(np.radians(place[:, 1].mean())), 1.0])
            shapes = shapely.transform(layer.geometry.to_numpy(), lambda at: at * scale)
            place = place * scale
        else:
            to_plane = Transformer.from_crs("EPSG:4269", layer.crs, always_xy=True)
            shapes = layer.geometry.to_numpy()
            place = np.c_[to_plane.transform(place[:, 0], place[:, 1])]
        self.shapes, self.place = shapes, place
        self.tree = shapely.STRtree(shapes)
        self.rank = np.array([rank(*row) for row in zip(layer.FLD_ZONE, layer.ZONE_SUBTY)])
        self.level = layer.STATIC_BFE.where(layer.STATIC_BFE > -8000).to_numpy() * FOOT

    def classes(self, different: np.ndarray) -> np.ndarray:
        """The class of each row that differs; "" where nothing explains it."""
        classes = np.full(len(different), "", dtype=object)
        for row in np.flatnonzero(different):
            classes[row] = self.cause(row)
        return classes

    def cause(self, row: int) -> str:
        point = shapely.points(self.place[row])
        near = self.tree.query(point, predicate="dwithin", distance=EDGE)
        if len(near) == 0:
            return ""
        holds = shapely.contains(self.shapes[near], point)
        on_edge = shapely.distance(shapely.boundary(self.shapes[near]), point) <= EDGE
        # Ours: the worst of them all; of equally bad ones the highest level.
        worst = near[self.rank[near] == self.rank[near].max()]
        level = self.level[worst]
        highest = np.nan if np.isnan(level).all() else np.nanmax(level)
        ours, base = self.ours.iloc[row], self.base.iloc[row]
        right = ours.zone in set(self.layer.FLD_ZONE.iloc[worst]) and same(ours.flood_level_m, highest)
        # The baseline: any that holds the place, or none on an edge.
        theirs = {(self.layer.FLD_ZONE.iloc[zone], num(self.level[zone])) for zone in near}
        if not holds.any() or on_edge.any():
            theirs.add((None, None))
        theirs_text = None if pd.isna(base.zone) else base.zone
        known = any(theirs_text == zone and same(base.flood_level_m, level) for zone, level in theirs)
        if not (right and known):
            return ""
        if on_edge.any():
            return "on an edge (within 1 mm)"
        return "in an overlap" if holds.sum() > 1 else ""


def rank(code: str, subtype: str | None) -> int:
    """How bad a zone is, for the codes of the two landscapes; the order is sillmark's."""
    if code.startswith("V"):
        return 4
    if code.startswith("A"):
        return 3 if subtype == "FLOODWAY" else 2
    return 1 if (subtype or "").startswith("0.2 PCT") else 0


def num(value: float) -> float | None:
    return None if value is None or np.isnan(value) else value


def same(left, right) -> bool:
    if left is None or right is None or np.isnan(left) or np.isnan(right):
        return (left is None or np.isnan(left)) == (right is None or np.isnan(right))
    return abs(left - right) <= METRES


class GroundCauses:
    """Cells around the places where the ground differs."""

    def __init__(self, folder: Path, ours: pd.DataFrame, base: pd.DataFrame) -> None:
        self.folder, self.ours, self.base = folder, ours, base

    def classes(self, different: np.ndarray) -> np.ndarray:
        """The class of each row that differs; "" where nothing explains it."""
        classes = np.full(len(different), "", dtype=object)
        rows = np.flatnonzero(different)
        with rasterio.open(self.folder / "dem.tif") as raster:
            to_plane = Transformer.from_crs("EPSG:4269", raster.crs, always_xy=True)
            place = self.base.iloc[rows]
            x, y = to_plane.transform(place.longitude.to_numpy(), place.latitude.to_numpy())
            column, line = ~raster.transform * (x, y)
            for row, across, down in zip(rows, column, line):
                classes[row] = self.cause(raster, row, across, down)
        return classes

    def cause(self, raster, row: int, column: float, line: float) -> str:
        ours, base = self.ours.ground_m.iloc[row], self.base.ground_m.iloc[row]
        if not (0.0 <= column <= raster.width and 0.0 <= line <= raster.height):
            # Beyond the terrain sillmark says nothing.
            return "outside the terrain" if np.isnan(ours) else ""
        last = np.array([raster.width - 1, raster.height - 1])
        centred = np.array([column, line]) - 0.5
        inside = np.clip(centred, 0.0, last)
        outer = bool((inside != centred).any())
        left, top = np.minimum(np.floor(inside), last - 1).astype(int)
        cells = raster.read(1, window=Window(left, top, 2, 2)).astype(float)
        cells[cells == raster.nodata] = np.nan
        if np.isnan(cells).any():
            # A cell that has a share is missing, so neither has a height to give.
            return "beside or in a void" if np.isnan(ours) or np.isnan(base) else ""
        x, y = inside - [left, top]
        weights = np.outer([1 - y, y], [1 - x, x])
        expected = (weights * cells).sum()
        # In the outer half cell sillmark gives the height of the edge, the baseline none.
        return "in the outer half cell" if outer and same(ours, expected) and np.isnan(base) else ""
