// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import nu.pattern.OpenCV;
import org.opencv.core.Core;

/**
 * Loads the native library once for the process, and keeps it to one thread of its own: callers
 * spread photos over cores.
 */
final class NativeLibrary {

  private NativeLibrary() {}

  /** Makes sure that the library is loaded. */
  static void load() {
    Holder.touch();
  }

  private static final class Holder {
    static {
      try {
        OpenCV.loadLocally();
      } catch (UnsatisfiedLinkError | RuntimeException e) {
        throw new IllegalStateException(
            "the image library has no build for "
                + System.getProperty("os.name")
                + " on "
                + System.getProperty("os.arch")
                + "; it runs on Linux, macOS and Windows, x86-64 and ARM 64",
            e);
      }
      Core.setNumThreads(1);
    }

    static void touch() {}
  }
}
