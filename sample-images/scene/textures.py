"""Pictures painted with numpy and handed to Blender: leaf veins, stained board, sky, printed tags."""

import subprocess
from pathlib import Path

import bpy
import numpy as np

from noise import cells, cloud, smoothstep


def to_image(name, rgb, colour=True):
    """Returns a Blender float image of linear values (height, width, 3), first row on top."""
    height, width = rgb.shape[:2]
    image = bpy.data.images.new(name, width, height, alpha=False, float_buffer=True, is_data=True)
    rgba = np.ones((height, width, 4), np.float32)
    rgba[..., :3] = rgb
    image.pixels.foreach_set(rgba[::-1].ravel())
    image.pack()
    return image


def leaf_veins(rng, size=512, sides=9, forward=0.30, net=26):
    """Returns vein strength, bump height and mottle of a leaf as one picture; the midrib is the middle column."""
    v, u = np.meshgrid(np.linspace(1, 0, size), np.linspace(-1, 1, size), indexing="ij")
    across = abs(u)
    warp = 0.012 * cloud(rng, size, size, 120)
    midrib = np.exp(-((across / (0.045 * (1.15 - v))) ** 2))
    strength, near = midrib.copy(), np.full_like(u, 9.0)
    for side in (-1, 1):
        here = (u * side) > 0
        for k in range(sides):
            v0 = (k + 0.35 + rng.uniform(-0.22, 0.22)) / sides * 0.92
            d = abs(v - (v0 + forward * across**1.25 * (1 - 0.35 * v0)) + warp)
            width = 0.007 * (1.25 - across)
            strength = np.where(here, np.maximum(strength, (0.85 - 0.45 * across) * np.exp(-((d / width) ** 2))), strength)
            near = np.where(here, np.minimum(near, d), near)
    f1, f2 = cells(rng, size, size, net)
    mesh = np.exp(-(((f2 - f1) / 0.10) ** 2))
    fine1, fine2 = cells(rng, size, size, net * 2)
    strength = np.maximum(strength, 0.30 * mesh)
    strength = np.maximum(strength, 0.13 * np.exp(-(((fine2 - fine1) / 0.16) ** 2)))
    pillow = np.sqrt(np.clip(f2 - f1, 0, 1)) * 0.55 + 0.45 * smoothstep(0, 0.045, near)
    bump = pillow - 0.25 * midrib + 0.05 * cloud(rng, size, size, 30)
    mottle = 0.5 + 0.14 * cloud(rng, size, size, 60, 1.3)
    return np.clip(np.stack([strength, bump, mottle], -1), 0, 1.5)


def board_skin(rng, layout, px_per_mm, dirt, algae, holes):
    """Returns the colour of an old polystyrene board: beads, grime, algae round holes and along the wet edges, drips."""
    w, h = (int(layout["board"][k] * px_per_mm) for k in ("width_mm", "length_mm"))
    x, y = np.meshgrid((np.arange(w) + 0.5) / px_per_mm, (np.arange(h) + 0.5) / px_per_mm)
    f1, f2 = cells(rng, h, w, int(w / px_per_mm / 4.2))
    seams = np.exp(-(((f2 - f1) / 0.16) ** 2))
    skin = np.array([0.80, 0.80, 0.775]) * (1 - 0.055 * seams - 0.02 * (f1 - 0.4))[..., None]
    broad = cloud(rng, h, w, 260, 2.0)
    mid = cloud(rng, h, w, 60, 1.5)
    fine = cloud(rng, h, w, 9, 1.2)
    edge = np.minimum(np.minimum(x, layout["board"]["width_mm"] - x), np.minimum(y, layout["board"]["length_mm"] - y))
    hole = np.full((h, w), 1e3)
    for cx, cy, radius in holes:
        hole = np.minimum(hole, np.hypot(x - cx, y - cy) - radius)
    grime = np.clip(0.20 + 0.16 * broad + 0.10 * mid + 0.05 * fine, 0, 1) * dirt
    skin = skin * (1 - grime[..., None] * np.array([0.16, 0.20, 0.34]))
    specks = smoothstep(2.3, 3.0, cloud(rng, h, w, 5, 0.9) + 0.25 * mid) * dirt
    skin = skin * (1 - 0.65 * specks[..., None] * np.array([0.8, 0.9, 1.0]))
    ring = np.exp(-np.clip(hole, 0, None) / (5 + 2.5 * np.clip(mid + 1, 0.1, 3))) * smoothstep(-0.9, 0.9, broad + 0.7 * mid)
    rim = np.exp(-np.clip(edge, 0, None) / (5 + 4 * np.clip(mid + broad + 1, 0.1, 4))) * smoothstep(-0.6, 1.2, broad * 0.8 + mid)
    patches = smoothstep(1.0, 2.6, broad + 0.5 * mid + 0.2 * fine) * 0.5
    green = np.clip((0.75 * ring + 0.85 * rim + patches) * algae * (0.85 + 0.25 * fine), 0, 0.92)
    tone = np.clip(0.5 + 0.3 * mid, 0, 1)[..., None]
    algae_colour = np.array([0.115, 0.135, 0.030]) * tone + np.array([0.17, 0.125, 0.055]) * (1 - tone)
    skin = skin * (1 - green[..., None]) + algae_colour * green[..., None]
    for _ in range(int(6 * dirt)):  # scratches
        x0, y0, t = rng.uniform(0, layout["board"]["width_mm"]), rng.uniform(0, layout["board"]["length_mm"]), rng.uniform(0, np.pi)
        along, off = (x - x0) * np.cos(t) + (y - y0) * np.sin(t), -(x - x0) * np.sin(t) + (y - y0) * np.cos(t)
        mark = np.exp(-((off / 0.7) ** 2)) * (abs(along) < rng.uniform(10, 45))
        skin = skin * (1 - 0.22 * mark[..., None])
    return skin


def sky(rng, kind):
    """Returns the view up from the pond as a full sphere: bright panes, dark bars and gutters, darker towards the walls."""
    h, w = 256, 512
    elevation = np.pi / 2 - (np.arange(h) + 0.5)[:, None] / h * np.pi
    azimuth = (np.arange(w) + 0.5)[None, :] / w * 2 * np.pi
    up = np.sin(elevation) * np.ones((1, w))
    pane_x = np.cos(elevation) * np.cos(azimuth) / np.maximum(up, 0.05)
    pane_y = np.cos(elevation) * np.sin(azimuth) / np.maximum(up, 0.05)
    light = (1 + 2 * np.clip(up, 0, 1)) / 3 * (1 + 0.10 * cloud(rng, h, w, 80))
    bars = np.maximum(smoothstep(0.46, 0.48, abs((pane_x * 1.1) % 1 - 0.5)), smoothstep(0.44, 0.47, abs((pane_y * 0.35 + 0.2) % 1 - 0.5)))
    light = light * (1 - 0.72 * bars)
    light = np.where(up < 0.10, 0.22 + 0.2 * np.clip(up + 0.3, 0, 0.4), light)
    light = np.where(up < -0.02, 0.07, light)
    tint = {"overcast": (0.96, 1.0, 1.04), "sun": (0.75, 0.92, 1.2), "warm": (1.05, 1.0, 0.9), "evening": (0.85, 0.97, 1.2)}[kind]
    return light[..., None] * np.array(tint)


def printed(folder, payload):
    """Returns the paths of the marker pictures 0-3 and of the raft tag, made by print_tags.py in the folder."""
    script = Path(__file__).with_name("print_tags.py")
    subprocess.run(["/usr/bin/python3", str(script), str(folder), *payload], check=True)


def load_print(path):
    """Returns a printed picture, to be read as linear values."""
    image = bpy.data.images.load(str(path))
    image.colorspace_settings.name = "Non-Color"
    image.pack()
    return image
