// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.solid.Mesh;

/**
 * Renders a scene band by band: every triangle into a z-buffer of 3 x 3 samples a pixel, then each
 * pixel shaded once per leaf or deck face that its samples show.
 */
public final class RenderPhoto {
  private static final int BAND_ROWS = 48;

  private final Mesh mesh;
  private final Camera camera;
  private final Projected projected;
  private final int[][] trianglesOfBand;

  private RenderPhoto(Scene scene, Camera camera) {
    this.mesh = scene.mesh();
    this.camera = camera;
    this.projected = new Projected(mesh, camera);
    this.trianglesOfBand = sort();
  }

  /**
   * Renders a photo in linear light.
   *
   * @param scene what lies before the camera
   * @param camera the camera
   * @param light the light
   * @return light, labels and coverage per pixel
   */
  public static Exposure render(Scene scene, Camera camera, Light light) {
    RenderPhoto photo = new RenderPhoto(scene, camera);
    Exposure out = new Exposure(camera.width(), camera.height());
    Resolve resolve = new Resolve(scene, camera, light, photo.projected);
    Band band = new Band(camera.width(), BAND_ROWS);
    for (int k = 0; k < photo.trianglesOfBand.length; k++) {
      int firstRow = k * BAND_ROWS;
      int rows = Math.min(BAND_ROWS, camera.height() - firstRow);
      band.moveTo(firstRow, rows);
      photo.drawBand(k, band);
      for (int y = firstRow; y < firstRow + rows; y++) {
        resolve.row(band, y, out);
      }
    }
    return out;
  }

  private void drawBand(int k, Band band) {
    int[] corner = new int[3];
    for (int t : trianglesOfBand[k]) {
      for (int i = 0; i < 3; i++) {
        corner[i] = mesh.corner(t, i);
      }
      band.draw(t, projected, corner);
    }
  }

  /** Lists for each band the triangles that touch it, in the mesh's order. */
  private int[][] sort() {
    int bands = (camera.height() + BAND_ROWS - 1) / BAND_ROWS;
    int[] count = new int[bands];
    forEachTouch((band, t) -> count[band]++);
    int[][] lists = new int[bands][];
    for (int k = 0; k < bands; k++) {
      lists[k] = new int[count[k]];
      count[k] = 0;
    }
    forEachTouch((band, t) -> lists[band][count[band]++] = t);
    return lists;
  }

  /** Takes a band's number and a triangle's. */
  private interface Touch {
    void take(int band, int triangle);
  }

  private void forEachTouch(Touch touch) {
    int bandSamples = BAND_ROWS * Band.SPLIT;
    int last = (camera.height() - 1) / BAND_ROWS;
    for (int t = 0; t < mesh.triangles(); t++) {
      float a = projected.sampleY(mesh.corner(t, 0));
      float b = projected.sampleY(mesh.corner(t, 1));
      float c = projected.sampleY(mesh.corner(t, 2));
      double low = Math.floor(Math.min(a, Math.min(b, c)) / bandSamples);
      double high = Math.floor(Math.max(a, Math.max(b, c)) / bandSamples);
      for (int k = (int) Math.max(0, low); k <= Math.min(last, high); k++) {
        touch.take(k, t);
      }
    }
  }
}
