"""One leaf as a bent, cupped, ruffled sheet, in mm.

A leaf is first drawn flat: x across, y along the midrib, base at (0, 0), tip at (0, 1). Grid lines run from the midrib
forward to the margin, as the side veins of a leaf do, so that the margin is sampled evenly right round the tip.
The sheet is then bent along the midrib, cupped across it, and moved along its normal by ruffles and blisters.
"""

from dataclasses import dataclass

import numpy as np

from noise import smoothstep, wave


@dataclass
class Leaf:
    """Shape of one leaf. Angles in degrees over the horizontal, lengths in mm."""

    length: float
    width: float
    azimuth: float = 0.0
    base: tuple = (0.0, 0.0, 0.0)
    rise: float = 20.0  # elevation at the base
    rise_tip: float = 0.0  # elevation at the tip
    roll: float = 0.0  # turn about the midrib
    swerve: float = 0.0  # sideways bend of the midrib from base to tip
    cup: float = 0.3  # half angle across the sheet, radians; negative folds down
    widest: float = 0.62  # where along the midrib the leaf is widest, 0..1
    tip_power: float = 0.5  # 0.5 round, 1 pointed
    petiole: float = 0.2  # base width / full width
    petiole_length: float = 0.08
    lobes: int = 0
    lobe_depth: float = 0.0
    ruffle: tuple = ()  # pairs (waves along the margin, height / length)
    curl: float = 0.6  # sideways part of the ruffle
    blister: float = 0.010
    jag: float = 0.02
    rows: int = 26
    columns: int = 9
    colour: object = None  # (s, tau, rng) -> linear RGB


def half_width(leaf, y):
    """Returns half the flat width at y, as a share of the full width."""
    c = leaf.widest
    up = np.sin(np.pi / 2 * np.clip((y - leaf.petiole_length) / (c - leaf.petiole_length), 0, 1)) ** 1.15
    down = np.clip(1 - (np.clip((y - c) / (1 - c), 0, 1)) ** (2.0 if leaf.tip_power <= 0.5 else 1.6), 0, 1) ** leaf.tip_power
    blade = np.where(y < c, up, down)
    return 0.5 * np.maximum(blade, leaf.petiole * (1 - smoothstep(0.3, 0.9, y)) * np.where(y < c, 1, down))


def flat_grid(leaf, rng):
    """Returns flat x, y, the margin coordinate (0 base, 1 tip, 2 base again), s and tau on the grid."""
    dense = 1 - (1 - np.linspace(0, 1, 800)) ** 2
    mx = half_width(leaf, dense) * leaf.width
    my = dense * leaf.length
    arc = np.concatenate([[0], np.cumsum(np.hypot(np.diff(mx), np.diff(my)))])
    s = np.linspace(0, 1, leaf.rows)
    margin_x = np.interp(s * arc[-1], arc, mx)
    margin_y = np.interp(s * arc[-1], arc, my)
    margin_x[-1] = 0.0
    tau = np.linspace(0, 1, leaf.columns) ** 0.8
    mid_y = np.minimum(leaf.length * 0.93 * s**1.05, margin_y)
    sides = []
    for side in (-1, 1):
        shrink = np.ones_like(s)
        if leaf.lobes:
            phase = rng.uniform(-0.12, 0.12)
            dents = (0.5 + 0.5 * np.cos(2 * np.pi * (leaf.lobes + 0.5) * (s**0.9 + phase * (1 - s) * s))) ** 1.4
            shrink -= leaf.lobe_depth * dents * smoothstep(0.1, 0.3, s) * smoothstep(1.0, 0.9, s)
        ell = s if side < 0 else 2 - s
        jag = 1 + leaf.jag * wave(rng, s, (5, 11), (1, 0.6)) * smoothstep(1.0, 0.85, s)
        ex = margin_x * shrink * jag
        ey = mid_y + (margin_y - mid_y) * (0.55 + 0.45 * shrink)
        x = side * ex[:, None] * tau[None, :]
        y = mid_y[:, None] + (ey - mid_y)[:, None] * tau[None, :]
        sides.append((x, y, np.repeat(ell[:, None], tau.size, 1)))
    left, right = sides
    x = np.hstack([left[0][:, :0:-1], right[0]])
    y = np.hstack([left[1][:, :0:-1], right[1]])
    ell = np.hstack([left[2][:, :0:-1], right[2]])
    tau_grid = np.repeat(np.concatenate([tau[:0:-1], tau])[None, :], leaf.rows, 0)
    return x, y, ell, np.repeat(s[:, None], x.shape[1], 1), tau_grid


def midrib(leaf, rng):
    """Returns y, and along it the outward and upward place and the elevation in radians."""
    y = np.linspace(0, 1, 60)
    wobble = np.radians(5) * wave(rng, y, (0.7, 1.6), (1, 0.5)) * y
    angle = np.radians(leaf.rise + (leaf.rise_tip - leaf.rise) * y**1.2) + wobble
    step = leaf.length / 59
    out = np.concatenate([[0], np.cumsum(np.cos(angle[:-1]) * step)])
    up = np.concatenate([[0], np.cumsum(np.sin(angle[:-1]) * step)])
    return y * leaf.length, out, up, angle


def build(leaf, rng):
    """Returns vertices (n, 3) in mm about the plant's foot, quads (m, 4), UV (n, 2) and colours (n, 3)."""
    x, y, ell, s, tau = flat_grid(leaf, rng)
    ym, out, up, angle = midrib(leaf, rng)
    r, z, a = (np.interp(y, ym, v) for v in (out, up, angle))
    kappa = leaf.cup / max(leaf.width / 2, 1e-6)
    bend = kappa * x
    lateral = np.where(abs(bend) > 1e-4, np.sin(bend) / (kappa + 1e-12), x)
    lift = (1 - np.cos(bend)) / (kappa + 1e-12)
    ruffle = np.zeros_like(x)
    slide = np.zeros_like(x)
    reach = smoothstep(0.12, 0.45, s)
    for waves, height in leaf.ruffle:
        sharp = 2.2 if waves < 8 else 3.5
        warp = ell + 0.03 * wave(rng, ell, (2.3,), (1,))
        phase = 2 * np.pi * waves * rng.uniform(0.9, 1.1) * warp + rng.uniform(0, 6.28)
        swell = height * leaf.length * (1 + 0.45 * wave(rng, ell, (1.7, 3.1), (0.7, 0.5))) * tau**sharp * reach
        ruffle += swell * np.sin(phase)
        slide += leaf.curl * swell * np.cos(phase)
    blister = leaf.blister * leaf.length * (
        wave(rng, s * 1.0 + 0.35 * tau, (5, 8), (0.7, 0.4)) * wave(rng, tau + 0.2 * np.sign(x), (1.6, 2.7), (1, 0.5)))
    groove = -0.012 * leaf.length * np.exp(-((x / (0.035 * leaf.width + 1e-6)) ** 2))
    d = lift + ruffle + blister * smoothstep(0, 0.2, tau) + groove
    roll = np.radians(leaf.roll) * (y / leaf.length)
    lateral, d = lateral * np.cos(roll) - d * np.sin(roll), lateral * np.sin(roll) + d * np.cos(roll)
    away = slide * 0.7
    radial = r - d * np.sin(a) + away * np.cos(a)
    height = z + d * np.cos(a) + away * np.sin(a)
    turn = np.radians(leaf.azimuth + leaf.swerve * (y / leaf.length) ** 1.3)
    px = leaf.base[0] + radial * np.cos(turn) - lateral * np.sin(turn)
    py = leaf.base[1] + radial * np.sin(turn) + lateral * np.cos(turn)
    vertices = np.stack([px, py, leaf.base[2] + height], -1)
    rows, cols = x.shape
    index = np.arange(rows * cols).reshape(rows, cols)
    quads = np.stack([index[:-1, :-1], index[:-1, 1:], index[1:, 1:], index[1:, :-1]], -1).reshape(-1, 4)
    uv = np.stack([0.5 + 0.5 * tau * np.sign(x + 1e-12), s], -1)
    colour = leaf.colour(s, tau, rng)
    return vertices.reshape(-1, 3), quads, uv.reshape(-1, 2), colour.reshape(-1, 3)


def tube(points, radii, colour, sides=7):
    """Returns a stem through the points in the same form as build."""
    points = np.asarray(points, float)
    tangent = np.gradient(points, axis=0)
    tangent /= np.linalg.norm(tangent, axis=1, keepdims=True)
    side = np.cross(tangent, [0.3, 0.9, 0.1])
    side /= np.linalg.norm(side, axis=1, keepdims=True)
    other = np.cross(tangent, side)
    t = np.linspace(0, 2 * np.pi, sides, endpoint=False)
    ring = np.cos(t)[None, :, None] * side[:, None] + np.sin(t)[None, :, None] * other[:, None]
    vertices = points[:, None] + ring * np.asarray(radii, float)[:, None, None]
    n = len(points)
    index = np.arange(n * sides).reshape(n, sides)
    nxt = np.roll(index, -1, 1)
    quads = np.stack([index[:-1], nxt[:-1], nxt[1:], index[1:]], -1).reshape(-1, 4)
    uv = np.full((n * sides, 2), 0.75)
    return vertices.reshape(-1, 3), quads, uv, np.tile(np.asarray(colour, float), (n * sides, 1))
