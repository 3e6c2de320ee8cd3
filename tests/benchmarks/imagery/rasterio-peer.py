"""The peer of crown-statistics.ts: makes its image, and masks crown by crown with rasterio (BSD-3), as is usual."""
import json
import sys
import time

import numpy as np
import rasterio
from rasterio.features import geometry_mask
from rasterio.transform import from_origin
from rasterio.windows import Window


def make(path, pixels, pixel_m):
    """Smooth shapes with some texture: neither flat nor noise alone, so that deflate has its usual work."""
    columns = np.arange(pixels)
    texture = np.random.default_rng(5).integers(0, 8, (512, pixels))
    profile = dict(driver="GTiff", width=pixels, height=pixels, count=3, dtype="uint8", crs="EPSG:32617",
                   transform=from_origin(500000, 2850000, pixel_m, pixel_m), tiled=True, blockxsize=512,
                   blockysize=512, compress="deflate", zlevel=1, predictor=2, interleave="pixel", bigtiff="if_safer")
    with rasterio.open(path, "w", **profile) as out:
        for top in range(0, pixels, 512):
            rows = np.arange(top, min(top + 512, pixels))[:, None]
            for band in range(3):
                shape = 120 + 60 * np.sin(columns / (40 + band)) * np.cos(rows / (50 - band))
                out.write((shape + texture[: len(rows)]).astype("uint8"), band + 1,
                          window=Window(0, top, pixels, len(rows)))


def run(path, outlines, vertices, found):
    rings = np.fromfile(outlines).reshape(-1, vertices, 2)
    means = np.empty(len(rings))
    in_mask = in_reading = 0.0
    started = time.process_time()
    with rasterio.open(path) as image:
        for i, ring in enumerate(rings):
            left, top = np.floor(ring.min(axis=0)).astype(int)
            right, bottom = np.ceil(ring.max(axis=0)).astype(int)
            window = Window(left, top, right - left, bottom - top)
            transform = image.window_transform(window)
            ground = [transform * (x - left, y - top) for x, y in ring]
            before = time.process_time()
            bands = image.read(window=window)
            in_reading += time.process_time() - before
            before = time.process_time()
            inside = geometry_mask([{"type": "Polygon", "coordinates": [ground + ground[:1]]}],
                                   out_shape=bands.shape[1:], transform=transform, invert=True)
            in_mask += time.process_time() - before
            chosen = bands[:, inside]
            means[i] = chosen.mean(axis=1)[0]
            chosen.std(axis=1)
    seconds = time.process_time() - started
    means.tofile(found)
    print(json.dumps({"crowns": len(rings), "seconds": seconds, "maskSeconds": in_mask,
                      "readSeconds": in_reading}))


if sys.argv[1] == "versions":
    print(f"rasterio {rasterio.__version__} (GDAL {rasterio.__gdal_version__})")
elif sys.argv[1] == "make":
    make(sys.argv[2], int(sys.argv[3]), float(sys.argv[4]))
else:
    run(sys.argv[2], sys.argv[3], int(sys.argv[4]), sys.argv[5])
