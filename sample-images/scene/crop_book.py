"""Writes the crop book, truth.csv, cameras.json and the photo manifest from the records of the rendered photos."""

import csv
import json

import numpy as np

import deck_geometry
import scenario

TRUTH_COLUMNS = ["photo", "raft", "site", "projected_area_cm2", "visible_area_cm2", "mean_height_mm", "top_height_mm", "kind"]
CROP_SETTINGS = {
    "butterhead": ("green-leaf", 170, 130, (28, 36), 0.06), "redleaf": ("red-leaf", 130, 100, (27, 34), 0.05), "oakleaf": ("green-leaf", 125, 95, (26, 34), 0.05),
    "frilled": ("green-leaf", 135, 100, (26, 34), 0.05), "basil": ("green-leaf", 45, 30, (22, 29), 0.0)}


def write(work, out):
    """Writes everything beside the photos in out from the records in work."""
    out.mkdir(parents=True, exist_ok=True)
    records = {}
    for shot in scenario.SHOTS:
        path = work / (shot["name"].replace("/", "+") + ".json")
        if path.exists():
            records[shot["name"]] = json.loads(path.read_text())
    rows = [row for record in records.values() for row in record["rows"]]
    table(out / "truth.csv", TRUTH_COLUMNS, rows)
    cameras = {
        "note": "X_cam = R X_world + t, X_world = (x, y, -z) of the named raft's board in mm; pixel centres at whole numbers; "
                "lens as Brown-Conrady k1 k2 p1 p2 k3",
        "stations": {name: {"lens": s["lens"], "width_px": s["width"], "height_px": s["height"], "camera_height_mm": s["height_mm"]} for name, s in scenario.STATIONS.items()},
        "photos": {name: record["camera"] for name, record in records.items()}}
    (out / "cameras.json").write_text(json.dumps(cameras, indent=1) + "\n")
    book = out / "book"
    (book / "stations").mkdir(parents=True, exist_ok=True)
    (book / "book.yaml").write_text(
        f'time_zone: {scenario.TIME_ZONE}\nday_starts_at: "03:30"\nstation: bench\nphoto_name: "{{date}}_{{raft}}"\nunits: metric\n')
    stations(book)
    layouts(book)
    crops(book, rows)
    tables(book, out)


def table(path, columns, rows):
    with open(path, "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(columns)
        writer.writerows(rows)


def stations(book):
    for name, s in scenario.STATIONS.items():
        lens = ", ".join(f"{k}: {v}" for k, v in s["lens"].items())
        text = (f"kind: {s['kind']}\ncameras: 1\nimage_width_px: {s['width']}\nimage_height_px: {s['height']}\nlens: {{{lens}}}\n"
                f"camera_height_mm: {s['height_mm']}\n")
        if s["kind"] == "fixed":
            text += slots()
        (book / "stations" / f"{name}.yaml").write_text(text)


def slots():
    """Returns the slots as clicked once on the first photo: to a whole pixel."""
    shot = next(s for s in scenario.SHOTS if s["station"] == "gantry")
    pose = scenario.GANTRY_POSE
    r, t = deck_geometry.pose(pose["aim"], scenario.STATIONS["gantry"]["height_mm"], *pose["tilt"], pose["turn"])
    text = "slots:\n"
    for (raft, x, y, degrees), name in zip(shot["rafts"], ("s1", "s2", "s3", "s4")):
        board = scenario.LAYOUTS[scenario.layout_of(raft)]["board"]
        w, h = board["width_mm"], board["length_mm"]
        rr, tt = deck_geometry.place_in_scene(r, t, (x, y, degrees))
        corners = deck_geometry.project(scenario.STATIONS["gantry"]["lens"], rr, tt, np.array([[0, 0, 0], [w, 0, 0], [w, h, 0], [0, h, 0]], float))
        text += f"  - {{name: {name}, layout: {scenario.layout_of(raft)}, corners_px: {np.rint(corners).astype(int).tolist()}, refine: edges}}\n"
    return text


def layouts(book):
    text = "layouts:\n"
    for name, layout in scenario.LAYOUTS.items():
        text += f"  {name}:\n"
        for key, values in layout.items():
            text += f"    {key}: {{" + ", ".join(f"{k}: {v}" for k, v in values.items()) + "}\n"
    (book / "layouts.yaml").write_text(text)


def crops(book, rows):
    """Writes the crops; each height model is the log-log line of mean height on area of every third plant."""
    text = "crops:\n"
    for crop, (colour, weight, minimum, window, trim) in CROP_SETTINGS.items():
        fit = []
        for photo, raft, site, area, _, mean, _, kind in rows:
            crops_of = scenario.RAFTS[raft][2]
            grown = next(c for c, sites, _ in crops_of if scenario.in_range(site, sites))
            if grown == crop and area > 0:
                fit.append((np.log(area), np.log(mean)))
        fit = np.array(fit[::3])
        exponent, offset = np.polyfit(fit[:, 0], fit[:, 1], 1) if len(fit) > 2 else (0.5, np.log(4.0))
        text += (f"  {crop}:\n    colour_model: {colour}\n"
                 f"    height_model: {{scale_mm: {np.exp(offset):.4f}, exponent: {exponent:.4f}, mean_to_top: 0.5}}\n"
                 f"    emerged_by_das: 7\n    limits: {{lagging_share: 0.78, ahead_share: 1.35, closed_outline: 0.35}}\n"
                 f"    harvest: {{head_weight_g: {weight}, minimum_g: {minimum}, ready_share: 0.9, window_dat: [{window[0]}, {window[1]}], trim_share: {trim}, pack_g: {weight}}}\n")
    (book / "crops.yaml").write_text(text)


def tables(book, out):
    plantings = []
    for raft, (pond, berth, grown, layout, sown, transplanted, harvest_by, ended, lot) in scenario.RAFTS.items():
        for crop, sites, variety in grown:
            plantings.append([raft, pond, berth, crop, variety, layout, sites, sown, transplanted, harvest_by, ended, lot])
    table(book / "plantings.csv", "raft,pond,berth,crop,variety,layout,sites,sown_on,transplanted_on,harvest_by,ended_on,lot".split(","), plantings)
    table(book / "placements.csv", ["station", "slot", "raft", "from", "to"], scenario.PLACEMENTS)
    table(book / "events.csv", "at,kind,raft,site,to_raft,to_site,by,note".split(","), scenario.EVENTS)
    table(book / "weighings.csv", "raft,site,weighed_at,fresh_weight_g,top_height_mm,state".split(","), [])
    (out / "photos").mkdir(exist_ok=True)
    manifest = [[s["name"], f"{s['date']}T{s['time']}", s["station"], "", ""] for s in scenario.SHOTS if s["station"] == "gantry"]
    table(out / "photos" / "manifest.csv", ["photo", "taken_at", "station", "slot", "raft"], manifest)
