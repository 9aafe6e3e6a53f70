"""Meshes of what is no plant: board, net cups, plugs, prints, tape, hose. Board millimetres, y down the board, z up."""

import bmesh
import bpy
import numpy as np

import materials
from deck_geometry import site_centres


def link(name, vertices, faces, material, uv=None, smooth=True):
    """Returns a new object from board coordinates (x, y, z); y is turned over into Blender's frame."""
    mesh = bpy.data.meshes.new(name)
    v = np.asarray(vertices, float) * (1, -1, 1)
    mesh.from_pydata(v.tolist(), [], [list(map(int, f)) for f in faces])
    if uv is not None:
        layer = mesh.uv_layers.new()
        index = np.empty(len(mesh.loops), int)
        mesh.loops.foreach_get("vertex_index", index)
        layer.data.foreach_set("uv", np.asarray(uv, np.float32)[index].ravel())
    if smooth:
        mesh.polygons.foreach_set("use_smooth", np.ones(len(mesh.polygons), bool))
    mesh.materials.append(material)
    obj = bpy.data.objects.new(name, mesh)
    bpy.context.scene.collection.objects.link(obj)
    return obj


def board(layout, hole_radius, material, mark_material):
    """Adds the board with its drilled holes, rounded edges and, where the layout has one, its orientation mark."""
    w, h = layout["board"]["width_mm"], layout["board"]["length_mm"]
    _, centres = site_centres(layout)
    bm = bmesh.new()

    def loop(points, z):
        return [bm.verts.new((x, -y, z)) for x, y in points]

    def edges(vs):
        return [bm.edges.new((vs[i], vs[(i + 1) % len(vs)])) for i in range(len(vs))]

    def skirt(profile, outline):
        rings = [loop(outline(offset), z) for offset, z in profile]
        for a, b in zip(rings, rings[1:]):
            for i in range(len(a)):
                j = (i + 1) % len(a)
                bm.faces.new((a[i], a[j], b[j], b[i])).smooth = True
        return rings[0]

    def rectangle(inset):
        radius, points = max(9 - inset, 2), []
        for cx, cy, start in ((w - radius - inset, radius + inset, -90), (w - radius - inset, h - radius - inset, 0),
                              (radius + inset, h - radius - inset, 90), (radius + inset, radius + inset, 180)):
            for k in range(6):
                t = np.radians(start + 18 * k)
                points.append((cx + radius * np.cos(t), cy + radius * np.sin(t)))
        return points

    top_edges = []
    outer = skirt(((5, 0), (2.2, -0.6), (0.6, -2.2), (0, -5), (0, -48)), rectangle)
    top_edges += [bm.edges.get((outer[i], outer[(i + 1) % len(outer)])) for i in range(len(outer))]
    for cx, cy in centres:
        def circle(offset, cx=cx, cy=cy):
            t = np.linspace(0, 2 * np.pi, 32, endpoint=False)
            return [(cx + (hole_radius + offset) * np.cos(a), cy + (hole_radius + offset) * np.sin(a)) for a in t]
        ring = skirt(((1.4, 0), (0.4, -0.5), (0, -1.8), (-0.5, -48)), circle)
        top_edges += [bm.edges.get((ring[i], ring[(i + 1) % len(ring)])) for i in range(len(ring))]
    bmesh.ops.triangle_fill(bm, use_beauty=True, use_dissolve=False, edges=top_edges, normal=(0, 0, 1))
    uv = bm.loops.layers.uv.new()
    for face in bm.faces:
        for corner in face.loops:
            corner[uv].uv = (corner.vert.co.x / w, 1 + corner.vert.co.y / h)
    mesh = bpy.data.meshes.new("board")
    bm.to_mesh(mesh)
    bm.free()
    mesh.materials.append(material)
    obj = bpy.data.objects.new("board", mesh)
    bpy.context.scene.collection.objects.link(obj)
    added = [obj]
    mark = layout.get("orientation_mark")
    if mark:
        t = np.linspace(0, 2 * np.pi, 40, endpoint=False)
        r = mark["diameter_mm"] / 2
        v = [(mark["x_mm"] + r * np.cos(a), mark["y_mm"] + r * np.sin(a), 0.25) for a in t]
        added.append(link("mark", v, [range(40)], mark_material))
    return added


def lathe(name, centre, profile, material, sides=36, cap=False):
    """Adds a turned shape about a site: profile is a list of (radius, z)."""
    t = np.linspace(0, 2 * np.pi, sides, endpoint=False)
    vertices = [(centre[0] + r * np.cos(a), centre[1] + r * np.sin(a), z) for r, z in profile for a in t]
    faces = [(k * sides + i, k * sides + (i + 1) % sides, (k + 1) * sides + (i + 1) % sides, (k + 1) * sides + i)
             for k in range(len(profile) - 1) for i in range(sides)]
    if cap:
        last = (len(profile) - 1) * sides
        faces.append([last + i for i in range(sides)])
    return link(name, vertices, faces, material)


def net_cup(centre, r, plastic, substrate):
    """Adds a black net cup with its rim on the board and a coarse substrate in it."""
    return [lathe("cup", centre, [(r + 3.2, 0.2), (r + 3.4, 1.6), (r + 2.4, 2.4), (r - 0.6, 2.2), (r - 1.6, 1.0), (r - 3.5, -30)], plastic),
            lathe("substrate", centre, [(r - 1.8, -5.5), (r * 0.6, -4.0), (r * 0.25, -3.2)], substrate, cap=True)]


def foam_plug(rng, centre, r, foam):
    """Adds a foam plug that stands a little over the deck."""
    z = rng.uniform(0.5, 3.0)
    return [lathe("plug", centre, [(r - 0.6, -30), (r - 0.6, z - 1.5), (r - 1.6, z - 0.3), (r - 3, z), (4.0, z - 0.3), (3.0, z - 2.5)], foam, cap=True)]


def flat_print(centre, side, z, material, turn_deg=0.0):
    """Adds a square print whose picture stands upright as seen with the board's first row on top."""
    c, s, k = np.cos(np.radians(turn_deg)), np.sin(np.radians(turn_deg)), side / 2
    corners = [(-k, -k), (k, -k), (k, k), (-k, k)]
    v = [(centre[0] + c * x - s * y, centre[1] + s * x + c * y, z) for x, y in corners]
    return link("print", v, [(0, 1, 2, 3)], material, uv=[(0, 1), (1, 1), (1, 0), (0, 0)], smooth=False)


def tape(rng, start, end, width, material):
    """Adds a strip of tape with slightly torn ends."""
    start, end = np.asarray(start, float), np.asarray(end, float)
    along = (end - start) / np.linalg.norm(end - start)
    side = np.array([-along[1], along[0]]) * width / 2
    n = 24
    v = []
    for k in range(n):
        p = start + (end - start) * k / (n - 1)
        ragged = rng.normal(0, 1.2) if k in (0, n - 1) else rng.normal(0, 0.12)
        z = 0.35 + 0.25 * abs(rng.normal())
        v += [(*(p + side + along * ragged), z), (*(p - side - along * ragged * 0.7), z)]
    faces = [(2 * k, 2 * k + 1, 2 * k + 3, 2 * k + 2) for k in range(n - 1)]
    return link("tape", v, faces, material)


def hose(points, radius, material):
    """Adds a hose along a smooth curve through board points (x, y, z) and returns it with its triangles."""
    points = np.asarray(points, float)
    t = np.arange(len(points))
    dense = np.linspace(0, len(points) - 1, 120)
    path = np.stack([_spline(t, points[:, k], dense) for k in range(3)], -1)
    tangent = np.gradient(path, axis=0)
    tangent /= np.linalg.norm(tangent, axis=1, keepdims=True)
    side = np.cross(tangent, (0, 0, 1))
    other = np.cross(tangent, side)
    a = np.linspace(0, 2 * np.pi, 14, endpoint=False)
    ring = np.cos(a)[None, :, None] * side[:, None] + np.sin(a)[None, :, None] * other[:, None]
    v = (path[:, None] + radius * ring).reshape(-1, 3)
    i = np.arange(120 * 14).reshape(120, 14)
    nxt = np.roll(i, -1, 1)
    faces = np.stack([i[:-1], nxt[:-1], nxt[1:], i[1:]], -1).reshape(-1, 4)
    return link("hose", v, faces, material), np.concatenate([v[faces[:, [0, 1, 2]]], v[faces[:, [0, 2, 3]]]])


def _spline(t, values, at):
    """Returns a Catmull-Rom curve through the values."""
    padded = np.concatenate([[2 * values[0] - values[1]], values, [2 * values[-1] - values[-2]]])
    k = np.clip(at.astype(int), 0, len(values) - 2)
    f = at - k
    p0, p1, p2, p3 = (padded[k + j] for j in range(4))
    return 0.5 * (2 * p1 + (p2 - p0) * f + (2 * p0 - 5 * p1 + 4 * p2 - p3) * f**2 + (3 * p1 - p0 - 3 * p2 + p3) * f**3)


def standard_materials():
    """Returns the materials that every scene shares."""
    return {
        "cup": materials.plain("cup", (0.012, 0.012, 0.013), 0.42, 0.5),
        "substrate": materials.plain("substrate", (0.040, 0.026, 0.016), 0.95, 0.1, grain=0.8, scale=0.35),
        "foam": materials.plain("foam", (0.36, 0.33, 0.24), 0.95, 0.1, grain=0.22, scale=0.5),
        "mark": materials.plain("mark", (0.02, 0.02, 0.03), 0.5, 0.4),
        "tape": materials.plain("tape", (0.015, 0.13, 0.50), 0.38, 0.5),
        "hose": materials.plain("hose", (0.02, 0.02, 0.022), 0.4, 0.5),
        "hose-green": materials.plain("hose-green", (0.03, 0.17, 0.07), 0.4, 0.5),
        "water": materials.water(),
    }
