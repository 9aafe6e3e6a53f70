"""Renders the sample photos with their exact truth, then writes the crop book.

blender -b -P sample-images/scene/render_samples.py -- [--only TEXT] [--samples N] [--scale S] [--work FOLDER] [--out FOLDER]
"""

import argparse
import json
import sys
import tempfile
import time
import zlib
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

import bpy
import numpy as np

import crop_book
import deck
import deck_geometry
import develop
import materials
import optics
import plants
import scenario
import textures
import truth

LOOKS = {
    "overcast": dict(exposure=1.16, balance=(1.0, 1.0, 0.97), vignette=0.16, noise_shot=0.014, noise_read=0.0025, sharpen=0.45),
    "sun": dict(exposure=1.35, balance=(1.0, 0.99, 0.96), vignette=0.14, noise_shot=0.012, noise_read=0.002, sharpen=0.45),
    "warm": dict(exposure=1.65, balance=(1.12, 1.0, 0.76), vignette=0.16, noise_shot=0.016, noise_read=0.003, sharpen=0.4),
    "evening": dict(exposure=0.42, balance=(0.93, 1.0, 1.10), vignette=0.20, noise_shot=0.030, noise_read=0.006, sharpen=0.35),
}
# habit: side veins, forward, net; vein colour, share, roughness, specular, light through, bump
LEAVES = {
    "butterhead": ((7, 0.30, 20), (0.46, 0.55, 0.17), 0.34, 0.33, 0.55, 0.22, 0.8),
    "frilled": ((8, 0.34, 26), (0.36, 0.48, 0.16), 0.30, 0.40, 0.42, 0.26, 0.45),
    "redleaf": ((8, 0.32, 24), (0.26, 0.17, 0.08), 0.25, 0.40, 0.42, 0.20, 0.50),
    "oakleaf": ((7, 0.32, 24), (0.34, 0.46, 0.14), 0.30, 0.42, 0.40, 0.26, 0.45),
    "basil": ((6, 0.36, 15), (0.17, 0.32, 0.05), 0.32, 0.32, 0.45, 0.22, 0.6),
    "seedling": ((5, 0.30, 14), (0.40, 0.52, 0.18), 0.22, 0.45, 0.40, 0.30, 0.25),
}


def seed(*words):
    return zlib.crc32("|".join(map(str, words)).encode())


class Stage:
    """One photo's scene: what was put in it, and the triangles that the truth needs."""

    def __init__(self, shot, folder):
        self.shot, self.folder = shot, folder
        bpy.ops.wm.read_factory_settings(use_empty=True)
        self.scene = bpy.context.scene
        self.shared = deck.standard_materials()
        self.leaf_materials = {}
        self.prints = {}

    def leaf_material(self, habit):
        if habit not in self.leaf_materials:
            (sides, forward, net), colour, share, rough, specular, through, bump = LEAVES[habit]
            veins = textures.to_image(f"veins-{habit}", textures.leaf_veins(np.random.default_rng(seed("veins", habit)), 512, sides, forward, net))
            self.leaf_materials[habit] = materials.leaf(f"leaf-{habit}", veins, colour, share, rough, specular, through, bump)
        return self.leaf_materials[habit]

    def print_material(self, key):
        if key not in self.prints:
            self.prints[key] = materials.printed(key, textures.load_print(self.folder / f"{key}.png"))
        return self.prints[key]

    def raft(self, raft, x, y, degrees, keep):
        """Adds a raft at its place; returns {site: (triangles in its own board mm, kind)}."""
        layout = scenario.LAYOUTS[scenario.layout_of(raft)]
        rng = np.random.default_rng(seed("board", raft))
        radius, filling = scenario.HOLES[scenario.layout_of(raft)]
        names, centres = deck_geometry.site_centres(layout)
        skin = textures.board_skin(rng, layout, 1.2, rng.uniform(0.5, 1.0), rng.uniform(0.45, 1.0), [(cx, cy, radius) for cx, cy in centres])
        material = materials.painted(f"board-{raft}", textures.to_image(f"skin-{raft}", skin), 0.7, 0.25, beads=True)
        objects = deck.board(layout, radius, material, self.shared["mark"])
        sites = {}
        for name, centre in zip(names, centres):
            plant = scenario.plant_at(raft, name, self.shot["date"])
            site_rng = np.random.default_rng(seed("site", raft, name))
            if plant is None:
                if site_rng.random() < 0.35:
                    objects += self.filling(filling, site_rng, centre, radius)
                sites[name] = (np.zeros((0, 3, 3)), "empty")
                continue
            habit, day, origin, kind = plant
            objects += self.filling(filling, site_rng, centre, radius)
            if not keep and not self.near_view(x, y, degrees, centre):
                continue
            pitch = min(layout["sites"]["pitch_x_mm"], layout["sites"]["pitch_y_mm"])
            v, quads, uv, colours = plants.grow(habit, day, seed("plant", raft, origin), scenario.VIGOUR.get(raft, 1.0), pitch / 2)
            v = v + [*(np.asarray(centre) + site_rng.normal(0, 1.5, 2)), 0]
            objects.append(self.plant(habit, v, quads, uv, colours))
            sites[name] = (np.concatenate([v[quads[:, [0, 1, 2]]], v[quads[:, [0, 2, 3]]]]), kind)
        if "markers" in layout:
            for number, centre in enumerate(layout["markers"]["centres_mm"]):
                objects.append(deck.flat_print(centre, layout["markers"]["side_mm"] * 10 / 8, 0.3, self.print_material(f"marker-{number}")))
            tag = layout["tag"]  # version 1 code: 21 modules and 2 white ones each side
            objects.append(deck.flat_print((tag["x_mm"], tag["y_mm"]), tag["side_mm"] * 25 / 21, 0.3, self.print_material(f"tag-{raft}")))
        if rng.random() < 0.6:
            w, h = layout["board"]["width_mm"], layout["board"]["length_mm"]
            y0 = rng.uniform(0.3, 0.7) * h
            side = rng.choice((12.0, w - 12.0))
            objects.append(deck.tape(rng, (side, y0), (side + rng.normal(0, 1), y0 + rng.uniform(60, 140)), 19, self.shared["tape"]))
        turn = np.radians(degrees)
        for obj in objects:
            obj.location = (x, -y, 0)
            obj.rotation_euler = (0, 0, -turn)
        return sites

    def filling(self, filling, rng, centre, radius):
        if filling == "cup":
            return deck.net_cup(centre, radius, self.shared["cup"], self.shared["substrate"])
        return deck.foam_plug(rng, centre, radius, self.shared["foam"])

    def near_view(self, x, y, degrees, centre):
        c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
        px, py = x + c * centre[0] - s * centre[1], y + s * centre[0] + c * centre[1]
        x0, y0, x1, y1 = self.view
        return x0 < px < x1 and y0 < py < y1

    def plant(self, habit, v, quads, uv, colours):
        mesh = bpy.data.meshes.new("plant")
        mesh.vertices.add(len(v))
        mesh.vertices.foreach_set("co", (v * (1, -1, 1)).astype(np.float32).ravel())
        mesh.loops.add(quads.size)
        mesh.loops.foreach_set("vertex_index", quads.astype(np.int32).ravel())
        mesh.polygons.add(len(quads))
        mesh.polygons.foreach_set("loop_start", np.arange(0, quads.size, 4, dtype=np.int32))
        mesh.polygons.foreach_set("loop_total", np.full(len(quads), 4, np.int32))
        mesh.polygons.foreach_set("use_smooth", np.ones(len(quads), bool))
        mesh.update()
        tissue = mesh.attributes.new("tissue", "FLOAT_COLOR", "POINT")
        tissue.data.foreach_set("color", np.concatenate([colours, np.ones((len(v), 1))], 1).astype(np.float32).ravel())
        place = mesh.attributes.new("place", "FLOAT_VECTOR", "POINT")
        place.data.foreach_set("vector", np.concatenate([uv, np.zeros((len(v), 1))], 1).astype(np.float32).ravel())
        mesh.materials.append(self.leaf_material(habit))
        obj = bpy.data.objects.new("plant", mesh)
        self.scene.collection.objects.link(obj)
        return obj

    def surroundings(self):
        """Adds the water, the sky and the sun."""
        size = 6000
        deck.link("water", [(-size, -size, -34), (size, -size, -34), (size, size, -34), (-size, size, -34)], [(0, 1, 2, 3)], self.shared["water"])
        kind = self.shot["kind"]
        world = bpy.data.worlds.new("sky")
        self.scene.world = world
        world.use_nodes = True
        nodes, links = world.node_tree.nodes, world.node_tree.links
        picture = nodes.new("ShaderNodeTexEnvironment")
        picture.image = textures.to_image("sky", textures.sky(np.random.default_rng(seed("sky", self.shot["name"])), kind))
        links.new(picture.outputs["Color"], nodes["Background"].inputs["Color"])
        nodes["Background"].inputs["Strength"].default_value = {"sun": 0.30, "evening": 0.8, "warm": 0.65}.get(kind, 0.55)
        world.cycles.sampling_method = "MANUAL"
        world.cycles.sample_map_resolution = 512
        strength, angle, colour, elevation = {
            "overcast": (1.7, 35, (1, 0.985, 0.96), 52), "sun": (4.2, 0.6, (1, 0.90, 0.74), 29),
            "warm": (0.9, 12, (1, 0.86, 0.70), 35), "evening": (0.2, 50, (0.9, 0.95, 1), 60)}[kind]
        lamp = bpy.data.lights.new("sun", "SUN")
        lamp.energy, lamp.angle, lamp.color = strength, np.radians(angle), colour
        sun = bpy.data.objects.new("sun", lamp)
        sun.rotation_euler = (np.radians(90 - elevation), 0, np.radians(seed("azimuth", self.shot["date"]) % 360 if kind != "sun" else 118))
        self.scene.collection.objects.link(sun)

    def render(self, samples, border=None, threads=1):
        """Renders and returns linear light, surface colour and normals as (height, width, 3), first row on top.
        A border (x0, y0, x1, y1 as shares from the bottom left) leaves the rest black."""
        scene = self.scene
        if border:
            scene.render.use_border = True
            for side, value in zip(("min_x", "min_y", "max_x", "max_y"), border):
                setattr(scene.render, f"border_{side}", value)
        scene.render.engine = "CYCLES"
        scene.cycles.device = "CPU"
        scene.cycles.samples = samples
        scene.cycles.use_denoising = False
        scene.cycles.use_adaptive_sampling = True
        scene.cycles.adaptive_threshold = 0.04
        scene.cycles.max_bounces, scene.cycles.diffuse_bounces, scene.cycles.glossy_bounces = 3, 3, 1
        scene.cycles.debug_bvh_type = "STATIC_BVH"
        scene.cycles.transmission_bounces, scene.cycles.transparent_max_bounces = 2, 2
        scene.cycles.caustics_reflective = scene.cycles.caustics_refractive = False
        scene.cycles.sample_clamp_indirect = 4
        scene.cycles.filter_width = 1.3
        scene.render.threads_mode, scene.render.threads = "FIXED", threads
        scene.render.use_persistent_data = False
        layer = scene.view_layers[0]
        layer.use_pass_diffuse_color = layer.use_pass_normal = True
        scene.use_nodes = True
        nodes, links = scene.node_tree.nodes, scene.node_tree.links
        nodes.clear()
        layers = nodes.new("CompositorNodeRLayers")
        files = nodes.new("CompositorNodeOutputFile")
        files.base_path = str(self.folder)
        files.format.file_format, files.format.color_depth = "OPEN_EXR", "32"
        files.file_slots.clear()
        for slot, output in (("light", "Image"), ("albedo", "DiffCol"), ("normal", "Normal")):
            files.file_slots.new(slot)
            links.new(layers.outputs[output], files.inputs[slot])
        scene.frame_set(1)
        bpy.ops.render.render(write_still=False)
        return [self.read(self.folder / f"{slot}0001.exr") for slot in ("light", "albedo", "normal")]

    def read(self, path):
        image = bpy.data.images.load(str(path), check_existing=False)
        image.colorspace_settings.name = "Non-Color"
        w, h = image.size
        values = np.empty(w * h * 4, np.float32)
        image.pixels.foreach_get(values)
        bpy.data.images.remove(image)
        return np.ascontiguousarray(values.reshape(h, w, 4)[::-1, :, :3])


def scaled(station, scale):
    lens = dict(station["lens"])
    for key in ("fx_px", "fy_px"):
        lens[key] *= scale
    for key in ("cx_px", "cy_px"):
        lens[key] = (lens[key] + 0.5) * scale - 0.5
    return lens, int(station["width"] * scale), int(station["height"] * scale)


def camera_of(shot):
    """Returns R and t of the shot's camera in the frame of the scene."""
    height = scenario.STATIONS[shot["station"]]["height_mm"]
    if shot["station"] == "gantry":
        p = scenario.GANTRY_POSE
        return deck_geometry.pose(p["aim"], height, *p["tilt"], p["turn"])
    board = scenario.LAYOUTS[scenario.layout_of(shot["rafts"][0][0])]["board"]
    aim = (board["width_mm"] / 2 + shot["aim"][0], board["length_mm"] / 2 + shot["aim"][1])
    return deck_geometry.pose(aim, height, *shot["tilt"], shot["turn"])


def hoses(stage):
    """Adds the hose of the shot; returns its triangles."""
    if stage.shot.get("hose") == "left":
        _, triangles = deck.hose([(-190, -150, -20), (-150, 90, -26), (-95, 330, -24), (-120, 600, -26), (-75, 820, -24), (-110, 1100, -20)], 9, stage.shared["hose-green"])
        return [triangles]
    if stage.shot["station"] == "gantry":
        _, triangles = deck.hose([(1775, -400, -10), (1752, 100, -20), (1768, 480, -24), (1748, 900, -20), (1780, 1500, -12)], 8, stage.shared["hose"])
        return [triangles]
    return []


def make(shot, options):
    """Renders one photo; returns its truth rows and camera record."""
    began = time.time()
    station = scenario.STATIONS[shot["station"]]
    lens, width, height = scaled(station, options.scale)
    frame = optics.Frame(lens, width, height)
    r, t = camera_of(shot)
    with tempfile.TemporaryDirectory() as folder:
        stage = Stage(shot, Path(folder))
        textures.printed(folder, [n for n in (*scenario.RAFTS, *scenario.EXTRAS)])
        corners = np.array([[sx * width / 2 / lens["fx_px"], sy * height / 2 / lens["fy_px"], 1.0] for sx in (-1, 1) for sy in (-1, 1)]) * 1.05
        ground = (corners * station["height_mm"] - t) @ r
        stage.view = (*(ground[:, :2].min(0) - 130), *(ground[:, :2].max(0) + 130))
        grown = {raft: (stage.raft(raft, x, y, d, True), (x, y, d)) for raft, x, y, d in shot["rafts"]}
        beside = [(stage.raft(raft, x, y, d, False), (x, y, d)) for raft, x, y, d in shot["neighbours"]]
        hose = hoses(stage)
        stage.surroundings()
        frame.camera(stage.scene, r, t)
        built = time.time()
        rows, record = [], {"station": shot["station"], "width_px": width, "height_px": height, "rafts": {}}
        for raft, (sites, place) in grown.items():
            rr, tt = deck_geometry.place_in_scene(r, t, place)
            record["rafts"][raft] = {"R": rr.tolist(), "t": tt.tolist()}
            if not options.no_truth:
                others = [moved(tri, p, place) for other, (s, p) in grown.items() if other != raft for tri, _ in s.values() if len(tri)]
                others += [moved(tri, p, place) for s, p in beside for tri, _ in s.values() if len(tri)] + [moved(tri, (0, 0, 0), place) for tri in hose]
                rows += truth_rows(shot["name"], raft, sites, others)
        measured = time.time()
        light, albedo, normal = stage.render(options.samples, options.border)
        rendered = time.time()
    light = develop.smooth_light(light, albedo, normal)
    photo = develop.expose(frame.bend(light), LOOKS[shot["kind"]], np.random.default_rng(seed("noise", shot["name"])))
    path = options.out / "photos" / shot["name"]
    path.parent.mkdir(parents=True, exist_ok=True)
    stamp = f"{shot['date'].replace('-', ':')} {shot['time']}:00" if shot["exif"] else None
    develop.write_jpeg(path, photo, 90, stamp, f"{shot['station']} camera")
    print(f"{shot['name']}: scene {built - began:.0f} s, truth {measured - built:.0f} s, render {rendered - measured:.0f} s, develop {time.time() - rendered:.0f} s", flush=True)
    return {"rows": rows, "camera": record}


def moved(triangles, place, frame):
    """Returns triangles given in one board's mm in another's."""
    def turn(p, degrees):
        c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
        return np.stack([c * p[..., 0] - s * p[..., 1], s * p[..., 0] + c * p[..., 1], p[..., 2]], -1)
    world = turn(triangles, place[2]) + [place[0], place[1], 0]
    return turn(world - [frame[0], frame[1], 0], -frame[2])


def truth_rows(name, raft, sites, others):
    board = scenario.LAYOUTS[scenario.layout_of(raft)]["board"]
    planted = [site for site, (tri, _) in sites.items() if len(tri)]
    values = dict(zip(planted, truth.measure([sites[s][0] for s in planted], others, (board["width_mm"], board["length_mm"]))))
    return [[name, raft, site, *(round(v, 2) for v in values.get(site, (0.0, 0.0, 0.0, 0.0))), kind] for site, (_, kind) in sites.items()]


def main():
    parser = argparse.ArgumentParser(prog="render_samples.py")
    parser.add_argument("--only", nargs="*", default=[""], help="render only photos whose name holds one of these texts")
    parser.add_argument("--samples", type=int, default=10)
    parser.add_argument("--scale", type=float, default=1.0)
    parser.add_argument("--border", type=float, nargs=4, help="render only this part (x0 y0 x1 y1, shares from the bottom left)")
    parser.add_argument("--no-truth", action="store_true", help="skip the truth (for trying looks)")
    parser.add_argument("--work", type=Path, default=Path(tempfile.gettempdir()) / "sample-images", help="holds one record per photo; photos with a record are not made again")
    parser.add_argument("--out", type=Path, default=Path(__file__).resolve().parent.parent)
    options = parser.parse_args(sys.argv[sys.argv.index("--") + 1:] if "--" in sys.argv else [])
    options.work.mkdir(parents=True, exist_ok=True)
    for shot in scenario.SHOTS:
        record = options.work / (shot["name"].replace("/", "+") + ".json")
        if not any(text in shot["name"] for text in options.only) or record.exists():
            continue
        result = make(shot, options)
        if not options.no_truth:
            record.write_text(json.dumps(result))
    if not options.no_truth:
        crop_book.write(options.work, options.out)


main()
