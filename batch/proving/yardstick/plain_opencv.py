#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Measures leaf area in the photos of a rendered set the usual way, as a yardstick of speed.

Corner markers, undistortion, one perspective warp a board, excess green, Otsu's threshold,
opening and closing, every canopy pixel to the nearest site, area a site by the deck's scale.
All steps are vectorised; one thread. Prints a CSV row a photo and board site, then the times.

usage: plain_opencv.py TASK.json ROUNDS
"""
import json
import sys
import time

import cv2
import numpy as np

MM_PER_PX = 0.7  # the deck picture's scale, as the program's own coarsest


def detector():
    family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)
    if hasattr(cv2.aruco, "ArucoDetector"):
        return cv2.aruco.ArucoDetector(family).detectMarkers
    return lambda grey: cv2.aruco.detectMarkers(grey, family)


DETECT = detector()


def boards_by_markers(image, camera, distortion, layout):
    """Returns a homography (deck mm to undistorted px) for each marker 0 with its board's others."""
    grey = cv2.cvtColor(image, cv2.COLOR_BGR2GRAY)
    small = cv2.resize(grey, None, fx=0.5, fy=0.5, interpolation=cv2.INTER_AREA)
    corners, ids, _ = DETECT(small)
    if ids is None:
        return []
    quads = [(int(i), cv2.undistortPoints(c * 2 + 0.5, camera, distortion, P=camera).reshape(4, 2))
             for i, c in zip(ids.ravel(), corners) if i < 4]
    side = layout["marker_side_mm"]
    square = np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]], np.float32) * side / 2
    places = [np.array(c, np.float32) for c in layout["marker_centres_mm"]]
    found = []
    for i, quad in quads:
        if i != 0:
            continue
        rough = cv2.getPerspectiveTransform(square + places[0], quad.astype(np.float32))
        deck, seen = [square + places[0]], [quad]
        for other in (1, 2, 3):
            foretold = cv2.perspectiveTransform(places[other].reshape(1, 1, 2), rough).ravel()
            near = [q for k, q in quads if k == other]
            if near:
                best = min(near, key=lambda q: np.hypot(*(q.mean(0) - foretold)))
                deck.append(square + places[other])
                seen.append(best)
        h, _ = cv2.findHomography(np.concatenate(deck), np.concatenate(seen), cv2.RANSAC, 3)
        if h is not None:
            found.append(h)
    return found


def boards_in_slots(task):
    return [np.array(b["deck_to_undistorted"], float).reshape(3, 3) for b in task["boards"]]


def areas(image, deck_to_photo, layout):
    """Returns cm2 of canopy nearest to each site."""
    width, height = layout["board_mm"]
    size = (int(width / MM_PER_PX), int(height / MM_PER_PX))
    scale = np.diag([MM_PER_PX, MM_PER_PX, 1.0])
    deck = cv2.warpPerspective(image, deck_to_photo @ scale, size,
                               flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP)
    b, g, r = cv2.split(deck)
    excess = cv2.subtract(cv2.addWeighted(g, 2, r, -1, 0), b)
    _, mask = cv2.threshold(excess, 0, 255, cv2.THRESH_BINARY | cv2.THRESH_OTSU)
    brush = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (3, 3))
    mask = cv2.morphologyEx(cv2.morphologyEx(mask, cv2.MORPH_OPEN, brush), cv2.MORPH_CLOSE, brush)
    nearest = nearest_site(layout, size)
    counts = np.bincount(nearest[mask > 0], minlength=len(layout["sites_mm"]))
    return counts * MM_PER_PX ** 2 / 100


CHARTS = {}
MAPS = {}


def undistortion(camera, distortion, shape):
    """Returns the fixed-point maps of a lens; made once for it."""
    key = (camera.tobytes(), shape)
    if key not in MAPS:
        MAPS[key] = cv2.initUndistortRectifyMap(
            camera, distortion, None, camera, (shape[1], shape[0]), cv2.CV_16SC2)
    return MAPS[key]


def nearest_site(layout, size):
    """Returns the chart of nearest sites; made once for a layout."""
    if layout["name"] not in CHARTS:
        seeds = np.full((size[1], size[0]), 255, np.uint8)
        for x, y in layout["sites_mm"]:
            seeds[min(size[1] - 1, int(y / MM_PER_PX)), min(size[0] - 1, int(x / MM_PER_PX))] = 0
        _, labels = cv2.distanceTransformWithLabels(
            seeds, cv2.DIST_L2, 5, labelType=cv2.DIST_LABEL_PIXEL)
        order = {int(labels[min(size[1] - 1, int(y / MM_PER_PX)),
                            min(size[0] - 1, int(x / MM_PER_PX))]): s
                 for s, (x, y) in enumerate(layout["sites_mm"])}
        lookup = np.zeros(labels.max() + 1, np.int64)
        for label, site in order.items():
            lookup[label] = site
        CHARTS[layout["name"]] = lookup[labels]
    return CHARTS[layout["name"]]


def measure(task, layouts):
    image = cv2.imread(task["file"])
    camera = np.array(task["camera"], float).reshape(3, 3)
    distortion = np.array(task["distortion"], float)
    layout = layouts[task["layout"]]
    boards = (boards_by_markers(image, camera, distortion, layout) if layout["marker_side_mm"]
              else boards_in_slots(task))
    flat = cv2.remap(image, *undistortion(camera, distortion, image.shape), cv2.INTER_LINEAR)
    return [(h, areas(flat, h, layout)) for h in boards]


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        job = json.load(file)
    rounds = int(sys.argv[2])
    cv2.setNumThreads(1)
    layouts = {layout["name"]: layout for layout in job["layouts"]}
    for task in job["photos"]:
        times = []
        for _ in range(rounds):
            start = time.process_time()
            found = measure(task, layouts)
            times.append(time.process_time() - start)
        layout = layouts[task["layout"]]
        middle = np.array(layout["board_mm"], float).reshape(1, 1, 2) / 2
        for h, cm2 in found:
            at = cv2.perspectiveTransform(middle, h).ravel()
            name = min(task["boards"],
                       key=lambda b: np.hypot(b["middle_px"][0] - at[0], b["middle_px"][1] - at[1]))
            for site, area in zip(layout["sites"], cm2):
                print(f"area,{task['photo']},{name['raft']},{site},{area:.4f}")
        print(f"time,{task['photo']}," + ",".join(f"{t:.5f}" for t in times), flush=True)


main()
