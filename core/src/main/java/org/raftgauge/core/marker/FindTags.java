// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.marker;

import boofcv.abst.fiducial.QrCodeDetector;
import boofcv.alg.fiducial.qrcode.QrCode;
import boofcv.factory.fiducial.ConfigQrCode;
import boofcv.factory.fiducial.FactoryFiducial;
import boofcv.struct.image.GrayU8;
import georegression.struct.shapes.Polygon2D_F64;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.raftgauge.core.book.Names;
import org.raftgauge.core.photo.FinePhoto;
import org.raftgauge.core.pixels.PointPx;
import org.raftgauge.core.pixels.RgbImage;

/**
 * Finds raft tags: QR codes with the raft's id as plain text.
 *
 * <p>Source: BoofCV 1.1 QR detector; code: ISO/IEC 18004:2015. Corners come from lines fitted to
 * the outer edges of the three finder patterns ({@link EdgeLine}).
 */
public final class FindTags {
  /** How the reason begins that a tag's text cannot be used. */
  public static final String TAG_TEXT = "the tag's text";

  /** Longest id that a tag may carry, characters. */
  private static final int MAX_ID = 32;

  /** Modules along a finder pattern. */
  private static final double FINDER = 7;

  /** BoofCV's pixels run from their corner, ours from their centre. */
  private static final double HALF_PX = 0.5;

  private static final double UNREFINED_PX = 1;

  private FindTags() {}

  /**
   * Finds every QR code in a photo, mirrored ones too.
   *
   * @param image the photo, any rotation
   * @return the codes read, from the top; codes whose text can be no id are there with the reason
   */
  public static List<TagSighting> in(RgbImage image) {
    return in(image, new PictureRegion(0, 0, image.width(), image.height()), 1);
  }

  /**
   * Finds every QR code in a part of a photo that is first enlarged: a second try where a tag must
   * be but was not read.
   *
   * @param image the photo
   * @param region where to look; cut to the photo
   * @param enlarge pixels per photo pixel, 1 to 4
   * @return the codes read, corners in px of the whole photo
   */
  public static List<TagSighting> in(RgbImage image, PictureRegion region, int enlarge) {
    if (enlarge < 1 || enlarge > 4) {
      throw new IllegalArgumentException("enlarge must be 1 to 4, got " + enlarge);
    }
    PictureRegion part = region.on(image);
    return in(image, Grey.of(image, part, enlarge), new Frame(part.x(), part.y(), 1.0 / enlarge));
  }

  static List<TagSighting> in(RgbImage image, GrayU8 grey, Frame frame) {
    QrCodeDetector<GrayU8> detector = FactoryFiducial.qrcode(new ConfigQrCode(), GrayU8.class);
    List<QrCode> codes = new ArrayList<>();
    if (process(detector, grey)) {
      codes.addAll(detector.getDetections());
    }
    LinearLight light = LinearLight.of(image);
    return codes.stream()
        .map(code -> sighting(light, code, frame))
        .sorted(
            Comparator.comparingDouble((TagSighting t) -> t.centrePx().yPx())
                .thenComparingDouble(t -> t.centrePx().xPx()))
        .toList();
  }

  /**
   * Finds every QR code in a part of a photo that was averaged, in all its pixels.
   *
   * @param fine all pixels of the photo
   * @param region where to look, px of the averaged photo, on it
   * @return the codes read, corners and sizes in px of the averaged photo
   */
  public static List<TagSighting> in(FinePhoto fine, PictureRegion region) {
    RgbImage part = fine.cut(region.x(), region.y(), region.width(), region.height());
    return in(part).stream().map(tag -> averaged(tag, region, fine.parts())).toList();
  }

  private static TagSighting averaged(TagSighting tag, PictureRegion region, int parts) {
    List<PointPx> corners =
        tag.cornersPx().stream()
            .map(
                p ->
                    new PointPx(
                        region.x() + (p.xPx() + HALF_PX) / parts - HALF_PX,
                        region.y() + (p.yPx() + HALF_PX) / parts - HALF_PX))
            .toList();
    return new TagSighting(
        tag.text(),
        corners,
        tag.cornerErrorPx() / parts,
        tag.modulePx() / parts,
        tag.unusable(),
        tag.mirrored());
  }

  /** Runs the detector; a picture that trips it up (too small, say) simply holds no code. */
  private static boolean process(QrCodeDetector<GrayU8> detector, GrayU8 grey) {
    if (grey.width < 21 || grey.height < 21) {
      return false;
    }
    try {
      detector.process(grey);
      return true;
    } catch (IllegalArgumentException | IllegalStateException | IndexOutOfBoundsException e) {
      return false;
    }
  }

  /**
   * Where a searched picture lies in the photo.
   *
   * @param x column of its left edge, px of the photo
   * @param y row of its upper edge, px of the photo
   * @param scale px of the photo per px searched
   */
  record Frame(int x, int y, double scale) {
    PointPx toPhoto(double column, double row) {
      return new PointPx(x + column * scale - HALF_PX, y + row * scale - HALF_PX);
    }
  }

  private static TagSighting sighting(LinearLight light, QrCode code, Frame frame) {
    List<PointPx> corners = new ArrayList<>();
    corners.add(corner(code.ppCorner, 0, frame));
    corners.add(corner(code.ppRight, 1, frame));
    corners.add(corner(code.bounds, 2, frame));
    corners.add(corner(code.ppDown, 3, frame));
    int modules = QrCode.totalModules(code.version);
    double modulePx = Quads.meanSidePx(corners) / modules;
    Optional<FindMarkers.RefinedQuad> refined =
        refine(light, corners, modules)
            .filter(q -> Quads.farthestPx(q.cornersPx(), corners) < Math.max(3, 3 * modulePx));
    String text = code.message.strip();
    return new TagSighting(
        text,
        refined.map(FindMarkers.RefinedQuad::cornersPx).orElse(corners),
        refined.map(FindMarkers.RefinedQuad::cornerErrorPx).orElse(UNREFINED_PX),
        modulePx,
        whyUnusable(text),
        code.bitsTransposed);
  }

  private static PointPx corner(Polygon2D_F64 outline, int i, Frame frame) {
    return frame.toPhoto(outline.get(i).x, outline.get(i).y);
  }

  private static Optional<FindMarkers.RefinedQuad> refine(
      LinearLight light, List<PointPx> corners, int modules) {
    double modulePx = Quads.meanSidePx(corners) / modules;
    double reach = Math.min(3, 0.75 * modulePx);
    double finder = FINDER / modules;
    PointPx a = corners.get(0);
    PointPx b = corners.get(1);
    PointPx c = corners.get(2);
    PointPx d = corners.get(3);
    List<EdgeLine> lines = new ArrayList<>();
    EdgeLine.fit(light, reach, start(a, b, finder), end(a, b, finder)).ifPresent(lines::add);
    EdgeLine.fit(light, reach, start(b, c, finder)).ifPresent(lines::add);
    EdgeLine.fit(light, reach, end(c, d, finder)).ifPresent(lines::add);
    EdgeLine.fit(light, reach, start(d, a, finder), end(d, a, finder)).ifPresent(lines::add);
    return FindMarkers.RefinedQuad.of(lines);
  }

  /** Returns the finder pattern's part of a side at its first corner, short of its ends. */
  private static EdgeLine.Span start(PointPx a, PointPx b, double finder) {
    return new EdgeLine.Span(
        FindMarkers.between(a, b, 0.1 * finder), FindMarkers.between(a, b, 0.9 * finder));
  }

  private static EdgeLine.Span end(PointPx a, PointPx b, double finder) {
    return new EdgeLine.Span(
        FindMarkers.between(a, b, 1 - 0.9 * finder), FindMarkers.between(a, b, 1 - 0.1 * finder));
  }

  private static String whyUnusable(String text) {
    if (text.isBlank()) {
      return TAG_TEXT + " is blank";
    }
    if (text.length() > MAX_ID) {
      return TAG_TEXT + " has " + text.length() + " characters; a raft's id has at most " + MAX_ID;
    }
    boolean printable =
        text.codePoints().noneMatch(c -> Character.isISOControl(c) || !Character.isDefined(c));
    if (!printable) {
      return TAG_TEXT + " has characters that cannot be printed";
    }
    return Names.problem("", text).map(p -> TAG_TEXT + " " + p.found()).orElse("");
  }
}
