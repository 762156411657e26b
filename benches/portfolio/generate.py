#!/usr/bin/env python3
"""Makes a large invented portfolio: a coast with a bay, its flood zones, and its buildings.

    generate.py FOLDER [--side METRES] [--buildings NUMBER] [--zones NUMBER] [--seed NUMBER]

    FOLDER/dem.tif        heights, float32, cells of 1 m, EPSG:26908, NAVD88 metres, two voids
    FOLDER/zones.gpkg     layer S_FLD_HAZ_AR with the public field names of the National Flood
                          Hazard Layer, EPSG:4269, levels in feet on NAVD88
    FOLDER/buildings.csv  id, longitude, latitude, threshold, threshold_unit, vertical_datum

The place lies in the open Pacific, so that nobody can take it for a real one; every figure is
made up. The same arguments give the same table and zones. Needs tests/peers/requirements.txt.
"""

import argparse
from pathlib import Path

import geopandas
import numpy as np
import pandas as pd
import rasterio
import shapely
from pyproj import Transformer
from rasterio.transform import from_origin

FOOT = 0.3048
NO_DATA = -9999.0
PLANE, DEGREES = "EPSG:26908", "EPSG:4269"
WEST, SOUTH = 480_000.0, 4_980_000.0
# Zones of one stretch of the coast, from the sea inwards: code, subtype, how high the ground is
# at its landward edge and its level, metres.
BELTS = [
    ("VE", None, 1.6, 3.7),
    ("AE", None, 3.0, 3.1),
    ("X", "0.2 PCT ANNUAL CHANCE FLOOD HAZARD", 4.6, None),
    ("X", "AREA OF MINIMAL FLOOD HAZARD", 7.5, None),
]
SEAM = 0.15  # metres by which neighbouring stretches overlap, as sheets of a map do


class Coast:
    """A shore that winds along the north of the square; land rises behind it to the north."""

    def __init__(self, side: int) -> None:
        self.side = float(side)

    def shore(self, east):
        """How far north the shore lies at an easting, metres from the corner."""
        turns = east / self.side * 2.0 * np.pi
        bay = 0.17 * np.exp(-(((east / self.side) - 0.62) ** 2) / 0.012)
        return self.side * (0.26 + 0.05 * np.sin(1.5 * turns) + 0.011 * np.sin(9.0 * turns) + bay)

    def slope(self, east):
        """Rise of the land for a metre inwards."""
        return (0.0065 + 0.0025 * np.sin(east / self.side * 11.0)) * (4096.0 / self.side)

    def belt(self, east, height):
        """How far north a zone that ends at that height of ground ends."""
        return self.shore(east) + height / self.slope(east)

    def ground(self, east, north):
        """Height of the ground, metres: beach, a row of dunes, rolling land."""
        inland = north - self.shore(east)
        land = self.slope(east) * np.maximum(inland, 0.0) ** 0.995 + 0.02 * np.minimum(inland, 0.0)
        dunes = 2.1 * np.exp(-(((inland - 95.0) / 34.0) ** 2)) * (1.0 + 0.4 * np.sin(east / 61.0))
        rolling = 0.5 * np.sin(east / 47.0 + north / 83.0) * np.cos(north / 39.0)
        furrows = 0.06 * np.sin(east / 2.9) * np.sin(north / 3.7)
        return np.maximum(land, -12.0) + dunes + rolling + furrows


def terrain(coast: Coast, path: Path) -> None:
    side = int(coast.side)
    profile = dict(
        driver="GTiff", dtype="float32", count=1, width=side, height=side, nodata=NO_DATA,
        crs=PLANE, transform=from_origin(WEST, SOUTH + side, 1, 1), tiled=True,
        blockxsize=256, blockysize=256, compress="deflate", predictor=3,
    )  # fmt: skip
    east = np.arange(side) + 0.5
    with rasterio.open(path, "w", **profile) as raster:
        for top in range(0, side, 256):
            rows = np.arange(top, min(top + 256, side))
            heights = coast.ground(east[None, :], (side - rows - 0.5)[:, None])
            for low, high, left, right in voids(side):
                hit = (rows >= low) & (rows < high)
                heights[np.ix_(hit, np.arange(left, right))] = NO_DATA
            window = rasterio.windows.Window(0, top, side, len(rows))
            raster.write(heights.astype("float32"), 1, window=window)


def voids(side: int) -> list[tuple[int, int, int, int]]:
    """Rows and columns without ground: a pond, and where two flights do not meet."""
    return [
        (side // 2, side // 2 + side // 40, side // 5, side // 5 + side // 25),
        (side // 3, side // 3 + side // 6, 3 * side // 4, 3 * side // 4 + 12),
    ]


def zones(coast: Coast, number: int, rng: np.random.Generator) -> geopandas.GeoDataFrame:
    to_degrees = Transformer.from_crs(PLANE, DEGREES, always_xy=True)
    cuts = np.linspace(0.0, coast.side, max(number // len(BELTS), 1) + 1)
    rows, shapes = [], []
    for start, end in zip(cuts[:-1], cuts[1:]):
        corners = int(rng.integers(40, 400))
        east = np.linspace(start - SEAM, end + SEAM, corners)
        wobble = rng.normal(0.0, 1.5, corners)
        lower = coast.shore(east) - 400.0
        # Levels of a stretch: whole feet, as maps print them.
        swell = 0.6 * np.sin((start + end) / coast.side * 5.0)
        for code, subtype, height, level in BELTS:
            upper = coast.belt(east, height) + wobble
            x, y = np.r_[east, east[::-1]], np.r_[lower, upper[::-1]]
            shapes.append(shapely.polygons(np.c_[to_degrees.transform(WEST + x, SOUTH + y)]))
            feet = None if level is None else float(round((level + swell) / FOOT))
            rows.append(
                dict(
                    FLD_AR_ID=f"COAST_{len(rows)}", FLD_ZONE=code, ZONE_SUBTY=subtype,
                    SFHA_TF="F" if code == "X" else "T",
                    STATIC_BFE=NO_DATA if feet is None else feet,
                    V_DATUM=None if feet is None else "NAVD88", DEPTH=NO_DATA,
                    LEN_UNIT=None if feet is None else "Feet",
                )
            )  # fmt: skip
            lower = upper
    shapes = shapely.make_valid(np.array(shapes))
    # A ring that crosses itself comes apart into polygons, and sometimes lines.
    shapes = [shapely.union_all([p for p in shapely.get_parts(s) if p.area > 0]) for s in shapes]
    return geopandas.GeoDataFrame(rows, geometry=shapes, crs=DEGREES)


def buildings(coast: Coast, number: int, rng: np.random.Generator) -> pd.DataFrame:
    """Two thirds in a few towns near the shore, the rest anywhere, some beyond the terrain."""
    side = coast.side
    east = rng.uniform(-40.0, side + 40.0, number)
    north = rng.uniform(coast.shore(east), side + 40.0)
    in_town = rng.random(number) < 2.0 / 3.0
    towns = rng.uniform(0.05, 0.95, 12) * side
    east[in_town] = rng.choice(towns, in_town.sum()) + rng.normal(0.0, side / 30.0, in_town.sum())
    inland = rng.gamma(2.0, side / 20.0, in_town.sum())
    north[in_town] = coast.shore(east[in_town]) + inland
    threshold = coast.ground(east, north) + rng.gamma(1.6, 0.28, number)
    to_degrees = Transformer.from_crs(PLANE, DEGREES, always_xy=True)
    longitude, latitude = to_degrees.transform(WEST + east, SOUTH + north)
    return pd.DataFrame(
        dict(
            id=[f"H{row:08d}" for row in range(number)],
            longitude=longitude.round(7), latitude=latitude.round(7),
            threshold=(threshold / FOOT).round(2), threshold_unit="ft", vertical_datum="NAVD88",
        )
    )  # fmt: skip


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("folder", type=Path)
    parser.add_argument("--side", type=int, default=4096)
    parser.add_argument("--buildings", type=int, default=500_000)
    parser.add_argument("--zones", type=int, default=2000)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    given.folder.mkdir(parents=True, exist_ok=True)
    coast = Coast(given.side)
    # Streams of their own: more buildings do not change the zones.
    of_zones, of_buildings = map(np.random.default_rng, np.random.SeedSequence(given.seed).spawn(2))
    terrain(coast, given.folder / "dem.tif")
    layer = zones(coast, given.zones, of_zones)
    layer.to_file(given.folder / "zones.gpkg", layer="S_FLD_HAZ_AR")
    table = buildings(coast, given.buildings, of_buildings)
    table.to_csv(given.folder / "buildings.csv", index=False)


if __name__ == "__main__":
    main()
