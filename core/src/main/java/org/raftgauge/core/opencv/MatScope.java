// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Owns the native pictures of one function: whatever is made in the scope is released when it
 * closes.
 *
 * <p>The garbage collector does not see native bytes, so nothing else may be relied on to free
 * them.
 */
final class MatScope implements AutoCloseable {
  private static final AtomicLong OPEN = new AtomicLong();

  private final List<Mat> mats = new ArrayList<>();

  MatScope() {
    NativeLibrary.load();
    OPEN.incrementAndGet();
  }

  /** Returns how many scopes are open now; for tests of leaks. */
  static long openScopes() {
    return OPEN.get();
  }

  /** Returns a new empty Mat that dies with the scope. */
  Mat mat() {
    return own(new Mat());
  }

  /** Takes over a Mat made elsewhere. */
  <M extends Mat> M own(M mat) {
    mats.add(mat);
    return mat;
  }

  /** Copies a picture into a three-channel Mat in the order r g b. */
  Mat of(RgbImage image) {
    Mat mat = own(new Mat(image.height(), image.width(), CvType.CV_8UC3));
    mat.put(0, 0, image.rgb());
    return mat;
  }

  /** Copies some rows of a picture. */
  Mat ofRows(RgbImage image, int from, int to) {
    Mat mat = own(new Mat(to - from, image.width(), CvType.CV_8UC3));
    mat.put(0, 0, image.rgb(), 3 * from * image.width(), 3 * (to - from) * image.width());
    return mat;
  }

  /** Copies bytes into a one-channel Mat. */
  Mat of(int width, int height, byte[] values) {
    Mat mat = own(new Mat(height, width, CvType.CV_8UC1));
    mat.put(0, 0, values);
    return mat;
  }

  /** Copies floats into a one-channel Mat. */
  Mat of(int width, int height, float[] values) {
    Mat mat = own(new Mat(height, width, CvType.CV_32FC1));
    mat.put(0, 0, values);
    return mat;
  }

  /** Copies an 8-bit Mat of any number of channels out. */
  static byte[] bytes(Mat mat) {
    byte[] values = new byte[(int) (mat.total() * mat.channels())];
    mat.get(0, 0, values);
    return values;
  }

  /** Copies a 32-bit float Mat out. */
  static float[] floats(Mat mat) {
    float[] values = new float[(int) (mat.total() * mat.channels())];
    mat.get(0, 0, values);
    return values;
  }

  @Override
  public void close() {
    mats.forEach(Mat::release);
    mats.clear();
    OPEN.decrementAndGet();
  }
}
