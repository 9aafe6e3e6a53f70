// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.relief;

import java.util.Locale;
import java.util.Optional;
import org.raftgauge.core.book.Lens;
import org.raftgauge.core.book.SecondCamera;
import org.raftgauge.core.opencv.PictureCodec;
import org.raftgauge.core.photo.DecodePhoto;
import org.raftgauge.core.photo.DecodedPhoto;
import org.raftgauge.core.photo.UnreadablePhoto;
import org.raftgauge.core.pixels.DeepImage;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.core.plane.Rotations;

/** A picture of the second camera, decoded, with the lens for its size. */
public final class SecondPicture {
  private static final double SHAPE = 0.01;

  private final SecondCamera camera;
  private final Lens lens;
  private final Optional<RgbImage> photo;
  private final Optional<DeepImage> depth;

  private SecondPicture(
      SecondCamera camera, Lens lens, Optional<RgbImage> photo, Optional<DeepImage> depth) {
    this.camera = camera;
    this.lens = lens;
    this.photo = photo;
    this.depth = depth;
  }

  /** A picture of the second camera, or why it cannot be used: one of both. */
  public record Answer(Optional<SecondPicture> picture, Optional<NoHeights> none) {}

  /**
   * Decodes a picture of the second camera.
   *
   * @param bytes of its file
   * @param camera the second camera
   * @return the picture, or why it cannot be used
   */
  public static Answer decode(byte[] bytes, SecondCamera camera) {
    return camera.sees() == SecondCamera.Sees.PHOTO ? photo(bytes, camera) : depth(bytes, camera);
  }

  private static Answer photo(byte[] bytes, SecondCamera camera) {
    var decoded = DecodePhoto.decode(bytes);
    if (decoded instanceof UnreadablePhoto bad) {
      return none("the second camera's photo cannot be used: " + bad.reason(), bad.remedy());
    }
    RgbImage image = ((DecodedPhoto) decoded).image();
    Optional<Lens> lens = lens(camera, image.width(), image.height());
    return lens.isEmpty()
        ? otherShape(camera, image.width(), image.height())
        : some(new SecondPicture(camera, lens.get(), Optional.of(image), Optional.empty()));
  }

  private static Answer depth(byte[] bytes, SecondCamera camera) {
    Optional<DeepImage> deep = PictureCodec.deep(bytes);
    if (deep.isEmpty()) {
      return none(
          "the depth picture is no grey picture of 16 bits",
          "save depth as 16-bit PNG in mm, 0 where none was measured");
    }
    int width = deep.get().width();
    int height = deep.get().height();
    Optional<Lens> lens = lens(camera, width, height);
    return lens.isEmpty()
        ? otherShape(camera, width, height)
        : some(new SecondPicture(camera, lens.get(), Optional.empty(), deep));
  }

  private static Optional<Lens> lens(SecondCamera camera, int width, int height) {
    double factor = (double) width / camera.imageWidthPx();
    boolean alike = Math.abs(height / (factor * camera.imageHeightPx()) - 1) < SHAPE;
    return alike
        ? Optional.of(factor == 1 ? camera.lens() : camera.lens().scaled(factor))
        : Optional.empty();
  }

  private static Answer otherShape(SecondCamera camera, int width, int height) {
    return none(
        String.format(
            Locale.ROOT,
            "the second camera's picture is %d x %d px, its station says %d x %d: not the same"
                + " shape",
            width,
            height,
            camera.imageWidthPx(),
            camera.imageHeightPx()),
        "use the second camera's own picture, uncropped, or mend second_camera of the station");
  }

  private static Answer some(SecondPicture picture) {
    return new Answer(Optional.of(picture), Optional.empty());
  }

  private static Answer none(String reason, String remedy) {
    return new Answer(Optional.empty(), Optional.of(new NoHeights(reason, remedy)));
  }

  /** Returns the lens, for the picture's size. */
  Lens lens() {
    return lens;
  }

  /** Returns the photo, of a camera that takes photos. */
  Optional<RgbImage> photo() {
    return photo;
  }

  /** Returns the depth picture, of a camera that measures depth. */
  Optional<DeepImage> depth() {
    return depth;
  }

  /** Returns R, from the first camera's axes to the second's, row by row. */
  double[] rotation() {
    return Rotations.about(
        Math.toRadians(camera.turnDeg().get(0)),
        Math.toRadians(camera.turnDeg().get(1)),
        Math.toRadians(camera.turnDeg().get(2)));
  }

  /** Returns t, mm. */
  double[] shiftMm() {
    return camera.shiftMm().stream().mapToDouble(Double::doubleValue).toArray();
  }
}
