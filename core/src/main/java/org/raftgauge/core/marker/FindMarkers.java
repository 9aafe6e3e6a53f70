// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.opencv.DetectMarkers;
import org.raftgauge.core.opencv.DetectMarkers.Search;
import org.raftgauge.core.opencv.MarkerQuad;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Finds AprilTag 36h11 markers and places their corners to a fraction of a pixel.
 *
 * <p>Squares are found by OpenCV in a picture of about 2000 px, first by contours, then, where a
 * marker is missed, by edge gradients too (slower, and neither finds all); each corner is then
 * where the lines fitted to the square's edges in the full photo meet ({@link EdgeLine}).
 */
public final class FindMarkers {
  /** Longest side of the search picture, px: a 36 mm marker on a 1200 mm board is 50 px there. */
  private static final double SEARCH_PX = 2000;

  /** Cells along a 36h11 marker's black square: six of data, one of border each side. */
  private static final double CELLS = 8;

  /** Error of a corner that no edge lines could be fitted to, px: half a pixel of contour. */
  private static final double UNREFINED_PX = 0.7;

  private FindMarkers() {}

  /**
   * Finds every marker in a photo, quickly.
   *
   * @param image the photo, any rotation, any board colour
   * @return the markers, by id, then from the top; empty where there are none
   */
  public static List<MarkerSighting> in(RgbImage image) {
    if (CoarsePhoto.serves(image)) {
      return CoarsePhoto.of(image).markers();
    }
    return sightings(image, DetectMarkers.in(image, factor(image), Search.CONTOURS));
  }

  /**
   * Finds markers that leaves touch: their contour runs on into the leaf's. A second try, for it
   * takes as long as the first and finds nothing new where no leaf is near.
   *
   * @param image the photo
   * @return every marker among what is nearly black, placed in the photo as it is
   */
  public static List<MarkerSighting> besideLeaf(RgbImage image) {
    RgbImage black = BlackAlone.of(image);
    return sightings(image, DetectMarkers.in(black, factor(image), Search.CONTOURS));
  }

  private static double factor(RgbImage image) {
    double longSide = Math.max(image.width(), image.height());
    return longSide > SEARCH_PX ? SEARCH_PX / longSide : longSide < 1500 ? 2 : 1;
  }

  /**
   * Finds every marker in a part of a photo with both searches, the part enlarged, and among what
   * is nearly black there: a second try where a marker must be. Costs a second or more on a whole
   * photo, milliseconds on a small part.
   *
   * @param image the photo
   * @param region where to look; cut to the photo
   * @param enlarge pixels per photo pixel, above 0
   * @return the markers, corners in px of the whole photo
   */
  public static List<MarkerSighting> in(RgbImage image, PictureRegion region, double enlarge) {
    PictureRegion part = region.on(image);
    RgbImage crop = part.cutFrom(image);
    List<MarkerQuad> quads = new ArrayList<>();
    for (Search search : Search.values()) {
      addNew(quads, DetectMarkers.in(crop, enlarge, search));
    }
    addNew(quads, DetectMarkers.in(BlackAlone.of(crop), enlarge, Search.CONTOURS));
    return sightings(image, quads.stream().map(q -> shifted(q, part)).toList());
  }

  /**
   * Says whether a photo in which no marker was found shows some once it is mirrored: no rotation
   * of a corner marker's code is the mirror image of one of the family.
   *
   * @param image the photo
   * @return whether at least two corner markers, ids 0 to 3, show in its mirror image
   */
  public static boolean inTheMirrorOf(RgbImage image) {
    return in(image.mirrored()).stream().filter(m -> m.id() < 4).count() >= 2;
  }

  private static void addNew(List<MarkerQuad> quads, List<MarkerQuad> found) {
    for (MarkerQuad quad : found) {
      if (quads.stream().noneMatch(q -> same(q, quad))) {
        quads.add(quad);
      }
    }
  }

  private static MarkerQuad shifted(MarkerQuad quad, PictureRegion part) {
    return new MarkerQuad(
        quad.id(),
        quad.cornersPx().stream()
            .map(p -> new PointPx(p.xPx() + part.x(), p.yPx() + part.y()))
            .toList());
  }

  static List<MarkerSighting> sightings(RgbImage image, List<MarkerQuad> quads) {
    LinearLight light = LinearLight.of(image);
    return quads.stream()
        .map(q -> refine(light, q))
        .sorted(
            Comparator.comparingInt(MarkerSighting::id)
                .thenComparingDouble(m -> m.centrePx().yPx())
                .thenComparingDouble(m -> m.centrePx().xPx()))
        .toList();
  }

  private static boolean same(MarkerQuad a, MarkerQuad b) {
    double side = Quads.meanSidePx(a.cornersPx());
    return Quads.centre(a.cornersPx()).distancePx(Quads.centre(b.cornersPx())) < side / 2;
  }

  private static MarkerSighting refine(LinearLight light, MarkerQuad quad) {
    List<PointPx> corners = quad.cornersPx();
    double side = Quads.meanSidePx(corners);
    double reach = Math.min(3, 0.75 * side / CELLS);
    List<EdgeLine> lines = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      EdgeLine.Span span = inner(corners.get(i), corners.get((i + 1) % 4), 1 / CELLS);
      EdgeLine.fit(light, reach, span).ifPresent(lines::add);
    }
    return RefinedQuad.of(lines)
        .filter(q -> Quads.farthestPx(q.cornersPx(), corners) < Math.max(2, 0.15 * side))
        .map(q -> new MarkerSighting(quad.id(), q.cornersPx(), q.cornerErrorPx()))
        .orElseGet(() -> new MarkerSighting(quad.id(), corners, UNREFINED_PX));
  }

  /** Returns the middle part of a side, without a share of it at each end. */
  private static EdgeLine.Span inner(PointPx a, PointPx b, double share) {
    return new EdgeLine.Span(between(a, b, share), between(a, b, 1 - share));
  }

  /** Returns the place a share of the way from one place to another. */
  static PointPx between(PointPx a, PointPx b, double share) {
    return new PointPx(
        a.xPx() + share * (b.xPx() - a.xPx()), a.yPx() + share * (b.yPx() - a.yPx()));
  }

  /** Four corners where four fitted lines meet, and their error. */
  record RefinedQuad(List<PointPx> cornersPx, double cornerErrorPx) {

    /** Floor of the error, px: lens, print and demosaicing leave that much on good photos. */
    private static final double FLOOR_PX = 0.05;

    /** Returns the corners; line i runs from corner i to corner i + 1. */
    static Optional<RefinedQuad> of(List<EdgeLine> lines) {
      if (lines.size() != 4) {
        return Optional.empty();
      }
      List<PointPx> corners = new ArrayList<>();
      double rms = 0;
      for (int i = 0; i < 4; i++) {
        lines.get((i + 3) % 4).meets(lines.get(i)).ifPresent(corners::add);
        rms = Math.max(rms, lines.get(i).rmsPx());
      }
      return corners.size() == 4
          ? Optional.of(new RefinedQuad(corners, Math.hypot(FLOOR_PX, 0.5 * rms)))
          : Optional.empty();
    }
  }
}
