#!/usr/bin/env python3
"""Compares the values of two results row by row, and explains every difference.

    compare.py FOLDER SILLMARK.csv BASELINE.csv

FOLDER holds dem.tif, zones.gpkg and buildings.csv. Compared are zone, ground, flood level and
protection height, and the force where both have one. Each difference is looked up in the maps
anew (`explain.py`): it gets the name of a class only if the maps show its cause there, and if
sillmark's value is the one that its documentation promises for that cause. A difference that
is not explained is printed with its row, and ends the comparison with status 1.
"""

import sys
from pathlib import Path

import numpy as np
import pandas as pd

from explain import GroundCauses, ZoneCauses

METRES = 1e-3
# Both write four decimals of a metre; a force of two figures that each round a height.
FORCE_SHARE, FORCE = 2e-3, 5.0
SHOWN = 20


def main(folder: Path, ours_path: Path, base_path: Path) -> int:
    ours, base = read(folder, ours_path, base_path)
    zone = text(ours.zone) != text(base.zone)
    ground = differs(ours.ground_m, base.ground_m)
    level = differs(ours.flood_level_m, base.flood_level_m)
    height = differs(ours.protection_height_m, base.protection_m)

    causes = ZoneCauses(folder, ours, base)
    found = {
        "zone": (zone, causes.classes(zone)),
        "flood level": (level, causes.classes(level)),
        "protection height": (height, heights(ours, base, height, level, causes)),
        "ground": (ground, GroundCauses(folder, ours, base).classes(ground)),
    }
    print(f"{len(ours):,} rows, each value of both; tolerance {METRES} m")
    unexplained = 0
    for name, (different, classes) in found.items():
        counts = pd.Series(classes[different]).value_counts()
        parts = [f"{count:,} {cause or 'not explained'}" for cause, count in counts.items()]
        print(f"  {name}: {different.sum():,} differ" + (": " + ", ".join(parts) if parts else ""))
        open_rows = np.flatnonzero(different & (classes == ""))
        unexplained += len(open_rows)
        for row in open_rows[:SHOWN]:
            print(f"    not explained, row {row + 2}: {show(ours, row)} | {show(base, row)}")
    unexplained += forces(ours, base, height)
    print(f"  not explained: {unexplained:,}")
    return 1 if unexplained else 0


def read(folder: Path, ours_path: Path, base_path: Path) -> tuple[pd.DataFrame, pd.DataFrame]:
    """Both results by the rows of the table; a row that one of them lacks is an error."""
    # "NA" would be a missing value otherwise.
    options = dict(keep_default_na=False, na_values=[""], low_memory=False)
    table = pd.read_csv(folder / "buildings.csv", **options)
    ours, base = pd.read_csv(ours_path, **options), pd.read_csv(base_path, **options)
    for path, result in ((ours_path, ours), (base_path, base)):
        if len(result) != len(table) or not (result.id == table.id).all():
            sys.exit(f"{path}: its ids are not those of the table in their order")
    # The baseline may have rounded the coordinates.
    return ours, base.assign(longitude=table.longitude, latitude=table.latitude)


def text(values: pd.Series) -> np.ndarray:
    return values.astype(object).where(values.notna(), "").to_numpy(dtype=str)


def differs(left: pd.Series, right: pd.Series) -> np.ndarray:
    one_is_missing = left.isna() != right.isna()
    return (one_is_missing | ((left - right).abs() > METRES)).to_numpy()


def heights(ours, base, different, level, causes) -> np.ndarray:
    """A height may differ where the level does, if it follows from our own level."""
    follows = ours.flood_level_m + ours.freeboard_m - ours.threshold_m
    agrees = (ours.protection_height_m - follows.clip(lower=0.0)).abs() <= METRES
    agrees |= ours.protection_height_m.isna() & ours.flood_level_m.isna()
    classes = causes.classes(different & level)
    return np.where(agrees, classes, "")


def forces(ours, base, height) -> int:
    """Forces follow from heights; another weight of water is told as one ratio."""
    theirs = base.force_kn_per_m * 1000.0
    both = (ours.force_n_per_m.notna() & theirs.notna()).to_numpy() & ~height
    large = both & (theirs > 1000.0).to_numpy()
    ratio = (ours.force_n_per_m / theirs)[large]
    if ratio.empty:
        print("  force: no row to compare")
        return 0
    middle = ratio.median()
    off = (ours.force_n_per_m - theirs * middle).abs() > FORCE_SHARE * theirs + FORCE
    off = off.to_numpy() & both
    print(f"  force: {both.sum():,} rows, sillmark / baseline {middle:.5f} (the weight of water)")
    for row in np.flatnonzero(off)[:SHOWN]:
        print(f"    not explained, row {row + 2}: {show(ours, row)} | {show(base, row)}")
    # A weight of water that no water has explains nothing.
    return int(off.sum()) if 0.99 < middle < 1.01 else int(both.sum())


def show(result: pd.DataFrame, row: int) -> str:
    return " ".join(f"{name}={value}" for name, value in result.iloc[row].items())


if __name__ == "__main__":
    sys.exit(main(*map(Path, sys.argv[1:4])))
