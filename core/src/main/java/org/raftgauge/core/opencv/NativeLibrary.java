// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.opencv;

import java.io.IOException;
import java.net.URL;
import java.util.Locale;
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
        loadUnpacked();
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

    /** Loads the file unpacked for this user, else lets the binding unpack one for this start. */
    private static void loadUnpacked() {
      try {
        URL packed = OpenCV.class.getResource(entry());
        if (packed != null) {
          System.load(NativeCache.ofUser().file(packed).toAbsolutePath().toString());
          return;
        }
      } catch (IOException | UnsatisfiedLinkError | SecurityException e) {
        // No folder to write to, or one that nothing may be loaded from.
      }
      OpenCV.loadLocally();
    }

    /** Returns the binding's own place of the library for this system. */
    private static String entry() {
      String os = System.getProperty("os.name").toLowerCase(Locale.ROOT);
      String arch = System.getProperty("os.arch").toLowerCase(Locale.ROOT);
      String system = os.startsWith("windows") ? "windows" : os.startsWith("mac") ? "osx" : "linux";
      String processor = arch.equals("aarch64") || arch.equals("arm64") ? "ARMv8" : "x86_64";
      String file = System.mapLibraryName(Core.NATIVE_LIBRARY_NAME);
      return "/nu/pattern/opencv/" + system + "/" + processor + "/" + file;
    }

    static void touch() {}
  }
}
