"""Exact areas and heights: every plant seen straight down, rasterised at pixel centres on a grid over the deck."""

import numpy as np

CELL_MM = 0.4


def height_map(triangles, origin_mm, shape):
    """Returns the top height per cell, -inf where nothing is. Triangles are (n, 3, 3) in board mm, z up."""
    top = np.full(shape, -np.inf, np.float32)
    flat = top.ravel()
    p = triangles[:, :, :2] - np.asarray(origin_mm)
    p = p / CELL_MM - 0.5
    lo = np.ceil(p.min(1)).astype(int)
    hi = np.floor(p.max(1)).astype(int)
    span = hi - lo + 1
    inside = (span > 0).all(1) & (hi >= 0).all(1) & (lo[:, 0] < shape[1]) & (lo[:, 1] < shape[0])
    p, lo, span, z = p[inside], lo[inside], span[inside], triangles[inside, :, 2]
    bucket = np.ceil(np.log2(np.maximum(span, 1)) * 2).astype(int)
    key = bucket[:, 0] * 100 + bucket[:, 1]
    for k in np.unique(key):
        chosen = np.flatnonzero(key == k)
        kx, ky = span[chosen].max(0)
        per = max(1, int(3e6 // (kx * ky)))
        for start in range(0, len(chosen), per):
            c = chosen[start:start + per]
            x = lo[c, 0, None, None] + np.arange(kx)[None, None, :]
            y = lo[c, 1, None, None] + np.arange(ky)[None, :, None]
            a, b, d = (p[c, i, :, None, None] for i in range(3))
            area = (b[:, 0] - a[:, 0]) * (d[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (d[:, 0] - a[:, 0])
            ok = abs(area) > 1e-12
            area = np.where(ok, area, 1)
            w1 = ((x - a[:, 0]) * (d[:, 1] - a[:, 1]) - (y - a[:, 1]) * (d[:, 0] - a[:, 0])) / area
            w2 = ((b[:, 0] - a[:, 0]) * (y - a[:, 1]) - (b[:, 1] - a[:, 1]) * (x - a[:, 0])) / area
            hit = ok & (w1 >= 0) & (w2 >= 0) & (w1 + w2 <= 1) & (x >= 0) & (y >= 0) & (x < shape[1]) & (y < shape[0])
            zz = z[c]
            height = zz[:, 0, None, None] * (1 - w1 - w2) + zz[:, 1, None, None] * w1 + zz[:, 2, None, None] * w2
            np.maximum.at(flat, (y * shape[1] + x)[hit], height[hit].astype(np.float32))
    return top


def measure(plants, others, size_mm, margin_mm=200):
    """Returns per plant (projected cm2, visible cm2, mean height mm, top height mm).

    Plants and others are lists of triangles in board mm; others (neighbouring boards' plants, a hose) only hide."""
    shape = (int((size_mm[1] + 2 * margin_mm) / CELL_MM), int((size_mm[0] + 2 * margin_mm) / CELL_MM))
    origin = (-margin_mm, -margin_mm)
    best = np.full(shape, -np.inf, np.float32)
    owner = np.full(shape, -1, np.int16)
    alone = []
    for i, triangles in enumerate([*plants, *others]):
        low = triangles[:, :, :2].reshape(-1, 2).min(0) - 2 * CELL_MM
        high = triangles[:, :, :2].reshape(-1, 2).max(0) + 2 * CELL_MM
        first = np.maximum(((low - origin) / CELL_MM).astype(int), 0)
        last = np.minimum(((high - origin) / CELL_MM).astype(int) + 1, (shape[1], shape[0]))
        if (last <= first).any():
            alone.append((0.0, 0.0, 0.0))
            continue
        window = (slice(first[1], last[1]), slice(first[0], last[0]))
        top = height_map(triangles, np.asarray(origin) + first * CELL_MM, (last[1] - first[1], last[0] - first[0]))
        covered = np.isfinite(top)
        heights = top[covered]
        alone.append((covered.sum() * CELL_MM**2 / 100, float(heights.mean()) if heights.size else 0.0, float(heights.max()) if heights.size else 0.0))
        nearer = top > best[window]
        best[window][nearer] = top[nearer]
        owner[window][nearer] = i
    seen = np.bincount(owner[owner >= 0], minlength=len(alone)) * CELL_MM**2 / 100
    return [(a, float(seen[i]), mean, high) for i, (a, mean, high) in enumerate(alone[:len(plants)])]
