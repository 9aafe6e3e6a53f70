// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Says whether a calibrated lens is good, and what to photograph again where it is not.
 *
 * <p>The limits are working values: an error of 0.3 % in focal length is 0.3 % in a length and 0.6
 * % in an area if nothing else tells the scale, well below what plants differ by.
 */
final class JudgeLens {
  private static final int ENOUGH_PHOTOS = 8;
  private static final double LARGEST_ERROR_SHARE = 0.0005;
  private static final double FOCAL_SHARE = 0.003;
  private static final double CENTRE_SHARE = 0.005;
  private static final int ENOUGH_POINTS = 4;

  private JudgeLens() {}

  /** Returns what to photograph again; nothing where the lens is good. */
  static List<String> retake(LensFit fit) {
    List<String> retake = new ArrayList<>();
    if (fit.views().size() < ENOUGH_PHOTOS) {
      retake.add(
          "only "
              + fit.views().size()
              + " photos were usable; take at least "
              + (ENOUGH_PHOTOS - fit.views().size())
              + " more");
    }
    zones(fit, retake);
    if (fit.meanErrorPx() > LARGEST_ERROR_SHARE * fit.widthPx()) {
      retake.add(
          String.format(
              Locale.ROOT,
              "the lens explains the points to %.2f px only (good: under %.2f px); fix the target"
                  + " to something stiff and flat, hold camera and target still, and take all"
                  + " photos again",
              fit.meanErrorPx(),
              LARGEST_ERROR_SHARE * fit.widthPx()));
    }
    boolean vague =
        fit.errors().fxPx() > FOCAL_SHARE * fit.lens().fxPx()
            || fit.errors().cxPx() > CENTRE_SHARE * fit.widthPx()
            || fit.errors().cyPx() > CENTRE_SHARE * fit.widthPx();
    if (vague) {
      retake.add(
          String.format(
              Locale.ROOT,
              "focal length and centre are not sure enough (fx +- %.1f px, centre +- %.1f, %.1f"
                  + " px); add photos with the target held at 30 to 45 degrees to the camera, to"
                  + " each side in turn",
              fit.errors().fxPx(),
              fit.errors().cxPx(),
              fit.errors().cyPx()));
    }
    return retake;
  }

  private static void zones(LensFit fit, List<String> retake) {
    List<String> bare = new ArrayList<>();
    for (PictureZone zone : PictureZone.values()) {
      long points =
          fit.views().stream()
              .flatMap(v -> v.misses().stream())
              .filter(m -> zone.has(m.seen(), fit.widthPx(), fit.heightPx()))
              .count();
      if (points < ENOUGH_POINTS) {
        bare.add(zone.words());
      }
    }
    if (!bare.isEmpty()) {
      retake.add(
          "the target was hardly seen near the picture's "
              + String.join(", ", bare)
              + (bare.size() == 1 ? " corner" : " corners")
              + "; take one or two there");
    }
  }
}
