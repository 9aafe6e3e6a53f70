"""Geometry that needs no Blender: site names and centres, the camera pose, and the lens (Brown 1971)."""

import numpy as np

# rotations are right-handed, in degrees; the board frame with z down is (x, y, -z) in mm


def site_centres(layout):
    """Returns the site names and their centres in mm, row by row."""
    g = layout["sites"]
    names, centres = [], []
    for row in range(g["rows"]):
        for column in range(g["columns"]):
            names.append(f"{chr(65 + row)}{column + 1}")
            shift = g["stagger_x_mm"] if row % 2 else 0
            centres.append((g["first_x_mm"] + column * g["pitch_x_mm"] + shift, g["first_y_mm"] + row * g["pitch_y_mm"]))
    return names, centres


def rotation(axis, degrees):
    """Returns the right-handed rotation matrix about axis 0, 1 or 2."""
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    m = np.eye(3)
    i, j = [(1, 2), (2, 0), (0, 1)][axis]
    m[i, i], m[i, j], m[j, i], m[j, j] = c, -s, s, c
    return m


def pose(aim_mm, height_mm, tilt_x_deg, tilt_y_deg, turn_deg):
    """Returns R and t of a camera at the height over the deck whose axis meets the deck at the aim point."""
    r = rotation(2, turn_deg) @ rotation(0, tilt_x_deg) @ rotation(1, tilt_y_deg)
    axis = r[2]
    centre = np.array([*aim_mm, 0.0]) - axis * (height_mm / axis[2])
    return r, -r @ centre


def place_in_scene(r, t, board):
    """Returns R and t for coordinates of a board that lies in the scene at board = (x, y, degrees)."""
    turn = rotation(2, board[2])
    return r @ turn, r @ np.array([board[0], board[1], 0.0]) + t


def distort(lens, x, y):
    """Returns the distorted normalised coordinates (Brown 1971)."""
    r2 = x * x + y * y
    radial = 1 + r2 * (lens["k1"] + r2 * (lens["k2"] + r2 * lens["k3"]))
    dx = 2 * lens["p1"] * x * y + lens["p2"] * (r2 + 2 * x * x)
    dy = lens["p1"] * (r2 + 2 * y * y) + 2 * lens["p2"] * x * y
    return x * radial + dx, y * radial + dy


def undistort(lens, x, y):
    """Returns the pinhole coordinates whose distorted ones are x, y (fixed-point iteration)."""
    u, v = x.copy(), y.copy()
    for _ in range(30):
        du, dv = distort(lens, u, v)
        u, v = u + x - du, v + y - dv
    return u, v


def project(lens, r, t, points):
    """Returns photo pixels (pixel centres at whole numbers) of points (x, y, -z)."""
    p = points @ r.T + t
    x, y = distort(lens, p[:, 0] / p[:, 2], p[:, 1] / p[:, 2])
    return np.stack([lens["fx_px"] * x + lens["cx_px"], lens["fy_px"] * y + lens["cy_px"]], -1)
