"""Checks the finished photos against cameras.json: marker corners found by OpenCV, tags read by zbarimg, board outlines drawn.

Usage: python3 check_samples.py FOLDER_FOR_DRAWINGS   Needs OpenCV's Python module and the command zbarimg.
"""

import json
import subprocess
import sys
from pathlib import Path

import cv2
import numpy as np

import deck_geometry
import scenario

here = Path(__file__).resolve().parent.parent
cameras = json.loads((here / "cameras.json").read_text())
drawings = Path(sys.argv[1])
drawings.mkdir(parents=True, exist_ok=True)
family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)
settings = cv2.aruco.DetectorParameters_create() if hasattr(cv2.aruco, "DetectorParameters_create") else cv2.aruco.DetectorParameters()
settings.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
for name, record in cameras["photos"].items():
    photo = cv2.imread(str(here / "photos" / name))
    lens = cameras["stations"][record["station"]]["lens"]
    found, ids, _ = cv2.aruco.detectMarkers(photo, family, parameters=settings)
    found = [] if ids is None else list(zip(ids.ravel(), found))
    read = subprocess.run(["zbarimg", "-q", "--raw", str(here / "photos" / name)], capture_output=True, text=True).stdout.split()
    for raft, pose in record["rafts"].items():
        layout = scenario.LAYOUTS[scenario.layout_of(raft)]
        r, t = np.array(pose["R"]), np.array(pose["t"])
        w, h = layout["board"]["width_mm"], layout["board"]["length_mm"]
        outline = deck_geometry.project(lens, r, t, np.array([[0, 0, 0], [w, 0, 0], [w, h, 0], [0, h, 0]], float))
        cv2.polylines(photo, [np.rint(outline).astype(int)], True, (255, 0, 255), 1)
        for x, y in deck_geometry.site_centres(layout)[1]:
            u, v = deck_geometry.project(lens, r, t, np.array([[x, y, 0.0]]))[0]
            cv2.drawMarker(photo, (int(round(u)), int(round(v))), (0, 0, 255), cv2.MARKER_CROSS, 9, 1)
        errors = []
        for number, (x, y) in enumerate(layout.get("markers", {"centres_mm": []})["centres_mm"]):
            k = layout["markers"]["side_mm"] / 2
            corners = deck_geometry.project(lens, r, t, np.array([[x - k, y - k, 0], [x + k, y - k, 0], [x + k, y + k, 0], [x - k, y + k, 0]]))
            near = [np.abs(c[0] - corners).max() for i, c in found if i == number]
            errors.append(f"id {number}: {min(near):.2f} px" if near and min(near) < 20 else f"id {number}: not found")
            cv2.polylines(photo, [np.rint(corners).astype(int)], True, (0, 160, 255), 1)
        print(name, raft, "tag", read, *errors)
    cv2.imwrite(str(drawings / (Path(name).stem + ".png")), photo)
