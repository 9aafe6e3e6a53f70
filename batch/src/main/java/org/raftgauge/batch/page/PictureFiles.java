// SPDX-License-Identifier: Apache-2.0
package org.raftgauge.batch.page;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferUShort;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.FileImageOutputStream;
import org.raftgauge.core.measure.CanopyMap;

/** Writes picture files. */
final class PictureFiles {
  private static final float JPEG_QUALITY = 0.88f;

  private PictureFiles() {}

  /** Writes a colour picture as JPEG. */
  static void jpeg(BufferedImage picture, Path file) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (FileImageOutputStream out = new FileImageOutputStream(file.toFile())) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(JPEG_QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(picture, null, null), param);
    } finally {
      writer.dispose();
    }
  }

  /** Writes the coverage as 8-bit grey PNG: 0 to 255 for 0 to 1. */
  static void coverage(CanopyMap canopy, Path file) throws IOException {
    BufferedImage picture =
        new BufferedImage(canopy.width(), canopy.height(), BufferedImage.TYPE_BYTE_GRAY);
    byte[] to = ((DataBufferByte) picture.getRaster().getDataBuffer()).getData();
    System.arraycopy(canopy.coverage(), 0, to, 0, to.length);
    PngFile.write(picture, file);
  }

  /** Writes the owners as 16-bit grey PNG, the numbers of {@link CanopyMap}. */
  static void site(CanopyMap canopy, Path file) throws IOException {
    BufferedImage picture =
        new BufferedImage(canopy.width(), canopy.height(), BufferedImage.TYPE_USHORT_GRAY);
    short[] to = ((DataBufferUShort) picture.getRaster().getDataBuffer()).getData();
    System.arraycopy(canopy.owner(), 0, to, 0, to.length);
    PngFile.write(picture, file);
  }
}
