// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.lang.ref.Reference;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Owns the native pictures and tools of one function: whatever is made in the scope is released
 * when it closes, and not before.
 *
 * <p>The garbage collector does not see native bytes, so nothing else may be relied on to free
 * them. It also does not see that native code still works with an object which Java needs no more:
 * OpenCV's finalizers would free it in the middle of a call (JLS 12.6.1: an object that compiled
 * code no longer touches may be finalized while one of its methods runs). So every object that
 * stands for a native one is given to a scope.
 */
final class MatScope implements AutoCloseable {
  private static final AtomicLong OPEN = new AtomicLong();

  private final List<Mat> mats = new ArrayList<>();
  private final List<Object> tools = new ArrayList<>();

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

  /** Keeps a detector, matcher or the like alive until the scope closes. */
  <T> T keep(T tool) {
    tools.add(tool);
    return tool;
  }

  /** Copies a picture into a three-channel Mat in the order r g b. */
  Mat of(RgbImage image) {
    Mat mat = own(new Mat(image.height(), image.width(), CvType.CV_8UC3));
    mat.put(0, 0, image.rgb());
    return mat;
  }

  /** Copies bytes into a one-channel Mat. */
  Mat of(int width, int height, byte[] values) {
    Mat mat = own(new Mat(height, width, CvType.CV_8UC1));
    mat.put(0, 0, values);
    return mat;
  }

  /** Copies unsigned 16-bit values into a one-channel Mat. */
  Mat of(int width, int height, short[] values) {
    Mat mat = own(new Mat(height, width, CvType.CV_16UC1));
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
    tools.forEach(Reference::reachabilityFence);
    tools.clear();
    OPEN.decrementAndGet();
  }
}
