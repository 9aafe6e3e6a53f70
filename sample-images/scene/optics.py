"""Blender's camera, and the lens: Brown-Conrady by sampling a slightly larger pinhole picture."""

import bpy
import mathutils
import numpy as np

from deck_geometry import undistort

# from the board frame with z down, (x, y, -z), to Blender's frame, (x, -y, z)
FLIP = np.diag([1.0, -1.0, -1.0])


class Frame:
    """The pinhole picture that is rendered: big enough that every photo pixel finds its place in it."""

    def __init__(self, lens, width, height):
        self.lens, self.width, self.height = lens, width, height
        px, py = np.meshgrid(np.arange(width, dtype=float), np.arange(height, dtype=float))
        u, v = undistort(lens, (px - lens["cx_px"]) / lens["fx_px"], (py - lens["cy_px"]) / lens["fy_px"])
        self.x, self.y = u * lens["fx_px"], v * lens["fy_px"]
        self.render_width = 2 * int(np.ceil(abs(self.x).max() + 12))
        self.render_height = 2 * int(np.ceil(abs(self.y).max() + 12))

    def camera(self, scene, r, t):
        """Sets the scene's camera."""
        data = bpy.data.cameras.new("camera")
        data.sensor_fit = "HORIZONTAL"
        data.sensor_width = 36.0
        data.lens = self.lens["fx_px"] / self.render_width * 36.0
        data.clip_start, data.clip_end = 50, 20000
        camera = bpy.data.objects.new("camera", data)
        scene.collection.objects.link(camera)
        matrix = np.eye(4)
        matrix[:3, :3] = FLIP @ r.T @ FLIP
        matrix[:3, 3] = FLIP @ (-r.T @ t)
        camera.matrix_world = mathutils.Matrix(matrix.tolist())
        scene.camera = camera
        scene.render.resolution_x, scene.render.resolution_y = self.render_width, self.render_height

    def bend(self, picture):
        """Returns the photo sampled from the pinhole picture (height, width, channels) by Catmull-Rom cubics."""
        gx = self.x + (self.render_width - 1) / 2
        gy = self.y + (self.render_height - 1) / 2
        ix, iy = np.floor(gx).astype(int), np.floor(gy).astype(int)
        wx, wy = _cubic(gx - ix), _cubic(gy - iy)
        out = np.zeros((self.height, self.width, picture.shape[2]), np.float32)
        for j in range(4):
            row = np.zeros_like(out)
            yy = np.clip(iy + j - 1, 0, picture.shape[0] - 1)
            for i in range(4):
                xx = np.clip(ix + i - 1, 0, picture.shape[1] - 1)
                row += wx[i][..., None] * picture[yy, xx]
            out += wy[j][..., None] * row
        return np.maximum(out, 0)


def _cubic(f):
    return [(-0.5 * f + f**2 - 0.5 * f**3).astype(np.float32), (1 - 2.5 * f**2 + 1.5 * f**3).astype(np.float32),
            (0.5 * f + 2 * f**2 - 1.5 * f**3).astype(np.float32), (-0.5 * f**2 + 0.5 * f**3).astype(np.float32)]
