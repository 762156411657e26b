"""Ground by a bilinear sum over a raster's array: no interpolation of GDAL's."""

import numpy
import pyproj
import rasterio


class Ground:
    """The first band of a raster, asked in WGS 84."""

    def __init__(self, path):
        with rasterio.open(path) as dem:
            array = dem.read(1)
            # Compared in the band's own type; what no terrain can be is no value either.
            void = ~numpy.isfinite(array.astype("float64"))
            if dem.nodata is not None:
                void |= array == numpy.asarray(dem.nodata).astype(array.dtype)
            self.array = array.astype("float64")
            self.array[void | (numpy.abs(self.array) > 1e6)] = numpy.nan
            self.transform, self.bounds, crs = dem.transform, dem.bounds, dem.crs.to_wkt()
        self.to_dem = pyproj.Transformer.from_crs("EPSG:4326", crs, always_xy=True)

    def degrees(self, x, y):
        """Longitude and latitude of a point of the raster's plane."""
        return self.to_dem.transform(x, y, direction="INVERSE")

    def at(self, longitude, latitude):
        """Stored units between the four nearest cell centres; the edge in the outer half cell."""
        column, row = ~self.transform * self.to_dem.transform(longitude, latitude)
        rows, columns = self.array.shape
        if not (0 <= column <= columns and 0 <= row <= rows):
            return "outside"
        column = min(max(column - 0.5, 0.0), columns - 1.0)
        row = min(max(row - 0.5, 0.0), rows - 1.0)
        left, top = int(min(column, columns - 2)), int(min(row, rows - 2))
        right, lower = column - left, row - top
        shares = numpy.array(
            [
                [(1 - lower) * (1 - right), (1 - lower) * right],
                [lower * (1 - right), lower * right],
            ]
        )
        cells = self.array[top : top + 2, left : left + 2]
        if numpy.isnan(cells[shares > 1e-7]).any():
            return "void"
        return f"{numpy.nansum(cells * shares):.7f}"
