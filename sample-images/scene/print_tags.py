"""Writes the corner markers (tag36h11 ids 0-3, one white cell round them) and a QR tag per raft id, one pixel a cell.

Usage: print_tags.py FOLDER RAFT_ID...   Needs OpenCV's Python module and the command qrencode.
"""

import subprocess
import sys
from pathlib import Path

import cv2
import numpy as np

folder = Path(sys.argv[1])
family = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11)
draw = getattr(cv2.aruco, "drawMarker", None) or cv2.aruco.generateImageMarker
for number in range(4):
    cells = np.full((10, 10), 255, np.uint8)
    cells[1:9, 1:9] = draw(family, number, 8)
    cv2.imwrite(str(folder / f"marker-{number}.png"), cells)
for raft in sys.argv[2:]:
    subprocess.run(["qrencode", "-l", "M", "-s", "1", "-m", "2", "-o", str(folder / f"tag-{raft}.png"), raft], check=True)
