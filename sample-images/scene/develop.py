"""From rendered light to a camera's JPEG: less path noise, lens, vignette, white balance, sensor noise, tone, EXIF."""

import struct

import bpy
import numpy as np


def smooth_light(light, albedo, normal, passes=2):
    """Returns the picture with the path tracer's noise smoothed where colour and normal agree
    (edge-avoiding a-trous wavelets, Dammertz et al. 2010), keeping the surface colour sharp."""
    shade = light / (albedo + 0.03)
    normal = normal / np.maximum(np.linalg.norm(normal, axis=2, keepdims=True), 1e-3)
    kernel = (1 / 16, 1 / 4, 3 / 8, 1 / 4, 1 / 16)
    tone = np.sqrt(np.clip(albedo, 0, 1))
    for level in range(passes):
        step = 1 << level
        luma = np.log(_blur(_blur(shade.mean(2))) + 0.02)
        total = np.zeros_like(shade)
        weights = np.zeros(shade.shape[:2], np.float32)
        for j, kj in enumerate(kernel):
            for i, ki in enumerate(kernel):
                shift = ((j - 2) * step, (i - 2) * step)
                n = np.roll(normal, shift, (0, 1))
                a = np.roll(tone, shift, (0, 1))
                ll = np.roll(luma, shift, (0, 1))
                w = ki * kj * np.exp(
                    -((normal - n) ** 2).sum(2) / 0.10 - ((tone - a) ** 2).sum(2) / 0.02 - (luma - ll) ** 2 / (0.25 * 0.6**level))
                total += w[..., None] * np.roll(shade, shift, (0, 1))
                weights += w
        shade = total / weights[..., None]
    return shade * (albedo + 0.03)


def expose(light, look, rng):
    """Returns 8-bit sRGB of linear light. The look holds exposure, white balance, vignette, noise and sharpening."""
    h, w = light.shape[:2]
    y, x = np.mgrid[0:h, 0:w]
    r2 = ((x - w / 2) ** 2 + (y - h / 2) ** 2) / (w * w / 4 + h * h / 4)
    signal = light * look["exposure"] * np.array(look["balance"], np.float32) * (1 - look["vignette"] * r2)[..., None]
    sigma = np.sqrt(look["noise_shot"] ** 2 * np.clip(signal, 0, 1.2) + look["noise_read"] ** 2)
    grain = rng.standard_normal(signal.shape).astype(np.float32)
    grain = 0.62 * grain + 0.50 * _blur(grain) * 2.2
    signal = signal + sigma * grain
    soft = _blur(signal)
    signal = signal + look["sharpen"] * (signal - soft)
    knee = 0.72  # highlights bend towards white from here on, as camera JPEGs do
    over = np.clip(signal - knee, 0, None)
    signal = np.where(signal > knee, knee + (1.02 - knee) * (1 - np.exp(-over / (1.02 - knee))), signal)
    signal = np.clip(signal, 0, 1)
    srgb = np.where(signal <= 0.0031308, 12.92 * signal, 1.055 * signal ** (1 / 2.4) - 0.055)
    return (np.clip(srgb, 0, 1) * 255 + 0.5).astype(np.uint8)


def _blur(a):
    """Returns the binomial 3 x 3 blur; the border repeats its own pixels."""
    for axis in (0, 1):
        n = a.shape[axis]
        before, after = np.maximum(np.arange(n) - 1, 0), np.minimum(np.arange(n) + 1, n - 1)
        a = 0.25 * a.take(before, axis) + 0.5 * a + 0.25 * a.take(after, axis)
    return a


def write_jpeg(path, rgb, quality, taken_at=None, camera=None):
    """Writes the picture, with the capture time as EXIF where one is given."""
    height, width = rgb.shape[:2]
    image = bpy.data.images.new("photo", width, height, alpha=False)
    rgba = np.ones((height, width, 4), np.float32)
    rgba[..., :3] = rgb[::-1] / 255.0
    image.pixels.foreach_set(rgba.ravel())
    image.filepath_raw = str(path)
    image.file_format = "JPEG"
    scene = bpy.data.scenes.new("save")
    scene.view_settings.view_transform = "Standard"
    scene.display_settings.display_device = "sRGB"
    scene.render.image_settings.file_format = "JPEG"
    scene.render.image_settings.quality = quality
    image.save_render(str(path), scene=scene)
    bpy.data.scenes.remove(scene)
    bpy.data.images.remove(image)
    data = _without_exif(path.read_bytes())
    if taken_at:
        data = data[:2] + exif_segment(taken_at, camera) + data[2:]
    path.write_bytes(data)


def _without_exif(data):
    out, i = data[:2], 2
    while data[i + 1] != 0xDA:
        size = struct.unpack(">H", data[i + 2:i + 4])[0] + 2
        if data[i + 1] not in (0xE1, 0xFE):
            out += data[i:i + size]
        i += size
    return out + data[i:]


def exif_segment(taken_at, camera):
    """Returns an APP1 segment with Model, DateTime and DateTimeOriginal ("YYYY:MM:DD hh:mm:ss", local time)."""
    stamp = taken_at.encode() + b"\0"
    model = camera.encode() + b"\0"
    ifd0_at, count0 = 8, 3
    data_at = ifd0_at + 2 + count0 * 12 + 4
    exif_at = data_at + len(model) + len(stamp)
    ifd0 = struct.pack("<H", count0)
    ifd0 += struct.pack("<HHII", 0x0110, 2, len(model), data_at)
    ifd0 += struct.pack("<HHII", 0x0132, 2, len(stamp), data_at + len(model))
    ifd0 += struct.pack("<HHII", 0x8769, 4, 1, exif_at) + struct.pack("<I", 0)
    exif = struct.pack("<H", 1) + struct.pack("<HHII", 0x9003, 2, len(stamp), exif_at + 18) + struct.pack("<I", 0)
    tiff = b"II*\0" + struct.pack("<I", ifd0_at) + ifd0 + model + stamp + exif + stamp
    body = b"Exif\0\0" + tiff
    return b"\xff\xe1" + struct.pack(">H", len(body) + 2) + body
