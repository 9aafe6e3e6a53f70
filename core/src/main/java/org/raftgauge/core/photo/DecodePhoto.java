// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.raftgauge.core.opencv.PictureCodec;
import org.raftgauge.core.pixels.RgbImage;

/** Decodes a photo file into an upright picture, or says why not. */
public final class DecodePhoto {
  /** Largest number of pixels decoded: 120 million, five times the largest camera supported. */
  public static final long PIXELS_MAX = 120_000_000;

  /** Smallest side decoded, px: a corner marker alone is 10 squares wide. */
  public static final int SIDE_MIN_PX = 16;

  private DecodePhoto() {}

  /**
   * Decodes a JPEG, PNG or TIFF file, told by its content, into an upright 8-bit sRGB picture.
   *
   * <p>The orientation tag is applied exactly once. Grey is expanded, alpha dropped, 16 bits scaled
   * to 8. Refused with reason and remedy: an empty, cut or damaged file, another kind of file,
   * print colours, a side under {@link #SIDE_MIN_PX}, more than {@link #PIXELS_MAX} pixels; the
   * size is checked before anything is decoded.
   *
   * @param bytes the whole file, any content; not changed
   * @return a {@link DecodedPhoto}, or an {@link UnreadablePhoto}
   */
  public static DecodeResult decode(byte[] bytes) {
    return decode(bytes, (width, height) -> 1);
  }

  /** Tells in how fine detail a photo is wanted. */
  @FunctionalInterface
  public interface Detail {

    /**
     * Returns how many pixels, each way, are to be averaged to one.
     *
     * @param widthPx width of the upright photo
     * @param heightPx its height
     * @return 1 for all detail, at most an 8th of the shorter side
     */
    int parts(int widthPx, int heightPx);
  }

  /**
   * Decodes a file as {@link #decode(byte[])} does, and averages squares of pixels to one where
   * less detail is wanted: in code values, as a coarser sensor behind the same lens would.
   *
   * @param bytes the whole file, any content; not changed
   * @param detail wanted
   * @return a {@link DecodedPhoto}, or an {@link UnreadablePhoto}
   */
  public static DecodeResult decode(byte[] bytes, Detail detail) {
    HeaderResult result = ReadHeader.of(bytes);
    if (result instanceof UnreadablePhoto unreadable) {
      return unreadable;
    }
    PictureHeader header = (PictureHeader) result;
    Optional<UnreadablePhoto> wrongSize = wrongSize(header);
    if (wrongSize.isPresent()) {
      return wrongSize.get();
    }
    Optional<StoredPixels> stored = stored(bytes, header);
    if (stored.isEmpty()) {
      return UnreadablePhoto.damaged(
          "the " + header.format() + " is damaged and cannot be decoded");
    }
    PhotoTags tags = ReadTags.of(bytes, header.exif());
    Upright whole = Upright.of(stored.get().width(), stored.get().height(), tags.orientation());
    return photo(stored.get(), tags, detail.parts(whole.width(), whole.height()));
  }

  static DecodedPhoto photo(StoredPixels stored, PhotoTags tags, int parts) {
    if (parts == 1) {
      return new DecodedPhoto(
          Upright.of(stored.toRgb(), tags.orientation()), Optional.empty(), tags);
    }
    RgbImage image = Upright.of(stored.averaged(parts), tags.orientation());
    Upright upright = Upright.ofMultiple(stored, tags.orientation(), parts);
    return new DecodedPhoto(image, Optional.of(new FinePhoto(stored, upright, parts)), tags);
  }

  static Optional<UnreadablePhoto> wrongSize(PictureHeader header) {
    String size = header.width() + " x " + header.height() + " px";
    if (Math.min(header.width(), header.height()) < SIDE_MIN_PX) {
      return Optional.of(
          new UnreadablePhoto(
              "the picture is too small to measure: " + size,
              "use the photo as the camera took it, not a thumbnail"));
    }
    // Both sides are below 2^32, so that a product in double cannot overflow.
    double pixels = (double) header.width() * header.height();
    if (pixels > PIXELS_MAX) {
      return Optional.of(
          new UnreadablePhoto(
              String.format(
                  Locale.ROOT, "the picture is too large: %s, %.0f megapixels", size, pixels / 1e6),
              "set the camera to 24 megapixels or less; the limit is " + PIXELS_MAX / 1_000_000));
    }
    return Optional.empty();
  }

  private static Optional<StoredPixels> stored(byte[] bytes, PictureHeader header) {
    Optional<StoredPixels> image =
        switch (header.format()) {
          case JPEG -> DecodeJpeg.of(bytes);
          case PNG -> PictureCodec.decode(bytes).map(StoredPixels::of);
          case TIFF ->
              PictureCodec.decode(withoutOrientation(bytes, header.orientationAt()))
                  .map(StoredPixels::of);
        };
    return image.filter(i -> i.width() == header.width() && i.height() == header.height());
  }

  /** The TIFF decoder turns some pictures by itself, whatever it is told: takes its reason away. */
  private static byte[] withoutOrientation(byte[] tiff, OptionalInt orientationAt) {
    if (orientationAt.isEmpty()) {
      return tiff;
    }
    byte[] copy = tiff.clone();
    int at = orientationAt.getAsInt();
    boolean littleEndian = tiff[0] == 'I';
    copy[at] = (byte) (littleEndian ? 1 : 0);
    copy[at + 1] = (byte) (littleEndian ? 0 : 1);
    return copy;
  }
}
