// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import boofcv.struct.image.GrayU8;
import java.util.List;
import org.raftgauge.core.opencv.DetectMarkers;
import org.raftgauge.core.opencv.MarkerQuad;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * A large photo averaged to about 2000 px, in grey: markers and tags are found in it several times
 * faster than in the photo, and then placed in the photo itself.
 */
public final class CoarsePhoto {
  /** Longest side aimed at, px: a 36 mm marker on a 1200 mm board is 50 px there. */
  private static final double SEARCH_PX = 2000;

  private final RgbImage photo;
  private final int parts;
  private final GrayU8 grey;

  private CoarsePhoto(RgbImage photo, int parts) {
    this.photo = photo;
    this.parts = parts;
    this.grey = Grey.averaged(photo, parts);
  }

  /**
   * Says whether a photo is so large that averaging it to one half or less leaves enough.
   *
   * @param photo the photo
   * @return whether its longest side is 3000 px or more
   */
  public static boolean serves(RgbImage photo) {
    return parts(photo) > 1;
  }

  /**
   * Averages a photo.
   *
   * @param photo the photo
   * @return its coarse copy, at full size where it is not large
   */
  public static CoarsePhoto of(RgbImage photo) {
    return new CoarsePhoto(photo, Math.max(1, parts(photo)));
  }

  private static int parts(RgbImage photo) {
    return (int) Math.round(Math.max(photo.width(), photo.height()) / SEARCH_PX);
  }

  /**
   * Finds every marker.
   *
   * @return the markers, by id, then from the top; corners in px of the photo
   */
  public List<MarkerSighting> markers() {
    List<MarkerQuad> quads = DetectMarkers.in(grey.width, grey.height, grey.data);
    return FindMarkers.sightings(photo, quads.stream().map(this::inPhoto).toList());
  }

  private MarkerQuad inPhoto(MarkerQuad quad) {
    return new MarkerQuad(
        quad.id(),
        quad.cornersPx().stream()
            .map(p -> new PointPx((p.xPx() + 0.5) * parts - 0.5, (p.yPx() + 0.5) * parts - 0.5))
            .toList());
  }

  /**
   * Finds the QR codes that are large enough for it.
   *
   * @return the codes read, from the top; corners in px of the photo
   */
  public List<TagSighting> tags() {
    return FindTags.in(photo, grey, new FindTags.Frame(0, 0, parts));
  }
}
