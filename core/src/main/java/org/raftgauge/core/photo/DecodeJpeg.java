// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.core.photo;

import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * Decodes a JPEG file with the JDK's reader, whose warnings tell damage that OpenCV's decoder fills
 * with grey and keeps to itself.
 *
 * <p>The reader is handed nothing but the picture: remarks (Exif, colour profiles, comments) are
 * left out, since it refuses sound photos over broken ones. Levels come as stored and are turned
 * into sRGB here, so the guess of which colours are meant is ours and the same on every JDK.
 */
final class DecodeJpeg {
  // An APP0 segment of JFIF 1.2 with no density and no thumbnail: tells the reader to leave the
  // levels as they are stored.
  private static final byte[] START_AND_JFIF = {
    (byte) 0xff,
    (byte) 0xd8,
    (byte) 0xff,
    (byte) 0xe0,
    0,
    16,
    'J',
    'F',
    'I',
    'F',
    0,
    1,
    2,
    0,
    0,
    1,
    0,
    1,
    0,
    0
  };
  private static final int ADOBE_BYTES = 12;
  private static final Pattern EXTRANEOUS = Pattern.compile("([0-9]{1,18}) extraneous");
  // Alignment to 16 bytes is the widest padding expected; a working value without a source.
  private static final long PADDING_BYTES_MAX = 16;

  private DecodeJpeg() {}

  /**
   * Decodes a file that {@link ReadJpegHeader} has passed.
   *
   * @param bytes the whole file; not changed
   * @return the picture as stored, not turned; empty where its coded data are damaged
   */
  static Optional<StoredPixels> of(byte[] bytes) {
    ByteArrayOutputStream bare = new ByteArrayOutputStream(bytes.length + START_AND_JFIF.length);
    boolean storedAsRgb = copyBare(bytes, bare);
    Optional<Raster> levels = read(bare.toByteArray());
    return levels
        .filter(raster -> !JpegShift.of(levels(raster), bytes).isThere())
        .map(raster -> stored(raster, storedAsRgb));
  }

  private static byte[] levels(Raster raster) {
    return ((DataBufferByte) raster.getDataBuffer()).getData();
  }

  /** Copies all but the remarks and tells whether the levels are r g b rather than Y Cb Cr. */
  private static boolean copyBare(byte[] bytes, ByteArrayOutputStream bare) {
    JpegSegments segments = new JpegSegments(bytes);
    bare.writeBytes(START_AND_JFIF);
    boolean jfif = false;
    boolean adobe = false;
    boolean rgb = false;
    int from = 2;
    while (segments.next() && segments.marker() != JpegSegments.EOI) {
      int data = segments.data();
      if (segments.isRemark()) {
        bare.write(bytes, from, segments.from() - from);
        from = segments.end();
        jfif |=
            segments.marker() == JpegSegments.APP0 && ReadHeader.startsWith(bytes, data, "JFIF");
        if (isAdobe(bytes, segments)) {
          adobe = true;
          rgb = bytes[data + ADOBE_BYTES - 1] == 0;
        }
      } else if (segments.isFrame() && !adobe) {
        rgb = namedRgb(bytes, segments);
      }
    }
    bare.write(bytes, from, segments.end() - from);
    return rgb && !jfif;
  }

  // Rule of which colours a three-channel JPEG holds: JFIF means Y Cb Cr; else the Adobe segment's
  // transform (0: r g b); else channels named R, G and B; else Y Cb Cr. Source: the JFIF 1.02 and
  // Adobe technical note 5116 conventions as the IJG library applies them.
  private static boolean isAdobe(byte[] bytes, JpegSegments segments) {
    return segments.marker() == JpegSegments.APP14
        && segments.end() - segments.data() >= ADOBE_BYTES
        && ReadHeader.startsWith(bytes, segments.data(), "Adobe");
  }

  private static boolean namedRgb(byte[] bytes, JpegSegments segments) {
    int names = segments.data() + 6;
    return segments.end() >= names + 9
        && bytes[names] == 'R'
        && bytes[names + 3] == 'G'
        && bytes[names + 6] == 'B';
  }

  private static Optional<Raster> read(byte[] bare) {
    ImageReader reader = ImageIO.getImageReadersByFormatName("jpeg").next();
    List<String> warnings = new ArrayList<>();
    reader.addIIOReadWarningListener((source, warning) -> warnings.add(warning));
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bare))) {
      reader.setInput(in, true, true);
      Raster raster = reader.readRaster(0, null);
      return warnings.stream().anyMatch(DecodeJpeg::tellsDamage)
          ? Optional.empty()
          : Optional.of(raster);
    } catch (IOException e) {
      return Optional.empty();
    } finally {
      reader.dispose();
    }
  }

  // The IJG library's warnings. A few extraneous bytes before a marker are padding that some
  // cameras write; many mean that blocks were swallowed, and every other one that blocks were lost.
  private static boolean tellsDamage(String warning) {
    Matcher extraneous = EXTRANEOUS.matcher(warning);
    if (extraneous.find()) {
      return Long.parseLong(extraneous.group(1)) > PADDING_BYTES_MAX;
    }
    return warning.startsWith("Corrupt")
        || warning.startsWith("Premature")
        || warning.startsWith("Truncated")
        || warning.startsWith("Inconsistent progression");
  }

  private static StoredPixels stored(Raster raster, boolean storedAsRgb) {
    StoredPixels.Colours colours =
        raster.getNumBands() == 1
            ? StoredPixels.Colours.GREY
            : storedAsRgb ? StoredPixels.Colours.RGB : StoredPixels.Colours.Y_CB_CR;
    return new StoredPixels(raster.getWidth(), raster.getHeight(), colours, levels(raster));
  }
}
