"""Smooth random fields as numpy arrays, all from a given generator, so that a scene is the same every time."""

import numpy as np


def cloud(rng, height, width, coarsest_px, slope=1.6):
    """Returns a field with mean 0 and standard deviation 1 whose power falls as frequency ** -slope
    below the period coarsest_px (filtered white noise)."""
    fy = np.fft.fftfreq(height)[:, None]
    fx = np.fft.rfftfreq(width)[None, :]
    f = np.hypot(fy, fx)
    gain = 1.0 / (f**2 + (1.0 / coarsest_px) ** 2) ** (slope / 2)
    field = np.fft.irfft2(np.fft.rfft2(rng.standard_normal((height, width))) * gain, s=(height, width))
    field -= field.mean()
    return field / (field.std() + 1e-12)


def wave(rng, x, frequencies, amplitudes):
    """Returns a sum of sines of x with random phases and slightly random frequencies."""
    total = np.zeros_like(np.asarray(x, float))
    for f, a in zip(frequencies, amplitudes):
        f = f * rng.uniform(0.85, 1.15)
        total += a * np.sin(2 * np.pi * f * x + rng.uniform(0, 2 * np.pi))
    return total


def cells(rng, height, width, across):
    """Returns the Worley fields (F1, F2) of a jittered grid with the given number of cells across the width,
    in cell units."""
    size = width / across
    rows = int(np.ceil(height / size)) + 4
    cols = across + 4
    px = np.arange(cols)[None, :] - 2 + rng.uniform(0.1, 0.9, (rows, cols))
    py = np.arange(rows)[:, None] - 2 + rng.uniform(0.1, 0.9, (rows, cols))
    x = (np.arange(width) / size)[None, :] * np.ones((height, 1))
    y = (np.arange(height) / size)[:, None] * np.ones((1, width))
    ix, iy = x.astype(int) + 2, y.astype(int) + 2
    f1 = np.full((height, width), 9.0)
    f2 = f1.copy()
    for dy in (-1, 0, 1):
        for dx in (-1, 0, 1):
            d = np.hypot(px[iy + dy, ix + dx] - x, py[iy + dy, ix + dx] - y)
            f2 = np.minimum(f2, np.maximum(f1, d))
            f1 = np.minimum(f1, d)
    return f1, f2


def smoothstep(lo, hi, x):
    """Returns the cubic step from 0 at lo to 1 at hi."""
    t = np.clip((np.asarray(x, float) - lo) / (hi - lo), 0, 1)
    return t * t * (3 - 2 * t)
