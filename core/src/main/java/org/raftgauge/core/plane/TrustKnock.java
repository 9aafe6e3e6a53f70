// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.plane;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.Board;
import org.raftgauge.core.book.Layout;
import org.raftgauge.core.marker.LinearLight;
import org.raftgauge.core.pixels.RgbImage;

/**
 * The shift of a fixed camera's picture as the boards' edges tell it ({@link FindKnock}), where
 * holes and plants do not speak against it ({@link StillHoles}): dark boards on dark water show
 * little of their edges, and other things in a pond have edges too.
 *
 * @param dxPx to the right
 * @param dyPx down
 * @param light the photo's light in which the edges show
 * @param held why nothing can be said, or empty
 */
record TrustKnock(double dxPx, double dyPx, LinearLight light, String held) {
  /** Where this share of the edges shows by luminance, no single colour is asked. */
  private static final double PLAIN = 0.5;

  /** A colour must show this many times as much of the edges as luminance does. */
  private static final double PLAINER = 1.25;

  /**
   * Finds the shift.
   *
   * @param photo the photo
   * @param poses where the boards lie if the camera hangs as it did
   * @param layouts their layouts, in the same order
   */
  static TrustKnock of(RgbImage photo, List<CameraPose> poses, List<Layout> layouts) {
    List<Board> boards = layouts.stream().map(Layout::board).toList();
    LinearLight light = LinearLight.of(photo);
    Optional<FindKnock.Knock> knock = new FindKnock(light, photo.width(), poses, boards).find();
    for (int channel = 0; channel < 3 && share(knock) < PLAIN; channel++) {
      // A grey board on green water of its brightness differs from it in blue alone.
      LinearLight colour = light.only(channel);
      Optional<FindKnock.Knock> other = new FindKnock(colour, photo.width(), poses, boards).find();
      if (share(other) > PLAINER * share(knock)) {
        light = colour;
        knock = other;
      }
    }
    return trusted(photo, poses, layouts, new Seen(light, knock));
  }

  private static double share(Optional<FindKnock.Knock> knock) {
    return knock.map(FindKnock.Knock::share).orElse(0.0);
  }

  /** What was seen in which light. */
  private record Seen(LinearLight light, Optional<FindKnock.Knock> knock) {}

  private static TrustKnock trusted(
      RgbImage photo, List<CameraPose> poses, List<Layout> layouts, Seen seen) {
    Optional<FindKnock.Knock> knock = seen.knock();
    String doubt =
        knock
            .map(k -> doubt(k, photo.width()))
            .orElse("no board edges show near the slots' places");
    boolean ask = !doubt.isEmpty() || holesShow(knock.get(), photo.width(), poses, layouts);
    if (ask && StillHoles.tell(photo, poses, layouts)) {
      return new TrustKnock(0, 0, seen.light(), "");
    }
    return doubt.isEmpty()
        ? new TrustKnock(knock.get().dxPx(), knock.get().dyPx(), seen.light(), "")
        : new TrustKnock(0, 0, seen.light(), doubt + "; check camera, light and slots");
  }

  private static boolean moved(FindKnock.Knock knock, int widthPx) {
    return knock.lengthPx() > CameraShift.STILL_SHARE * widthPx;
  }

  private static String doubt(FindKnock.Knock knock, int widthPx) {
    return moved(knock, widthPx) && !knock.safe()
        ? String.format(
            Locale.ROOT,
            "the camera may have moved (the best shift is %.0f, %.0f px, but another fits nearly"
                + " as well)",
            knock.dxPx(),
            knock.dyPx())
        : "";
  }

  /** Says whether the picture has shifted, and as far as every board's holes would show it. */
  private static boolean holesShow(
      FindKnock.Knock knock, int widthPx, List<CameraPose> poses, List<Layout> layouts) {
    boolean show = moved(knock, widthPx);
    for (int i = 0; i < poses.size(); i++) {
      double mmPerPx = poses.get(i).mmPerPxAt(BoardPlaces.centre(layouts.get(i).board()));
      show &= StillHoles.show(knock.lengthPx() * mmPerPx, layouts.get(i));
    }
    return show;
  }
}
