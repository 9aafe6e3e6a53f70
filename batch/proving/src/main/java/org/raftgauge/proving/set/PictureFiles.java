// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.proving.set;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferUShort;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.raftgauge.core.pixels.RgbImage;
import org.raftgauge.proving.render.Exposure;

/** Writes photos, label pictures and coverage pictures. */
public final class PictureFiles {

  private PictureFiles() {}

  /**
   * Writes a JPEG.
   *
   * @param image the picture
   * @param file where; its folder is made
   * @param quality 1..100
   * @throws IOException if it cannot be written
   */
  public static void writeJpeg(RgbImage image, Path file, int quality) throws IOException {
    Files.createDirectories(file.getParent());
    Files.deleteIfExists(file);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(quality / 100f);
      writer.setOutput(out);
      writer.write(null, new IIOImage(bgr(image), null, null), param);
    } finally {
      writer.dispose();
    }
  }

  private static BufferedImage bgr(RgbImage image) {
    BufferedImage copy =
        new BufferedImage(image.width(), image.height(), BufferedImage.TYPE_3BYTE_BGR);
    byte[] to = ((DataBufferByte) copy.getRaster().getDataBuffer()).getData();
    byte[] from = image.rgb();
    for (int i = 0; i < from.length; i += 3) {
      to[i] = from[i + 2];
      to[i + 1] = from[i + 1];
      to[i + 2] = from[i];
    }
    return copy;
  }

  /** Writes the site labels as a 16-bit PNG. */
  static void writeLabels(Exposure view, Path file) throws IOException {
    BufferedImage image =
        new BufferedImage(view.width(), view.height(), BufferedImage.TYPE_USHORT_GRAY);
    short[] to = ((DataBufferUShort) image.getRaster().getDataBuffer()).getData();
    System.arraycopy(view.label(), 0, to, 0, to.length);
    writePng(image, file);
  }

  /** Writes the coverage by leaf tissue as an 8-bit PNG. */
  static void writeCoverage(Exposure view, Path file) throws IOException {
    BufferedImage image =
        new BufferedImage(view.width(), view.height(), BufferedImage.TYPE_BYTE_GRAY);
    byte[] to = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
    System.arraycopy(view.coverage(), 0, to, 0, to.length);
    writePng(image, file);
  }

  private static void writePng(BufferedImage image, Path file) throws IOException {
    Files.createDirectories(file.getParent());
    ImageIO.write(image, "png", file.toFile());
  }
}
