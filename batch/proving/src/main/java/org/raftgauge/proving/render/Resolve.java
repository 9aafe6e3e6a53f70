// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.render;

import java.util.Arrays;
import java.util.List;
import org.raftgauge.proving.camera.Camera;
import org.raftgauge.proving.scene.Light;
import org.raftgauge.proving.scene.Scene;
import org.raftgauge.proving.solid.Mesh;
import org.raftgauge.proving.solid.Patch;

/** Turns a pixel's samples into its light, label and coverage. */
final class Resolve {
  private static final int SAMPLES = Band.SPLIT * Band.SPLIT;

  private static final int UNKNOWN = Integer.MIN_VALUE;
  private static final double[] OFFSET = {-1.0 / 3, 0, 1.0 / 3};
  private static final int[] CORNERS = {Band.SPLIT - 1, SAMPLES - Band.SPLIT, SAMPLES - 1};

  private final Scene scene;
  private final Mesh mesh;
  private final Patch[] patches;
  private final Projected projected;
  private final float[] normals;
  private final float[] sky;
  private final DeckGrid deck;
  private final ShadeTissue shadeTissue;
  private final ShadeDeck shadeDeck;
  private final double[] eye;
  private final Fragment fragment = new Fragment();
  private final int[] surface = new int[SAMPLES];
  private final double[] rgb = new double[3];
  private final double[] sum = new double[3];

  Resolve(Scene scene, Camera camera, Light light, Projected projected) {
    this.scene = scene;
    this.mesh = scene.mesh();
    List<Patch> all = mesh.patches();
    this.patches = all.toArray(new Patch[0]);
    this.projected = projected;
    this.normals = mesh.normals();
    Lighting lighting = new Lighting(mesh, light);
    this.sky = lighting.skyShares(mesh);
    this.deck = new DeckGrid(camera);
    this.eye = eye(camera);
    this.shadeTissue = new ShadeTissue(lighting);
    this.shadeDeck = new ShadeDeck(scene, lighting, eye);
  }

  /** The camera's place: foot x, foot y, height, mm. */
  private static double[] eye(Camera camera) {
    double[] eye = new double[3];
    for (int k = 0; k < 3; k++) {
      for (int i = 0; i < 3; i++) {
        eye[k] -= camera.rotation(i, k) * camera.shift(i);
      }
    }
    eye[2] = -eye[2];
    return eye;
  }

  /** Resolves one row of pixels. */
  void row(Band band, int y, Exposure out) {
    for (int x = 0; x < out.width(); x++) {
      pixel(band, x, y, out);
    }
  }

  private void pixel(Band band, int x, int y, Exposure out) {
    gather(band, x, y);
    sum[0] = 0;
    sum[1] = 0;
    sum[2] = 0;
    for (int i = 0; i < SAMPLES; i++) {
      int same = firstOfKind(i) ? count(i) : 0;
      if (same > 0) {
        shade(band, x, y, i);
        for (int c = 0; c < 3; c++) {
          sum[c] += rgb[c] * same / SAMPLES;
        }
      }
    }
    int at = y * out.width() + x;
    for (int c = 0; c < 3; c++) {
      out.rgb()[3 * at + c] = (float) sum[c];
    }
    label(at, out);
  }

  /** Notes what each sample shows: a patch (0 and up), or a deck face (negative). */
  private void gather(Band band, int x, int y) {
    boolean leafy = false;
    for (int i = 0; i < SAMPLES; i++) {
      int t = band.triangle(x * Band.SPLIT + i % Band.SPLIT, y * Band.SPLIT + i / Band.SPLIT);
      surface[i] = t == Band.DECK ? UNKNOWN : mesh.patchOf(t);
      leafy |= t != Band.DECK;
    }
    if (leafy || !plainDeck(x, y)) {
      for (int i = 0; i < SAMPLES; i++) {
        surface[i] = surface[i] == UNKNOWN ? face(x, y, i) : surface[i];
      }
    }
  }

  /** Fills in a pixel whose four corners show one and the same face of the deck. */
  private boolean plainDeck(int x, int y) {
    int corner = face(x, y, 0);
    for (int i : CORNERS) {
      if (face(x, y, i) != corner) {
        return false;
      }
    }
    Arrays.fill(surface, corner);
    return true;
  }

  private int face(int x, int y, int sample) {
    double px = x + OFFSET[sample % Band.SPLIT];
    double py = y + OFFSET[sample / Band.SPLIT];
    return -1 - scene.faceAt(deck.at(px, py, 0), deck.at(px, py, 1));
  }

  private boolean firstOfKind(int i) {
    for (int k = 0; k < i; k++) {
      if (surface[k] == surface[i]) {
        return false;
      }
    }
    return true;
  }

  private int count(int i) {
    int n = 0;
    for (int value : surface) {
      n += value == surface[i] ? 1 : 0;
    }
    return n;
  }

  /** Shades a kind of surface at the middle one of the samples that show it. */
  private void shade(Band band, int x, int y, int first) {
    int middle = first;
    int seen = 0;
    int half = (count(first) + 1) / 2;
    for (int k = first; k < SAMPLES && seen < half; k++) {
      if (surface[k] == surface[first]) {
        middle = k;
        seen++;
      }
    }
    int column = x * Band.SPLIT + middle % Band.SPLIT;
    int row = y * Band.SPLIT + middle / Band.SPLIT;
    if (surface[first] >= 0) {
      fill(band.triangle(column, row), column, row);
      shadeTissue.shade(fragment, rgb);
    } else {
      double px = x + OFFSET[middle % Band.SPLIT];
      double py = y + OFFSET[middle / Band.SPLIT];
      shadeDeck.shade(-1 - surface[first], deck.at(px, py, 0), deck.at(px, py, 1), rgb);
    }
  }

  /** Interpolates what a triangle shows at a sample. */
  private void fill(int t, int column, int row) {
    int a = mesh.corner(t, 0);
    int b = mesh.corner(t, 1);
    int c = mesh.corner(t, 2);
    double bx = projected.sampleX(b) - projected.sampleX(a);
    double by = projected.sampleY(b) - projected.sampleY(a);
    double cx = projected.sampleX(c) - projected.sampleX(a);
    double cy = projected.sampleY(c) - projected.sampleY(a);
    double x = column - projected.sampleX(a);
    double y = row - projected.sampleY(a);
    double area = bx * cy - by * cx;
    double wb = (x * cy - y * cx) / area;
    double wc = (bx * y - by * x) / area;
    double wa = 1 - wb - wc;
    Fragment f = fragment;
    f.patch = patches[mesh.patchOf(t)];
    f.x = wa * mesh.x(a) + wb * mesh.x(b) + wc * mesh.x(c);
    f.y = wa * mesh.y(a) + wb * mesh.y(b) + wc * mesh.y(c);
    f.z = wa * mesh.z(a) + wb * mesh.z(b) + wc * mesh.z(c);
    f.u = wa * mesh.u(a) + wb * mesh.u(b) + wc * mesh.u(c);
    f.v = wa * mesh.v(a) + wb * mesh.v(b) + wc * mesh.v(c);
    f.sky = wa * sky[a] + wb * sky[b] + wc * sky[c];
    f.nx = wa * normals[3 * a] + wb * normals[3 * b] + wc * normals[3 * c];
    f.ny = wa * normals[3 * a + 1] + wb * normals[3 * b + 1] + wc * normals[3 * c + 1];
    f.nz = wa * normals[3 * a + 2] + wb * normals[3 * b + 2] + wc * normals[3 * c + 2];
    faceEye(f);
  }

  private void faceEye(Fragment f) {
    double towards = f.nx * (eye[0] - f.x) + f.ny * (eye[1] - f.y) + f.nz * (eye[2] - f.z);
    double length = Math.sqrt(f.nx * f.nx + f.ny * f.ny + f.nz * f.nz);
    double scale = (towards < 0 ? -1 : 1) / Math.max(1e-9, length);
    f.nx *= scale;
    f.ny *= scale;
    f.nz *= scale;
  }

  /** The label is the owner of most samples with tissue, where tissue holds most of the pixel. */
  private void label(int at, Exposure out) {
    int tissue = 0;
    int best = 0;
    int owner = 0;
    for (int i = 0; i < SAMPLES; i++) {
      if (surface[i] >= 0 && patches[surface[i]].material().isTissue()) {
        tissue++;
        int n = sameOwner(patches[surface[i]].owner());
        if (n > best) {
          best = n;
          owner = patches[surface[i]].owner();
        }
      }
    }
    out.coverage()[at] = (byte) Math.round(255.0 * tissue / SAMPLES);
    out.label()[at] = (short) (2 * tissue > SAMPLES ? owner : 0);
  }

  private int sameOwner(int owner) {
    int n = 0;
    for (int value : surface) {
      n += value >= 0 && patches[value].owner() == owner ? 1 : 0;
    }
    return n;
  }
}
